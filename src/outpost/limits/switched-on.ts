// A row that is off put into force by a figure that somebody typed from a copy of the rule.
import { freezeDeep } from '../freeze-deep.ts';
import { type LimitFinding, limitFinding } from './limit-finding.ts';
import type { LimitFigures, LimitRow } from './limit-set.ts';
import { UNITS_OF_LIMITS } from './limit-units.ts';
import { type Measure, toldIn } from './told-in.ts';

export interface TypedLimit extends LimitFigures, Measure {
  /** Office and name of who typed it. */
  readonly by: string;
  /** Which copy: title, edition, page. */
  readonly copy: string;
  readonly atMs: number;
}

export type SwitchedOn =
  | { readonly ok: true; readonly row: LimitRow }
  | { readonly ok: false; readonly findings: readonly LimitFinding[] };

/**
 * What is remembered is not compared with: a slip of memory must not talk anybody out of what stands in the copy.
 * A side that is remembered has to be typed, though; leaving one out would make the row looser than it is known to be.
 * @example switchedOn(row, { atMost: 400, unit: 'µg/L', basis: 'as itself', by: 'medic', copy: 'edition 3, table 2', atMs })
 */
export function switchedOn(row: LimitRow, typed: TypedLimit): SwitchedOn {
  if (row.limit !== null)
    return { ok: false, findings: [limitFinding('typed-limit-not-off', row.id, { row: row.id })] };
  const findings = [...whoAndWhence(row, typed), ...sidesMissing(row, typed), ...figuresOff(row, typed)];
  if (findings.length > 0) return { ok: false, findings };
  const { by, copy, atMs } = typed;
  return { ok: true, row: freezeDeep({ ...row, limit: toldLimit(row, typed), typed: { by, copy, atMs } }) };
}

const SIDES = ['atLeast', 'atMost'] as const;

function whoAndWhence(row: LimitRow, { by, copy, atMs }: TypedLimit): readonly LimitFinding[] {
  const isKnown = by.trim() !== '' && copy.trim() !== '' && Number.isFinite(atMs);
  return isKnown ? [] : [limitFinding('typed-limit-copy', row.id, { row: row.id, by, copy })];
}

function sidesMissing(row: LimitRow, typed: TypedLimit): readonly LimitFinding[] {
  const wanted = SIDES.filter((side) => row.remembered?.[side] !== undefined);
  const missing = wanted.filter((side) => typed[side] === undefined);
  const isBare = SIDES.every((side) => typed[side] === undefined);
  if (missing.length > 0) return [limitFinding('typed-limit-side', row.id, { row: row.id, missing })];
  // Nothing is remembered of such a row, and nothing was typed.
  return isBare
    ? [limitFinding('typed-limit-side', row.id, { row: row.id, missing: ['atLeast or atMost'] })]
    : [];
}

function figuresOff(row: LimitRow, typed: TypedLimit): readonly LimitFinding[] {
  const { unit, basis } = typed;
  if (toldIn({ value: 1, unit, basis }, row) === undefined)
    return [
      limitFinding('typed-limit-unit', row.id, {
        row: row.id,
        unit,
        basis,
        wantedUnit: row.unit,
        wantedBasis: row.basis,
      }),
    ];
  const most = UNITS_OF_LIMITS.get(unit)?.most ?? 0;
  const least = typed.atLeast ?? 0;
  const isSound = 0 <= least && least <= (typed.atMost ?? most) && (typed.atMost ?? least) <= most;
  if (isSound) return [];
  const typedFigures = SIDES.flatMap((side) => (typed[side] === undefined ? [] : `${side} ${typed[side]}`));
  return [limitFinding('typed-limit-range', row.id, { row: row.id, unit, most, typed: typedFigures })];
}

function toldLimit(row: LimitRow, typed: TypedLimit): LimitFigures {
  const { unit, basis } = typed;
  const told = SIDES.flatMap((side) => {
    const value = typed[side];
    return value === undefined ? [] : [[side, toldIn({ value, unit, basis }, row) as number] as const];
  });
  return Object.fromEntries(told);
}
