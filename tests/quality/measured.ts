// Made-up measurements for tests: everything that nobody names is as it mostly is.
import type { MeasuredPoint } from '../../src/account/index.ts';
import { type DayRule, dayStartUtcMs, msPerDay } from '../../src/ground/units/index.ts';
import type { LimitRow } from '../../src/outpost/index.ts';

export const DAY_RULE: DayRule = { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 };

/** Noon of a day, or another part of it. */
export function atDay(day: number): number {
  const whole = Math.floor(day);
  return dayStartUtcMs(whole, DAY_RULE) + (day === whole ? 0.5 : day - whole) * msPerDay;
}

type Change = Partial<Omit<MeasuredPoint, 'told'>> & {
  readonly day: number;
  readonly value: number;
  readonly unit?: string;
  readonly basis?: string | null;
};

let count = 0;

export function measured({
  day,
  value,
  unit = 'mg/L',
  basis = 'as itself',
  ...change
}: Change): MeasuredPoint {
  count += 1;
  return {
    atMs: atDay(day),
    knownAtMs: atDay(day),
    store: null,
    point: null,
    grade: null,
    parameter: 'silver',
    told: { value, unit, basis },
    censored: 'no',
    method: null,
    madeAt: null,
    sample: `S-${count}`,
    entry: `entry ${count}`,
    duplicate: false,
    drawnFrom: null,
    ...change,
  };
}

export function row(change: Partial<LimitRow> & Pick<LimitRow, 'limit'>): LimitRow {
  return {
    id: 'silver row',
    parameter: 'silver',
    basis: 'as itself',
    unit: 'mg/L',
    remembered: null,
    evidence: 'policy',
    exposure: 'any',
    source: 'outpost policy',
    locator: '',
    cause: '',
    consequence: '',
    firstAct: '',
    timeToActH: null,
    requiredFor: ['drink'],
    degassed: false,
    noneIfBelow: null,
    duplicatesWithinShare: null,
    note: '',
    typed: null,
    ...change,
  } as LimitRow;
}
