// Reads an outpost file: text in, a frozen outpost or every fault out. It never throws and touches nothing.
import { LineCounter } from 'yaml';
import { checkAcross } from './check/check-across.ts';
import { fieldOf } from './field-of.ts';
import type { Outpost } from './outpost.ts';
import { type Fault, MOST_FINDINGS, type OutpostFinding } from './outpost-finding.ts';
import { resolveOutpost } from './resolve-outpost.ts';
import { fileSchema } from './shape/file-schema.ts';
import { ShapeFaults } from './shape-faults.ts';
import { checkText, guardedTokens } from './yaml-caps.ts';
import { readYamlTree, type YamlTree } from './yaml-tree.ts';

export type ReadOutpost =
  | { readonly ok: true; readonly outpost: Outpost; readonly findings: readonly OutpostFinding[] }
  | { readonly ok: false; readonly findings: readonly OutpostFinding[] };

interface Source {
  readonly file: string;
  readonly lines: LineCounter;
  /** What was read so far: a field is named by the ids in it. */
  readonly value?: unknown;
}

function asFinding({ code, spot, data }: Fault, { file, lines, value }: Source): OutpostFinding {
  const { line, col } = lines.linePos(spot.offset);
  const field = spot.path === undefined ? '' : fieldOf(spot.path, value);
  const where = {
    file,
    line: Math.max(1, line),
    column: Math.max(1, col),
    ...(field === '' ? {} : { field }),
  };
  return { code, severity: 'error', where, data, entries: [] };
}

/** In the order of the text, so that a keeper can go through the file from top to bottom. */
function refused(faults: readonly Fault[], source: Source): ReadOutpost {
  const ordered = [...faults].sort((a, b) => a.spot.offset - b.spot.offset);
  const kept = ordered.slice(0, MOST_FINDINGS);
  const next = ordered[MOST_FINDINGS];
  if (next !== undefined) kept.push({ code: 'findings-cut', spot: next.spot, data: { most: MOST_FINDINGS } });
  return { ok: false, findings: Object.freeze(kept.map((fault) => asFinding(fault, source))) };
}

/** Line ends for faults that are found before the parser has counted any. */
function countLines(text: string, upTo: number): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at !== -1 && at < upTo; at = text.indexOf('\n', at + 1))
    lines.addNewLine(at + 1);
  return lines;
}

/** A number or key that was left out of the tree is missing from it too: that is no second fault. */
function judgeShape(tree: YamlTree): { readonly faults: readonly Fault[]; readonly outpost?: Outpost } {
  const parsed = fileSchema().safeParse(tree.value, { jitless: true });
  const shape = new ShapeFaults(tree);
  const leftOut = new Set(tree.faults.map(({ spot }) => fieldOf(spot.path ?? [])));
  const issues = (parsed.error?.issues ?? []).slice(0, MOST_FINDINGS + 1).flatMap((issue) => shape.of(issue));
  const fresh = issues.filter(({ spot }) => !leftOut.has(fieldOf(spot.path ?? [])));
  const faults = [...tree.faults, ...fresh, ...checkAcross(tree, parsed)];
  return parsed.success && faults.length === 0
    ? { faults, outpost: resolveOutpost(parsed.data) }
    : { faults };
}

/** @example readOutpost(text, { file: 'corrie/outpost.yaml' }) */
export function readOutpost(text: string, { file }: { readonly file: string }): ReadOutpost {
  const whole = checkText(text);
  const { tokens, faults: guarded } =
    whole === undefined ? guardedTokens(text) : { tokens: [], faults: [whole] };
  if (guarded.length > 0) {
    const furthest = guarded.reduce((most, fault) => Math.max(most, fault.spot.offset), 0);
    return refused(guarded, { file, lines: countLines(text, furthest + 1) });
  }
  const lines = new LineCounter();
  const tree = readYamlTree(text, tokens, lines);
  if (tree.broken.length > 0) return refused(tree.broken, { file, lines });
  const { faults, outpost } = judgeShape(tree);
  if (outpost === undefined) return refused(faults, { file, lines, value: tree.value });
  return { ok: true, outpost, findings: Object.freeze([]) };
}
