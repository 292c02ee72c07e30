// From a text to a tree and from faults to findings with line and column: shared by every file that people write in YAML.
import { LineCounter } from 'yaml';
import type { Finding } from '../ground/units/index.ts';
import { fieldOf } from './field-of.ts';
import { type Fault, MOST_FINDINGS, type OutpostFindingCode } from './outpost-finding.ts';
import { checkText, guardedTokens } from './yaml-caps.ts';
import { readYamlTree, type YamlTree } from './yaml-tree.ts';

export interface Source {
  readonly file: string;
  readonly lines: LineCounter;
  /** What was read so far: a field is named by the ids in it. */
  readonly value?: unknown;
}

/** A tree with the source that its findings are placed by, or findings because the text is no YAML. */
export type YamlRead =
  | { readonly ok: true; readonly tree: YamlTree; readonly source: Source }
  | { readonly ok: false; readonly findings: readonly Finding<OutpostFindingCode>[] };

function asFinding<Code extends string>(
  { code, spot, data }: Fault<Code>,
  { file, lines, value }: Source,
): Finding<Code> {
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
export function findingsOf<Code extends string>(
  faults: readonly Fault<Code>[],
  source: Source,
): readonly Finding<Code | 'findings-cut'>[] {
  const ordered: Fault<Code | 'findings-cut'>[] = [...faults].sort((a, b) => a.spot.offset - b.spot.offset);
  const kept = ordered.slice(0, MOST_FINDINGS);
  const next = ordered[MOST_FINDINGS];
  if (next !== undefined) kept.push({ code: 'findings-cut', spot: next.spot, data: { most: MOST_FINDINGS } });
  return Object.freeze(kept.map((fault) => asFinding(fault, source)));
}

/** Line ends for faults that are found before the parser has counted any. */
function countLines(text: string, upTo: number): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let at = text.indexOf('\n'); at !== -1 && at < upTo; at = text.indexOf('\n', at + 1))
    lines.addNewLine(at + 1);
  return lines;
}

/** Never throws: what is wrong is in the result. */
export function readYaml(text: string, { file }: { readonly file: string }): YamlRead {
  const whole = checkText(text);
  const { tokens, faults: guarded } =
    whole === undefined ? guardedTokens(text) : { tokens: [], faults: [whole] };
  if (guarded.length > 0) {
    const furthest = guarded.reduce((most, fault) => Math.max(most, fault.spot.offset), 0);
    return { ok: false, findings: findingsOf(guarded, { file, lines: countLines(text, furthest + 1) }) };
  }
  const lines = new LineCounter();
  const tree = readYamlTree(text, tokens, lines);
  if (tree.broken.length > 0) return { ok: false, findings: findingsOf(tree.broken, { file, lines }) };
  return { ok: true, tree, source: { file, lines, value: tree.value } };
}
