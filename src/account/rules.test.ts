// What may flow into what: every pair of grades of Corrie against a table that is written out, biocides, reserve and holds.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HOLM } from '../../tests/journeys/holm.ts';
import { outpostOf } from '../../tests/journeys/told.ts';
import { changed } from '../../tests/outpost/small-outpost.ts';
import { indexOutpost, type OutpostIndex } from '../outpost/index.ts';
import { Fold } from './fold.ts';
import { biocidesIn, gradeAfter, ruleBreaks, type Side } from './rules.ts';

const corrie = outpostOf(
  readFileSync(join(import.meta.dirname, '../../examples/corrie/outpost.yaml'), 'utf8'),
);
const index = indexOutpost(corrie);

/** A store as the rules see it; its facts are those of a store of the fold. */
function side(fold: Fold, id: string, change: Partial<Side> = {}): Side {
  const state = fold.stores.get(id);
  if (state === undefined) throw new Error(`no store ${id}`);
  return {
    ...state,
    emptied: false,
    biocides: [],
    release: 'own sample',
    hold: null,
    conditional: null,
    ...change,
  };
}

const fold = new Fold(corrie);
const codes = (from: Side, to: Side, by: OutpostIndex = index) =>
  ruleBreaks(by, from, to).map(({ code }) => code);

/** Rows give, columns take: drinking, technical, iodine, raw, waste. `y`: nothing of grades speaks against it. */
const GRADES = ['drinking', 'technical', 'iodine', 'raw', 'waste'];
const INTO_FILLED = ['yy..y', '.y..y', '..y.y', '...yy', '....y'];
/** Into a container that was emptied after that grade: it may go down to what comes, never up, and never down to waste. */
const INTO_EMPTIED = ['yy..y', 'yy..y', 'yyy.y', 'yyyyy', '....y'];
/** What is in the container afterwards, where it may flow. */
const AFTER_EMPTIED = [
  ['drinking', 'technical', null, null, 'waste'],
  ['technical', 'technical', null, null, 'waste'],
  ['iodine', 'iodine', 'iodine', null, 'waste'],
  ['raw', 'raw', 'raw', 'raw', 'waste'],
  [null, null, null, null, 'waste'],
];

describe.each(GRADES.map((from, row) => ({ from, row })))('out of $from', ({ from, row }) => {
  test.each(GRADES.map((to, column) => ({ to, column })))('into $to', ({ to, column }) => {
    const gives = side(fold, 'C-01', { grade: from });
    const filled = side(fold, 'C-02', { grade: to });
    const emptied = side(fold, 'C-02', { grade: to, emptied: true });
    expect(codes(gives, filled).includes('grade-may-not-flow')).toBe(INTO_FILLED[row]?.[column] !== 'y');
    expect(codes(gives, emptied).includes('grade-may-not-flow')).toBe(INTO_EMPTIED[row]?.[column] !== 'y');
    const after = AFTER_EMPTIED[row]?.[column];
    if (after != null) expect(gradeAfter(index, gives, emptied)).toBe(after);
  });
});

describe('grades', () => {
  test('a store that the file ties to one grade does not go down, emptied or not', () => {
    const raw = side(fold, 'C-01', { grade: 'raw' });
    expect(codes(raw, side(fold, 'PB', { emptied: true }))).toContain('grade-may-not-flow');
    expect(codes(side(fold, 'C-01', { grade: 'technical' }), side(fold, 'R1', { emptied: true }))).toContain(
      'grade-may-not-flow',
    );
  });

  test('a store that was never used takes anything and becomes it', () => {
    const clean = side(fold, 'C-02', { grade: null, emptied: true });
    for (const grade of GRADES) {
      expect(codes(side(fold, 'C-01', { grade }), clean)).toEqual([]);
      expect(gradeAfter(index, side(fold, 'C-01', { grade }), clean)).toBe(grade);
    }
  });

  test('where containers may not go down, they do not', () => {
    const strict = indexOutpost(
      outpostOf(
        changed(
          'survivalLPerPersonDay: 2\n',
          'survivalLPerPersonDay: 2\n  containersMayGoDown: false\n',
          HOLM,
        ),
      ),
    );
    const gives = side(fold, 'C-01', { grade: 'technical' });
    const emptied = side(fold, 'C-02', { grade: 'drinking', emptied: true });
    expect(codes(gives, emptied, strict)).toContain('grade-may-not-flow');
  });

  test('a terminal grade stays what it is under any name', () => {
    const renamed = indexOutpost(
      outpostOf(
        HOLM.replaceAll('id: waste,', 'id: grey,')
          .replaceAll(', waste]', ', grey]')
          .replaceAll('[waste]', '[grey]')
          .replaceAll('holds: waste', 'holds: grey')
          .replaceAll('takes: waste', 'takes: grey'),
      ),
    );
    const drinking = side(fold, 'C-01', { grade: 'drinking' });
    expect(codes(drinking, side(fold, 'C-02', { grade: 'grey', emptied: true }), renamed)).toEqual([]);
    expect(gradeAfter(renamed, drinking, side(fold, 'C-02', { grade: 'grey', emptied: true }))).toBe('grey');
  });
});

describe('biocides', () => {
  const silver = side(fold, 'C-01', { grade: 'drinking' });
  const iodine = side(fold, 'C-02', { grade: 'iodine' });

  test('silver and iodine meet in neither direction, in a rest neither', () => {
    expect(codes(silver, iodine)).toContain('biocides-meet');
    expect(codes(iodine, silver)).toContain('biocides-meet');
    expect(codes(iodine, { ...silver, emptied: true })).toContain('biocides-meet');
    expect(codes(silver, { ...iodine, emptied: true })).toContain('biocides-meet');
  });

  test('a file may say it of one of the two only: it holds both ways', () => {
    const holm = indexOutpost(outpostOf(HOLM));
    expect(codes(silver, iodine, holm)).toContain('biocides-meet');
    expect(codes(iodine, silver, holm)).toContain('biocides-meet');
  });

  test('a file may say that a rest does not count', () => {
    const lenient = indexOutpost(
      outpostOf(changed('neverMeets: [iodine] }', 'neverMeets: [iodine], alsoInRemainder: false }', HOLM)),
    );
    expect(codes(iodine, { ...silver, emptied: true }, lenient)).not.toContain('biocides-meet');
    expect(codes(iodine, silver, lenient)).toContain('biocides-meet');
  });

  test('what a store has met goes on with its water', () => {
    const technical = side(fold, 'C-03', { grade: 'technical', biocides: ['silver'] });
    expect(biocidesIn(index, technical)).toEqual(['silver']);
    expect(codes(technical, iodine)).toContain('biocides-meet');
    expect(codes(side(fold, 'C-03', { grade: 'technical' }), iodine)).not.toContain('biocides-meet');
  });
});

describe('the reserve', () => {
  const reserve = side(fold, 'R1', {});
  test.each([
    ['own sample', false],
    ['made here', false],
    ['opening', false],
    ['loader’s certificate', true],
    ['none', true],
  ] as const)('released by %s: refused %s', (release, refused) => {
    expect(
      codes(side(fold, 'C-01', { grade: 'drinking', release }), reserve).includes('reserve-unreleased'),
    ).toBe(refused);
  });

  test('from one reserve tank to the other nothing is asked', () => {
    expect(codes(side(fold, 'R2', { release: 'none' }), reserve)).toEqual([]);
  });
});

describe('holds', () => {
  const hold = { hold: 'Q-1', sinceMs: 0, reason: 'count too high', entry: 'e' };
  const held = side(fold, 'C-01', { grade: 'drinking', hold });

  test('held water stays where it is, except for waste', () => {
    expect(codes(held, side(fold, 'C-02', { grade: 'drinking' }))).toEqual(['held-water-moved']);
    expect(codes(held, side(fold, 'W-01'))).toEqual([]);
  });

  test('a vehicle tank that was relabelled waste is waste too', () => {
    expect(codes(held, side(fold, 'C-02', { grade: 'waste' }))).toEqual([]);
  });

  test('conditional water stays where it is, except for waste and what is under the same word', () => {
    const conditional = side(fold, 'R2', { grade: 'drinking', conditional: hold });
    expect(codes(conditional, side(fold, 'C-12', { grade: 'drinking' }))).toEqual([
      'conditional-water-moved',
    ]);
    expect(codes(conditional, side(fold, 'C-12', { grade: 'drinking', conditional: hold }))).toEqual([]);
    expect(codes(conditional, side(fold, 'W-01'))).toEqual([]);
  });

  test('what breaks several rules is told of all of them', () => {
    const bad = side(fold, 'C-01', { grade: 'iodine', hold, release: 'none' });
    expect(codes(bad, side(fold, 'R1'))).toEqual([
      'biocides-meet',
      'grade-may-not-flow',
      'reserve-unreleased',
      'held-water-moved',
    ]);
  });
});
