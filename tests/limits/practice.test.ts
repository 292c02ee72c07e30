// Sets of limits on the practice outpost: previewed, chosen with a reason, chosen back; figures typed from a copy.
import { beforeAll, describe, expect, test } from 'vitest';
import { notFreeBecause, type Position } from '../../src/account/index.ts';
import {
  chooseLimits,
  type Desk,
  type LimitsChoice,
  limitSets,
  limitsInForce,
  positionAt,
  today,
  typeLimit,
} from '../../src/desk/index.ts';
import { type LimitsChosenSheet, limitsChosenText } from '../../src/papers/index.ts';
import { SMALL_LIMIT_SET } from '../outpost/small-limit-set.ts';
import { KEEPER, practiceAt } from './practice.ts';

const SEVEN = ['C-05', 'C-11', 'C-12', 'C-13', 'C-14', 'C-15', 'C-16'];
const AESTHETIC = 'national-aesthetic-limits';
const SILVER: LimitsChoice = { sets: [AESTHETIC], rows: ['silver most'], reason: 'asked by the planner' };
const TRY = { dryRun: true } as const;
const YES = { sure: true } as const;

type Answered<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly findings: readonly { readonly code: string }[] };

function taken<T>(answer: Answered<T>): T {
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
  return answer.value;
}

const codesOf = <T>(answer: Answered<T>) => (answer.ok ? [] : answer.findings.map(({ code }) => code));
const positionOf = async (desk: Desk): Promise<Position> =>
  taken(await positionAt(desk, { kind: 'now' }, KEEPER));
const choose = (desk: Desk, choice: LimitsChoice, more = {}) => chooseLimits(desk, KEEPER, choice, more);

/** Stores with water whose own silver result is above 0.1 mg/L, by their results alone. */
function overSilver({ stores }: Position): readonly string[] {
  return stores
    .filter(
      ({ results, emptied }) =>
        !emptied && results.some(({ parameter, value }) => parameter === 'silver' && value > 0.1),
    )
    .filter(({ grade }) => grade === 'drinking')
    .map(({ facts }) => facts.id)
    .sort();
}

const textOf = (sheet: LimitsChosenSheet) =>
  limitsChosenText(sheet, { width: 100, style: 'screen', colour: false, units: 'L' }).replace(/\s+/g, ' ');

describe.each([20, 46])('the terrestrial limit for silver on Day %i', (day) => {
  let desk: Desk;
  let bookText: () => Promise<string>;
  beforeAll(async () => {
    ({ desk, bookText } = await practiceAt(day));
  });

  test.each([
    ['all rows', { sets: [AESTHETIC] }],
    ['silver only', SILVER],
  ])(
    '%s: previewed with stores, litres, cover and the clash, and the book stays as it is to the last byte',
    async (_name, choice) => {
      const before = await bookText();
      const position = await positionOf(desk);
      const sheet = taken(await choose(desk, choice, TRY));
      expect(sheet.kept).toBe(false);
      const { holds, held, grades, clashes } = sheet.effect;
      expect(holds.map(({ store }) => store).sort()).toEqual(overSilver(position));
      const litres = holds.reduce((sum, { volume }) => sum + volume.value, 0);
      expect(held.value).toBeCloseTo(litres, 6);
      const [drinking] = grades;
      expect(drinking?.grade).toBe('drinking');
      expect((drinking?.freeBefore.value ?? 0) - (drinking?.freeAfter.value ?? 0)).toBeLessThanOrEqual(
        litres + 1e-6,
      );
      expect(clashes.map(({ kind, row }) => `${kind} ${row}`)).toContain('dose-above silver most');
      expect(textOf(sheet)).toContain('Correctly dosed water cannot meet it');
      expect(await bookText()).toBe(before);
    },
  );

  test('nothing is chosen without a yes, nor without a reason', async () => {
    const before = await bookText();
    expect(codesOf(await choose(desk, SILVER))).toEqual(['limits-ask']);
    expect(codesOf(await choose(desk, { ...SILVER, reason: '  ' }, YES))).toEqual(['field-needed']);
    expect(await bookText()).toBe(before);
  });
});

describe('once chosen on Day 20', () => {
  let desk: Desk;
  let preview: LimitsChosenSheet;
  beforeAll(async () => {
    ({ desk } = await practiceAt(20));
    preview = taken(await choose(desk, SILVER, TRY));
    taken(await choose(desk, SILVER, YES));
  });

  test('the seven that were released at 0.19 mg/L are held, and cover is what the preview said', async () => {
    const position = await positionOf(desk);
    const held = position.stores
      .filter(({ hold }) => hold?.hold === 'limits chosen')
      .map(({ facts }) => facts.id);
    expect(held.sort()).toEqual(SEVEN);
    const sheet = taken(await today(desk, { kind: 'now' }, KEEPER));
    const [drinking] = preview.effect.grades;
    expect(sheet.cover['drinking']?.q05).toBe(drinking?.coverAfter);
    expect(sheet.cover['drinking']?.free.value).toBe(drinking?.freeAfter.value);
    expect(drinking?.coverAfter ?? 0).toBeLessThan(drinking?.coverBefore ?? 0);
  });

  test('what is in force says who chose it and why, beside the policy of the outpost', async () => {
    const sheet = taken(await limitsInForce(desk, { kind: 'now' }, KEEPER));
    expect(sheet.sets.map(({ id, rows }) => `${id} ${rows.length}`)).toEqual([
      'outpost policy 5',
      'national aesthetic limits 1',
    ]);
    expect(sheet.chosen).toMatchObject({ by: 'keeper', reason: 'asked by the planner' });
  });

  test('choosing back ends what it held', async () => {
    const sheet = taken(await choose(desk, { sets: ['outpost policy'], only: true, reason: 'back' }, YES));
    expect(sheet.effect.ends).toEqual(SEVEN);
    expect(sheet.effect.noMore.map(({ row }) => row)).toEqual(['silver most']);
    const position = await positionOf(desk);
    expect(position.stores.filter(({ hold }) => hold !== null)).toEqual([]);
  });
});

describe('a set with rows off', () => {
  test('holds all water of its uses, says so, and leaves water that nobody drinks alone', async () => {
    const { desk } = await practiceAt(46);
    const choice = { sets: ['crewed-water-standard'], reason: 'for the visit' };
    const preview = taken(await choose(desk, choice, TRY));
    expect(
      preview.effect.grades.map(({ grade, off, freeAfter }) => [grade, off.length, freeAfter.value]),
    ).toEqual([['drinking', 10, 0]]);
    expect(textOf(preview)).toContain('No limit set: hold.');
    taken(await choose(desk, choice, YES));
    const position = await positionOf(desk);
    const free = position.stores.filter((store) => notFreeBecause(position, store) === null);
    expect(free.length).toBeGreaterThan(0);
    expect(free.map(({ grade }) => grade)).not.toContain('drinking');
    const why = position.stores.map((store) => notFreeBecause(position, store));
    expect(why).toContain('no limit set');
    expect(position.findings.map(({ code }) => code)).toContain('limit-off');
  });
});

describe('a figure that is typed from a copy', () => {
  const typed = {
    set: 'crewed-water-standard',
    row: 'silver-most',
    atMost: '100ug/L',
    copy: 'edition 2, table 4',
  };

  test('before its set is chosen is in the choice that comes later, and holds by it', async () => {
    const { desk } = await practiceAt(20);
    const sheet = taken(await typeLimit(desk, KEEPER, typed));
    expect(sheet).toMatchObject({ kept: true, effect: null, row: { limit: { atMost: 0.1 }, unit: 'mg/L' } });
    const sets = taken(await limitSets(desk, KEEPER));
    expect(sets.sets.find(({ id }) => id === 'crewed water standard')).toMatchObject({ on: 1, off: 9 });
    const chosen = taken(
      await choose(desk, { sets: ['crewed-water-standard'], rows: ['silver most'], reason: 'asked' }, YES),
    );
    expect(chosen.sets.at(-1)?.rows.map(({ typed: by }) => by?.copy)).toEqual(['edition 2, table 4']);
    expect(chosen.effect.holds.map(({ store }) => store)).toEqual(SEVEN);
  });

  test('after its set was chosen is asked about when it would hold water', async () => {
    const { desk, bookText } = await practiceAt(20);
    taken(
      await choose(desk, { sets: ['crewed-water-standard'], rows: ['silver most'], reason: 'asked' }, YES),
    );
    const before = await bookText();
    expect(codesOf(await typeLimit(desk, KEEPER, typed))).toEqual(['limits-ask']);
    expect(await bookText()).toBe(before);
    const sheet = taken(await typeLimit(desk, KEEPER, typed, YES));
    expect(sheet.effect?.holds.map(({ store }) => store)).toEqual(SEVEN);
    expect(sheet.effect?.grades[0]?.off).toEqual([]);
  });

  test.each([
    ['no copy', { copy: '  ' }, ['typed-limit-copy']],
    ['a unit of another thing', { atMost: '0.1NTU' }, ['typed-limit-unit']],
    ['no unit', { atMost: '0.1' }, ['field-needed']],
    ['a figure with two readings', { atMost: '1,234mg/L' }, ['number-ambiguous']],
    ['no row', { row: 'silver mist' }, ['not-in-book']],
    ['no set', { set: 'crewed water' }, ['not-in-book']],
    ['a row in force', { set: AESTHETIC }, ['typed-limit-not-off']],
    ['more than water holds', { atMost: '2000000mg/L' }, ['typed-limit-range']],
  ])('is refused with %s, and nothing is kept', async (_name, change, codes) => {
    const { desk, bookText } = await practiceAt(2);
    const before = await bookText();
    expect(codesOf(await typeLimit(desk, KEEPER, { ...typed, ...change }))).toEqual(codes);
    expect(await bookText()).toBe(before);
  });
});

describe('a file of somebody’s own', () => {
  const own = (text: string): LimitsChoice => ({
    sets: [],
    files: [{ file: 'skerry-rules.yaml', text }],
    rows: ['silver range'],
    reason: 'ours',
  });

  test('is chosen by its file, and stands whole in the book', async () => {
    const { desk } = await practiceAt(20);
    taken(await choose(desk, own(SMALL_LIMIT_SET), YES));
    const sheet = taken(await limitsInForce(desk, { kind: 'now' }, KEEPER));
    expect(sheet.sets.at(-1)).toMatchObject({
      id: 'skerry rules',
      rows: [{ id: 'silver range', source: 'an invented paper' }],
    });
    const sets = taken(await limitSets(desk, KEEPER));
    expect(sets.sets.at(-1)).toMatchObject({ id: 'skerry rules', required: 1, from: 'book' });
  });

  test('with a limit without source is a finding with its place, and nothing is kept', async () => {
    const { desk, bookText } = await practiceAt(2);
    const before = await bookText();
    const answer = await choose(
      desk,
      own(SMALL_LIMIT_SET.replace('    source: paper\n    locator: page 3', '    locator: page 3')),
      YES,
    );
    expect(
      answer.ok
        ? []
        : answer.findings.map(({ code, where }) => `${code} ${where.file}:${where.line} ${where.field}`),
    ).toEqual(['key-missing skerry-rules.yaml:18 rows[silver range].source']);
    expect(await bookText()).toBe(before);
  });

  test.each([
    ['a row that the set has not', { rows: ['silver rnge'] }, ['limit-row-unknown']],
    [
      'a name that is taken',
      { files: [{ file: 'a', text: SMALL_LIMIT_SET.replace('id: skerry rules', 'id: world guidelines') }] },
      ['name-taken'],
    ],
    [
      'rows for fewer days than the water is drunk',
      { rows: ['nickel 10 d'], exposureDays: 50 },
      ['limit-exposure-uncovered'],
    ],
    ['no set at all', { files: [] }, ['field-needed']],
  ])('is refused with %s', async (_name, change, codes) => {
    const { desk, bookText } = await practiceAt(2);
    const before = await bookText();
    expect(codesOf(await choose(desk, { ...own(SMALL_LIMIT_SET), ...change }, YES))).toEqual(codes);
    expect(await bookText()).toBe(before);
  });

  test('beside a set that was chosen for another time of drinking is refused', async () => {
    const { desk } = await practiceAt(2);
    taken(await choose(desk, { ...own(SMALL_LIMIT_SET), rows: ['nickel 100 d'], exposureDays: 100 }, YES));
    const answer = await choose(desk, { ...SILVER, exposureDays: 10 }, YES);
    expect(codesOf(answer)).toEqual(['limit-exposure-differs']);
  });
});
