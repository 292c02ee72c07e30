// The three outposts that ship are read without a finding, whole, frozen, and the same every time.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { changed, SMALL_OUTPOST } from '../../tests/outpost/small-outpost.ts';
import { indexOutpost } from './index-outpost.ts';
import type { Outpost } from './outpost.ts';
import { readOutpost } from './read-outpost.ts';

const EXAMPLES = join(import.meta.dirname, '../../examples');
const exampleText = (name: string) => readFileSync(join(EXAMPLES, name, 'outpost.yaml'), 'utf8');

function taken(text: string): Outpost {
  const read = readOutpost(text, { file: 'outpost.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.findings));
  expect(read.findings).toEqual([]);
  return read.outpost;
}

const codesOf = (text: string) => {
  const read = readOutpost(text, { file: 'outpost.yaml' });
  return read.findings.map(({ code, where }) => `${where.line} ${code} ${where.field}`);
};

function countOfObjects(value: unknown, each: (value: object) => void): number {
  if (typeof value !== 'object' || value === null) return 0;
  each(value);
  return 1 + Object.values(value).reduce((sum: number, inner) => sum + countOfObjects(inner, each), 0);
}

describe.each(['corrie', 'polar', 'lunar'])('%s', (name) => {
  const outpost = taken(exampleText(name));

  test('is frozen throughout, of plain objects', () => {
    const objects = countOfObjects(outpost, (value) => {
      expect(Object.isFrozen(value)).toBe(true);
      expect([Object.prototype, Array.prototype]).toContain(Object.getPrototypeOf(value));
    });
    expect(objects).toBeGreaterThan(50);
  });

  test('is the same when it is read again, and survives JSON', () => {
    expect(taken(exampleText(name))).toEqual(outpost);
    expect(JSON.parse(JSON.stringify(outpost))).toEqual(outpost);
  });

  test('reads the same with line ends of another system and a byte order mark', () => {
    expect(taken(`\uFEFF${exampleText(name).replaceAll('\n', '\r\n')}`)).toEqual(outpost);
  });
});

describe('Corrie', () => {
  const index = indexOutpost(taken(exampleText('corrie')));

  test('has every store of its groups, in the order of the file', () => {
    const ids = [...index.stores.keys()];
    expect(ids).toHaveLength(35);
    expect(ids.slice(0, 4)).toEqual(['R1', 'R2', 'C-01', 'C-02']);
    expect(index.stores.get('C-17')).toMatchObject({
      name: 'portable container C-17',
      comesWith: 'Pannier 8',
      fillL: 20.5,
    });
    expect(index.stores.get('KB')).toMatchObject({ name: 'condensate buffer', holds: 'raw', reserve: false });
  });

  test('counts tap water from the product buffer, then the container, then the reserve by entry only', () => {
    expect(index.instrumentsByLogField.get('dispenser_strokes')?.route).toEqual({
      from: [
        { store: 'PB', downToRemainder: true, onlyByEntry: false },
        { port: 'dispenser feed' },
        { store: 'R1', downToRemainder: false, onlyByEntry: true },
      ],
      to: { pool: 'people' },
      use: 'drink',
      through: 'dispenser',
    });
  });

  test('counts product behind the purifier and condensate out of the cabin air', () => {
    expect(index.instruments.get('product')?.route).toMatchObject({
      to: { store: 'PB' },
      through: 'purifier',
    });
    expect(index.instruments.get('condensate')?.route).toMatchObject({
      from: [{ pool: 'cabin air' }],
      to: { store: 'KB' },
      through: 'main condenser',
    });
  });

  test('keeps all that was known of a visit, in the order in which it became known', () => {
    expect(index.visits.get('Pannier 9')?.map((visit) => visit.knownSinceDay)).toEqual([1, 46]);
    expect([...index.visits.keys()]).toEqual(['Pannier 8', 'Pannier 9', 'Pannier 10', 'Coracle 12']);
  });
});

test('a dip stick leads to litres by a table that is no straight line', () => {
  const rows = indexOutpost(taken(exampleText('polar'))).stores.get('T-2')?.gaugeTable ?? [];
  const half = rows.find(({ depthMm }) => depthMm === 900);
  const quarter = rows.find(({ depthMm }) => depthMm === 450);
  expect(half?.volumeL).toBe(3054);
  expect(quarter?.volumeL).toBeLessThan((half?.volumeL ?? 0) / 2);
});

describe('all faults at once', () => {
  test('of several sections, in the order of the text', () => {
    const text = [
      ['dayLineAt: ', 'dayLineAtt: '],
      ['capacityL: 100', 'capacityL: -1'],
      ['gauge: balance', 'gauge: balanse'],
      ['reliefOverCabinKPa: 60', 'reliefOverCabinKPa: 30'],
      ['floorL: 60', 'floorL: .inf'],
    ].reduce((edited, [from, to]) => changed(from as string, to as string, edited), SMALL_OUTPOST);
    expect(codesOf(text)).toEqual([
      '4 key-missing outpost.dayLineAt',
      '9 key-unknown outpost.dayLineAtt',
      '29 value-out-of-range stores[R1].capacityL',
      '46 id-unknown stores[C-01].gauge',
      '77 amount-order push.setOverCabinKPa',
      '88 number-not-finite policy.reserve.floorL',
    ]);
  });

  test('a reference to a store with a fault of its own is no second fault', () => {
    expect(codesOf(changed('capacityL: 100', 'capacityL: many'))).toEqual([
      '29 value-wrong-kind stores[R1].capacityL',
    ]);
  });

  test('a reference into a section that cannot be read is no second fault', () => {
    expect(codesOf(changed('places:\n  - { id: hut }', 'places: hut'))).toEqual([
      '16 value-wrong-kind places',
    ]);
  });

  test('a fault in a list is placed by its own line, also behind a faulty item', () => {
    const text = changed('gauge: balance', 'gauge: balanse', changed('capacityL: 100', 'capacityL: many'));
    expect(codesOf(text)).toEqual([
      '29 value-wrong-kind stores[R1].capacityL',
      '46 id-unknown stores[C-01].gauge',
    ]);
  });
});

test('a column is counted in signs from 1', () => {
  const read = readOutpost(changed('rank: 1,', 'rank: 0,'), { file: 'a.yaml' });
  const line = SMALL_OUTPOST.split('\n')[18] ?? '';
  expect(read.findings[0]?.where).toEqual({
    file: 'a.yaml',
    line: 19,
    column: line.indexOf('rank: ') + 'rank: '.length + 1,
    field: 'grades[drinking].rank',
  });
});
