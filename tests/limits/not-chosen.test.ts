// Rows of sets that nobody chose never bear on release: whatever is measured, only chosen rows hold water or have to be met.
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { notFreeBecause } from '../../src/account/index.ts';
import { type LimitRow, type LimitSet, readLimitSet } from '../../src/outpost/index.ts';
import { holm, type Told } from '../journeys/told.ts';
import { SHIPPED } from './practice.ts';

interface Placed {
  readonly set: LimitSet;
  readonly row: LimitRow;
}

let rows: readonly Placed[];
beforeAll(() => {
  rows = SHIPPED.flatMap(({ file, text }) => {
    const read = readLimitSet(text, { file });
    if (!read.ok) throw new Error(file);
    return read.set.rows.map((row) => ({ set: read.set, row }));
  });
});

const RUNS = { numRuns: 300, seed: 46 } as const;

function choose(told: Told, chosen: readonly Placed[]): void {
  const sets = [...new Set(chosen.map(({ set }) => set))].map((set) => ({
    ...{ set: set.id, name: set.name },
    rows: chosen.filter((one) => one.set === set).map(({ row }) => row),
  }));
  told.tell('limits-chosen', { sets, exposureDays: 180, reason: 'by chance' } as never);
}

function whyNot(told: Told): string | null {
  const position = told.position();
  const store = position.stores.find(({ facts }) => facts.id === 'C-04');
  if (store === undefined) throw new Error('no C-04');
  return notFreeBecause(position, store);
}

/** So much of anything that no limit of it is met. */
const FAR_TOO_MUCH = 1e5;

function measured(told: Told, { parameter, unit, basis }: LimitRow): void {
  const value = unit === 'pH' ? 14 : FAR_TOO_MUCH;
  told.tell('sample', { store: 'C-04', sample: 'S-1', tests: [parameter] });
  told.tell('result', { sample: 'S-1', values: [{ parameter, value, unit, basis }] });
}

describe('water in which one thing is far too much', () => {
  test('is held exactly where a row for it was chosen, and off exactly where a chosen row is off', () => {
    const seen = { held: 0, off: 0, free: 0 };
    const forDrink = rows.filter(
      ({ row }) => row.requiredFor.includes('drink') && row.limit?.atLeast === undefined,
    );
    fc.assert(
      fc.property(
        fc.subarray([...forDrink], { minLength: 1, maxLength: 12 }),
        fc.nat(forDrink.length - 1),
        (chosen, at) => {
          const told = holm();
          const found = forDrink[at] as Placed;
          // Without the outpost's own policy, which would have held it before.
          choose(told, []);
          measured(told, found.row);
          choose(told, chosen);
          const hits = chosen.filter(
            ({ row }) => row.limit !== null && row.parameter === found.row.parameter,
          );
          const expected =
            hits.length > 0 ? 'hold' : chosen.some(({ row }) => row.limit === null) ? 'no limit set' : null;
          seen[expected === 'hold' ? 'held' : expected === null ? 'free' : 'off'] += 1;
          expect(whyNot(told)).toBe(expected);
        },
      ),
      RUNS,
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(0);
  });

  test('a release asks for chosen rows alone', () => {
    const seen = { released: 0, not: 0 };
    const most = rows.filter(
      ({ row }) => row.limit?.atMost !== undefined && row.requiredFor.includes('drink'),
    );
    fc.assert(
      fc.property(fc.subarray([...most], { minLength: 1, maxLength: 6 }), fc.boolean(), (chosen, isWhole) => {
        const told = holm();
        choose(told, chosen);
        told.tell('hold', { hold: 'Q-1', stores: ['C-04'], conditional: [], reason: 'taste' });
        // Every figure meets its rows; one is left out where the release is to lack it.
        const parameters = [...new Set(chosen.map(({ row }) => row.parameter))];
        const asked = isWhole ? parameters : parameters.slice(1);
        const values = asked.map((parameter) => meeting(chosen, parameter));
        told.tell('release', { stores: ['C-04'], values });
        seen[isWhole ? 'released' : 'not'] += 1;
        const isMeetable = parameters.every((parameter) => isPossible(chosen, parameter));
        if (isMeetable) expect(whyNot(told)).toBe(isWhole ? null : 'hold');
      }),
      RUNS,
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(0);
  });
});

const of = (chosen: readonly Placed[], parameter: string) =>
  chosen.filter(({ row }) => row.parameter === parameter).map(({ row }) => row);

/** One figure can be held against all rows of the parameter only where they are told alike. */
function isPossible(chosen: readonly Placed[], parameter: string): boolean {
  const [first, ...others] = of(chosen, parameter);
  const least = Math.max(...of(chosen, parameter).map(({ limit }) => limit?.atLeast ?? 0));
  const most = Math.min(
    ...of(chosen, parameter).map(({ limit }) => limit?.atMost ?? Number.POSITIVE_INFINITY),
  );
  const isAlike = others.every(({ unit, basis }) => unit === first?.unit && basis === first.basis);
  return isAlike && least <= most && of(chosen, parameter).every(({ degassed }) => !degassed);
}

function meeting(chosen: readonly Placed[], parameter: string) {
  const [{ unit, basis } = { unit: '', basis: '' }] = of(chosen, parameter);
  const value = Math.max(...of(chosen, parameter).map(({ limit }) => limit?.atLeast ?? 0));
  return { parameter, value, unit, basis };
}
