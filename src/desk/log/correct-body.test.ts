// Corrections: of one amount, of readings, and what the daybook, a store and the next day line tell of them.
import { beforeEach, describe, expect, test } from 'vitest';
import { ask, KEEPER, practiceDesk, saidOf } from '../../../tests/field-log/practice-desk.ts';
import { showBook } from '../daybook.ts';
import type { Desk } from '../desk.ts';
import { storeShow } from '../stores.ts';
import { dayForm } from './day-form.ts';

let desk: Desk;
beforeEach(async () => {
  desk = await practiceDesk();
});

const NOW = { kind: 'now' } as const;
const LINE = { what: 'day', readings: { strokes: '452', product: '6.9', condensate: '305.6' } } as const;
const EVENING = { at: 'D61T21:00' };

async function kept(...asked: Parameters<typeof ask>): Promise<string> {
  const answer = await ask(...asked);
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
  return answer.value.line.ref;
}
async function lines(query: Parameters<typeof showBook>[1]) {
  const answer = await showBook(desk, query, NOW, KEEPER);
  if (!answer.ok) throw new Error('no daybook');
  return answer.value.lines;
}
async function lastOf(instrument: string) {
  const form = await dayForm(desk, KEEPER);
  if (!form.ok) throw new Error('no form');
  return form.value.items.find((item) => item.instrument === instrument)?.last;
}

describe('the next day line', () => {
  test('knows nothing of a line that was undone', async () => {
    const before = await lastOf('strokes');
    const entry = await kept(desk, LINE, EVENING);
    expect(await lastOf('strokes')).toBe(452);
    await kept(desk, { what: 'undo', entry });
    expect(await lastOf('strokes')).toBe(before);
  });

  test('goes on from a corrected reading', async () => {
    const entry = await kept(desk, LINE, EVENING);
    await kept(desk, { what: 'correct', entry, readings: { strokes: '425' }, reason: 'misread' });
    expect([await lastOf('strokes'), await lastOf('product')]).toEqual([425, 6.9]);
  });
});

describe('a correction', () => {
  test('of a reading tells from what to what, and its entry what counts now', async () => {
    const entry = await kept(desk, LINE, EVENING);
    const correct = { what: 'correct', entry, readings: { strokes: '425' }, reason: 'misread' } as const;
    const ref = await kept(desk, correct);
    const [line, correction] = await lines({ most: 2 });
    expect(line).toMatchObject({ ref: entry, correctedBy: ref, mayCorrect: 'readings' });
    expect(line?.text).toContain('strokes 452');
    expect(line?.now).toContain('strokes 425');
    expect(correction?.text).toBe(`correction of entry ${entry}, strokes 452 to 425: misread`);
  });

  test('of an amount tells it in the daybook and in the history of its store', async () => {
    const entry = await kept(desk, { what: 'move', amount: '2L', from: 'C-10', to: 'C-09' });
    await kept(desk, { what: 'correct', entry, value: '1.5L', reason: 'miscounted' });
    const shown = await storeShow(desk, { store: 'C-09', history: 2 }, NOW, KEEPER);
    const [moved, correction] = shown.ok ? shown.value.history : [];
    expect([moved?.text, moved?.now]).toEqual([
      'move 2\u00A0L from C-10 to C-09',
      'move 1.5\u00A0L from C-10 to C-09',
    ]);
    expect(correction?.text).toBe(`correction of entry ${entry}, from 2\u00A0L to 1.5\u00A0L: miscounted`);
  });

  test('of a reading that cannot well be true is asked about like the line itself', async () => {
    const entry = await kept(desk, LINE, EVENING);
    const correct = (readings: Readonly<Record<string, string>>) =>
      saidOf(ask(desk, { what: 'correct', entry, readings, reason: 'misread' }));
    expect(await correct({ strokes: '99999' })).toBe('ask first: reading-unusual strokes');
    expect(await correct({ humidity: '480' })).toBe('ask first: reading-unusual humidity');
    expect(await correct({ strokes: '430.5' })).toBe('bad input: figure-not-whole strokes');
    expect(await correct({})).toBe('bad input: field-needed readings');
  });

  test('is not offered where there is nothing to be told anew, and the refusal says so', async () => {
    const entry = await kept(desk, { what: 'hookup', store: 'C-10', port: 'electrolyser/flush feed' });
    const [line] = await lines({ most: 1 });
    expect(line?.mayCorrect).toBeNull();
    expect(await saidOf(ask(desk, { what: 'correct', entry, value: '1L', reason: 'x' }))).toBe(
      'bad input: not-correctable',
    );
  });
});

describe('an entry of a field log', () => {
  test('is found by its name there, and has the number of the book', async () => {
    const found = await lines({ find: 'e0247' });
    expect(found.map(({ ref, fileRef }) => [ref, fileRef])).toEqual([['corrie 248', 'E0247']]);
    expect((await lines({ find: 'corrie 248' })).map(({ fileRef }) => fileRef)).toEqual(['E0247']);
    expect((await lines({ find: 'separator', most: 1 })).length).toBe(1);
    expect(await lines({ find: 'nothing has these letters' })).toEqual([]);
  });

  test('is undone by its name there', async () => {
    expect(await saidOf(ask(desk, { what: 'undo', entry: 'E0247' }))).toBe('kept');
    expect(await saidOf(ask(desk, { what: 'undo', entry: 'E9999' }))).toBe('not in book: not-in-book entry');
  });
});
