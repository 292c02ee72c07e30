// The codes of what can be wrong with a set of limits beyond its shape, with a choice among its rows and with a typed limit.
import type { Finding } from '../../ground/units/index.ts';
import type { OutpostFindingCode } from '../outpost-finding.ts';

export type LimitFindingCode =
  | 'row-from-memory-in-force'
  | 'row-remembered-not-memory'
  | 'row-without-figure'
  | 'row-unit-and-basis'
  | 'limit-row-unknown'
  | 'limit-use-unknown'
  | 'limit-exposure-uncovered'
  | 'typed-limit-not-off'
  | 'typed-limit-side'
  | 'typed-limit-unit'
  | 'typed-limit-range'
  | 'typed-limit-copy';

export type LimitFinding = Finding<LimitFindingCode>;
/** A file of limits is read like an outpost file and shares the faults of its text and shape. */
export type LimitSetFinding = Finding<LimitFindingCode | OutpostFindingCode>;

export function limitFinding(
  code: LimitFindingCode,
  field: string,
  data: LimitFinding['data'],
): LimitFinding {
  return { code, severity: 'error', where: { field }, data, entries: [] };
}
