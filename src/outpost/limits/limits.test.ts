// Sets of limits: all faults at once, figures in other units and on other bases, choices, typed limits, clashes with silver.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { changedLimits, SMALL_LIMIT_SET } from '../../../tests/outpost/small-limit-set.ts';
import type { Grade, Outpost } from '../outpost.ts';
import { readOutpost } from '../read-outpost.ts';
import { chosenRows } from './chosen-rows.ts';
import { clashesOf } from './clashes.ts';
import type { LimitRow, LimitSet } from './limit-set.ts';
import { basisUnlessSaid } from './limit-units.ts';
import { policyLimitSet } from './policy-limit-set.ts';
import { readLimitSet } from './read-limit-set.ts';
import { switchedOn, type TypedLimit } from './switched-on.ts';
import { toldIn } from './told-in.ts';

const ROOT = join(import.meta.dirname, '../../..');
const FILE = { file: 'limits.yaml' };

function taken(text = SMALL_LIMIT_SET): LimitSet {
  const read = readLimitSet(text, FILE);
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.set;
}

function example(name: string): Outpost {
  const read = readOutpost(readFileSync(join(ROOT, `examples/${name}/outpost.yaml`), 'utf8'), FILE);
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  return read.outpost;
}

const rowOf = (id: string, set = taken()) => set.rows.find((row) => row.id === id) as LimitRow;

describe('a file of limits', () => {
  test('tells all its faults at once, in the order of the text, with line and column', () => {
    const text = [
      ['what: invented', 'wat: invented'],
      ['    source: paper\n    locator: page 3', '    locator: page 3'],
      ['basis: as itself\n    unit: µg/L\n    remembered', 'basis: at 20 °C\n    unit: µg/L\n    remembered'],
      [
        'source: paper\n    locator: page 4\n    act: dose\n    req',
        'source: papper\n    locator: page 4\n    act: dose\n    req',
      ],
    ].reduce((edited, [from, to]) => changedLimits(from as string, to as string, edited), SMALL_LIMIT_SET);
    const { findings } = readLimitSet(text, FILE);
    expect(findings.map(({ code, where }) => `${where.line}:${where.column} ${code} ${where.field}`)).toEqual(
      [
        '4:3 key-missing set.what',
        '6:3 key-unknown set.wat',
        '18:5 key-missing rows[silver range].source',
        '30:12 row-unit-and-basis rows[nickel 10 d].basis',
        '47:13 id-unknown rows[nickel 100 d].source',
      ],
    );
  });

  test('without a source is refused, and so is one with limits that cross or ids that repeat', () => {
    const codes = (from: string, to: string) =>
      readLimitSet(changedLimits(from, to), FILE).findings.map(({ code }) => code);
    expect(codes('sources:\n  - id: paper\n    source: an invented paper', 'sources: []')).toContain(
      'list-too-short',
    );
    expect(codes('atLeast: 0.02', 'atLeast: 0.2')).toEqual(['amount-order']);
    expect(codes('id: nickel 10 d', 'id: Silver range')).toEqual(['id-twice']);
    expect(codes('requiredFor: [drink]', 'requiredFor: [flush]')).toEqual(['id-unknown']);
    expect(codes('atMost: 20', 'atMost: .inf')).toContain('number-not-finite');
  });

  test('never throws, whatever stands in it', () => {
    for (const text of ['', 'rows: 5', '[]', 'rows: [5, {id: a}]', 'set: 3\nsources: x', '{', 'null'])
      expect(readLimitSet(text, FILE).ok, text).toBe(false);
  });
});

test.each([
  [{ value: 57.3, unit: 'µg/L', basis: 'as itself' }, { unit: 'mg/L', basis: 'as itself' }, 0.0573],
  [{ value: 0.0573, unit: 'mg/L', basis: 'as itself' }, { unit: 'µg/L', basis: 'as itself' }, 57.3],
  // 10 mg/L as N is 44.3 as the ion: the note beside the limit, seen as another text quotes it.
  [{ value: 10, unit: 'mg/L', basis: 'as N' }, { unit: 'mg/L', basis: 'as NO3' }, 44.27],
  // 7 mEq/L of hardness are 3.5 mmol/L, and those 350 mg/L as calcium carbonate.
  [{ value: 7, unit: 'mEq/L', basis: 'as CaCO3' }, { unit: 'mmol/L', basis: 'as CaCO3' }, 3.5],
  [{ value: 7, unit: 'mEq/L', basis: 'as CaCO3' }, { unit: 'mg/L', basis: 'as CaCO3' }, 350.3],
  [{ value: 3.5, unit: 'mmol/L', basis: 'as Ca' }, { unit: 'mg/L', basis: 'as CaCO3' }, 350.3],
  [{ value: 500, unit: 'CFU/100 mL', basis: 'as itself' }, { unit: 'CFU/mL', basis: 'as itself' }, 5],
  [{ value: 1.5, unit: 'mS/cm', basis: 'at 25 °C' }, { unit: 'µS/cm', basis: 'at 25 °C' }, 1500],
  [{ value: 0, unit: 'g/L', basis: 'as itself' }, { unit: 'ng/L', basis: 'as itself' }, 0],
])('%o in %o is %s', (told, as, value) => {
  expect(toldIn(told, as)).toBeCloseTo(value, value > 40 && value < 400 ? 1 : 10);
});

test.each([
  [
    { value: 0, unit: 'CFU/mL', basis: 'as itself' },
    { unit: 'CFU/100 mL', basis: 'as itself' },
  ],
  [
    { value: 1, unit: 'µS/cm', basis: 'at 20 °C' },
    { unit: 'µS/cm', basis: 'at 25 °C' },
  ],
  [
    { value: 1, unit: 'mg/L', basis: 'as itself' },
    { unit: 'mg/L', basis: 'as N' },
  ],
  [
    { value: 1, unit: 'mg/L', basis: 'as Ca' },
    { unit: 'mg/L', basis: 'as N' },
  ],
  [
    { value: 1, unit: 'ppm', basis: 'as itself' },
    { unit: 'mg/L', basis: 'as itself' },
  ],
  [
    { value: 1, unit: 'mg/L', basis: '' },
    { unit: 'mg/L', basis: 'as itself' },
  ],
  [
    { value: 1, unit: 'ppm', basis: 'x' },
    { unit: 'ppm', basis: 'x' },
  ],
])('%o cannot be told in %o', (told, as) => {
  expect(toldIn(told, as)).toBeUndefined();
});

test('a basis is never guessed where rules differ', () => {
  expect(['TOC', 'silver', 'nitrate', 'hardness'].map(basisUnlessSaid)).toEqual([
    'as C',
    'as itself',
    undefined,
    undefined,
  ]);
});

describe('a choice', () => {
  const ids = (change: Partial<Parameters<typeof chosenRows>[1]>) => {
    const chosen = chosenRows(taken(), { use: 'drink', exposureDays: 5, ...change });
    return chosen.ok ? chosen.rows.map(({ id }) => id) : chosen.findings.map(({ code }) => code);
  };

  test('takes the nearest row that is not for a shorter time', () => {
    expect(ids({ exposureDays: 5 })).toEqual(['silver range', 'nickel 10 d']);
    expect(ids({ exposureDays: 10 })).toEqual(['silver range', 'nickel 10 d']);
    expect(ids({ exposureDays: 11 })).toEqual(['silver range', 'nickel 100 d']);
  });
  test('is refused where no row reaches so far, or where nobody said how far', () => {
    expect(ids({ exposureDays: 101 })).toEqual(['limit-exposure-uncovered', 'limit-exposure-uncovered']);
    expect(ids({ exposureDays: Number.NaN })).toHaveLength(3);
  });
  test('takes the rows that it names, and no others', () => {
    expect(ids({ exposureDays: 200, rows: ['silver range'] })).toEqual(['silver range']);
    expect(ids({ rows: [] })).toEqual([]);
    expect(ids({ use: 'medical', exposureDays: 10 })).toEqual(['silver range', 'nickel 10 d']);
  });
});

describe('a typed limit', () => {
  const typed: TypedLimit = {
    atMost: 0.9,
    unit: 'mg/L',
    basis: 'as itself',
    by: 'medic',
    copy: 'edition 3, page 4',
    atMs: 5,
  };
  const row = rowOf('nickel 10 d');

  test('puts the row in force in its own unit, and says who typed it from which copy', () => {
    const on = switchedOn(row, typed);
    expect(on.ok && on.row).toEqual({
      ...row,
      limit: { atMost: 900 },
      typed: { by: 'medic', copy: 'edition 3, page 4', atMs: 5 },
    });
    expect(row.limit).toBeNull();
  });

  test('tells everything that it lacks at once', () => {
    const { atMost: _left, ...bare } = typed;
    const on = switchedOn(row, { ...bare, atLeast: -1, by: '', unit: 'mg/L' });
    expect(on.ok ? [] : on.findings.map(({ code }) => code)).toEqual([
      'typed-limit-copy',
      'typed-limit-side',
      'typed-limit-range',
    ]);
  });

  test('of a row of which nothing is remembered is one side at least', () => {
    const { atMost: _left, ...bare } = typed;
    const on = switchedOn({ ...row, remembered: null }, bare);
    expect(on.ok ? [] : on.findings.map(({ data }) => data['missing'])).toEqual([['atLeast or atMost']]);
    expect(switchedOn({ ...row, remembered: null }, { ...bare, atLeast: 0.1 }).ok).toBe(true);
  });

  test.each([-1, Number.NaN, Number.POSITIVE_INFINITY, 1e7])('cannot be %s', (atMost) => {
    expect(switchedOn(row, { ...typed, atMost }).ok).toBe(false);
  });
});

describe('silver dosed on purpose', () => {
  const corrie = example('corrie');
  const drinking = corrie.grades.find(({ id }) => id === 'drinking') as Grade;
  const policy = policyLimitSet(corrie);
  const aesthetic = taken(readFileSync(join(ROOT, 'limits/national-aesthetic-limits.yaml'), 'utf8'));
  const kinds = (set: LimitSet, own?: LimitSet) =>
    clashesOf(set, drinking, own).map(({ kind, row }) => `${row.id}: ${kind}`);

  test('fails a limit for taste and look on the ground, and the clash says by how much', () => {
    expect(clashesOf(aesthetic, drinking)).toMatchObject([
      {
        kind: 'dose-above',
        grade: 'drinking',
        biocide: 'silver',
        doseMgPerL: 0.2,
        rowMgPerL: { atMost: 0.1 },
      },
    ]);
    expect(kinds(aesthetic, policy)).toEqual([
      'silver most: dose-above',
      'silver most: part-of-policy-fails',
    ]);
  });
  test('meets the policy of its own outpost, and water without a biocide clashes with nothing', () => {
    expect(kinds(policy, policy).filter((told) => told.includes('dose'))).toEqual([]);
    const technical = corrie.grades.find(({ id }) => id === 'technical') as Grade;
    expect(clashesOf(aesthetic, technical, policy)).toEqual([]);
  });
  test('is told apart: too little, no water at all, a row that is off', () => {
    const set = (change: Partial<LimitRow>): LimitSet => ({
      ...aesthetic,
      rows: [{ ...rowOf('silver most', aesthetic), ...change }],
    });
    expect(kinds(set({ limit: { atLeast: 300 }, unit: 'µg/L' }))).toEqual(['silver most: dose-below']);
    expect(kinds(set({ limit: { atMost: 0.01 } }), policy)).toEqual([
      'silver most: dose-above',
      'silver most: no-water-meets-both',
    ]);
    expect(kinds(set({ limit: null }), policy)).toEqual([]);
  });
});

describe('the limits of an outpost file', () => {
  test('are a set of what its instruments measure in water', () => {
    const { rows } = policyLimitSet(example('corrie'));
    expect(rows.map(({ id }) => id)).toEqual([
      'TOC most',
      'silver least',
      'silver most',
      'plate count most',
      'conductivity most',
    ]);
    expect(rows[0]).toMatchObject({ basis: 'as C', limit: { atMost: 3 }, evidence: 'policy' });
    expect(rows[0]?.source).toBe('invented policy of this practice outpost, not a standard');
  });
  test('from memory stay off, and a unit that no result has holds', () => {
    const polar = example('polar');
    const free = policyLimitSet(polar).rows.find(({ id }) => id === 'free chlorine most');
    expect(free).toMatchObject({ limit: null, remembered: { atMost: 1 }, evidence: 'memory' });
    const [limit] = polar.limits;
    if (limit === undefined) throw new Error('the polar base has no limit');
    const odd = { ...limit, unit: 'kPa', status: 'policy', basis: 'outpost policy' } as const;
    expect(policyLimitSet({ ...polar, limits: [odd] }).rows[0]?.limit).toBeNull();
  });
});
