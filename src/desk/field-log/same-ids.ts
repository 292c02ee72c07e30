// Lines with one id: the same line told twice counts once; two different lines with one id are both left out.
import { canonicalJson, type Json } from '../../book/index.ts';
import type { DatedLine } from './dated-lines.ts';
import type { LogFindings } from './log-finding.ts';
import type { AnyLine } from './shape/line-shapes.ts';

/** A line with a place in time; `line` is null when its shape or anything else in it did not fit. */
export interface JudgedLine {
  readonly dated: DatedLine;
  readonly line: AnyLine | null;
}

export interface SortedOut {
  /** One for each id. */
  readonly single: readonly JudgedLine[];
  /** Numbers of lines that say again what another said. */
  readonly repeated: readonly number[];
}

/** Which of two different lines is the right one nobody knows, so none of them is taken. */
export function sortOutIds(judged: readonly JudgedLine[], findings: LogFindings): SortedOut {
  const groups = new Map<string, JudgedLine[]>();
  for (const one of judged) {
    const group = groups.get(one.dated.ref);
    if (group === undefined) groups.set(one.dated.ref, [one]);
    else group.push(one);
  }
  const single: JudgedLine[] = [];
  const repeated: number[] = [];
  for (const [first, ...others] of groups.values()) {
    if (first === undefined) continue;
    const { ref, line: firstLine } = first.dated;
    if (others.every((other) => areSame(first.line, other.line))) {
      single.push(first);
      for (const { dated } of others) {
        repeated.push(dated.line);
        const data = { ref, otherLine: firstLine };
        findings.add(dated.line, { code: 'log-line-repeated', severity: 'know', field: 'id', data });
      }
      continue;
    }
    const last = others.at(-1)?.dated.line ?? firstLine;
    for (const { dated } of [first, ...others]) {
      const otherLine = dated.line === firstLine ? last : firstLine;
      findings.error(dated.line, 'log-id-twice', { ref, otherLine }, 'id');
    }
  }
  return { single, repeated };
}

/** Whatever the order of the fields. */
function areSame(a: AnyLine | null, b: AnyLine | null): boolean {
  if (a === null || b === null) return false;
  return canonicalJson(a as unknown as Json) === canonicalJson(b as unknown as Json);
}
