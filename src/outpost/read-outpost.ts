// Reads an outpost file: text in, a frozen outpost or every fault out. It never throws and touches nothing.
import { LineCounter } from 'yaml';
import { checkAcross } from './check/check-across.ts';
import type { Outpost } from './outpost.ts';
import type { Fault, OutpostFinding } from './outpost-finding.ts';
import { resolveOutpost } from './resolve-outpost.ts';
import { fileSchema } from './shape/file-schema.ts';
import { ShapeFaults } from './shape-faults.ts';
import { checkText, guardedTokens } from './yaml-caps.ts';
import { readYamlTree, type YamlTree } from './yaml-tree.ts';

export type ReadOutpost =
  | { readonly ok: true; readonly outpost: Outpost; readonly findings: readonly OutpostFinding[] }
  | { readonly ok: false; readonly findings: readonly OutpostFinding[] };

/** More than this on one screen helps nobody; the last finding then says how many were left out. */
const MOST_FINDINGS = 200;

function asFinding(fault: Fault, file: string, lines: LineCounter): OutpostFinding {
  const { line, col } = lines.linePos(fault.spot.offset);
  const field = fault.spot.field;
  const where = { file, line: Math.max(1, line), column: Math.max(1, col), ...(field ? { field } : {}) };
  return { code: fault.code, severity: 'error', where, data: fault.data, entries: [] };
}

/** In the order of the text, so that a keeper can go through the file from top to bottom. */
function refused(faults: readonly Fault[], file: string, lines: LineCounter): ReadOutpost {
  const ordered = [...faults].sort((a, b) => a.spot.offset - b.spot.offset);
  const kept = ordered.slice(0, MOST_FINDINGS);
  const left = ordered.length - kept.length;
  const last = kept[kept.length - 1];
  if (left > 0 && last !== undefined)
    kept.push({ code: 'findings-cut', spot: last.spot, data: { left, kept: kept.length } });
  return { ok: false, findings: Object.freeze(kept.map((fault) => asFinding(fault, file, lines))) };
}

/** Line ends for faults that are found before the parser has counted any. */
function countLines(text: string, upTo: number): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at !== -1 && at < upTo; at = text.indexOf('\n', at + 1))
    lines.addNewLine(at + 1);
  return lines;
}

function judgeShape(tree: YamlTree): { readonly faults: readonly Fault[]; readonly file?: Outpost } {
  const parsed = fileSchema().safeParse(tree.value, { jitless: true });
  const shape = new ShapeFaults(tree);
  const issues = parsed.error?.issues ?? [];
  const faults = [...issues.flatMap((issue) => shape.of(issue)), ...checkAcross(tree, parsed)];
  return parsed.success && faults.length === 0 ? { faults, file: resolveOutpost(parsed.data) } : { faults };
}

/** @example readOutpost(text, { file: 'corrie/outpost.yaml' }) */
export function readOutpost(text: string, { file }: { readonly file: string }): ReadOutpost {
  const whole = checkText(text);
  const { tokens, faults: guarded } =
    whole === undefined ? guardedTokens(text) : { tokens: [], faults: [whole] };
  if (guarded.length > 0) {
    const furthest = guarded.reduce((most, fault) => Math.max(most, fault.spot.offset), 0);
    return refused(guarded, file, countLines(text, furthest + 1));
  }
  const lines = new LineCounter();
  const tree = readYamlTree(tokens, text.length, lines);
  if (tree.faults.length > 0) return refused(tree.faults, file, lines);
  const { faults, file: outpost } = judgeShape(tree);
  return outpost === undefined
    ? refused(faults, file, lines)
    : { ok: true, outpost, findings: Object.freeze([]) };
}
