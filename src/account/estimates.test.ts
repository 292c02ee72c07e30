// The history of an estimate: what was believed at each line and around each entry, and each reading against it.
import { describe, expect, test } from 'vitest';
import { draftOf, holmBook, keep } from '../../tests/journeys/kept.ts';
import { at, dayLine, litres } from '../../tests/journeys/told.ts';
import { type AnyDraft, MemoryStore } from '../book/index.ts';
import { type StoreStory, storyOf } from './story.ts';

async function storyAfter(store: string, drafts: readonly AnyDraft[]): Promise<StoreStory> {
  const port = await holmBook();
  await keep(port, drafts);
  const outcome = await storyOf(port, store);
  if (!outcome.ok) throw new Error('no story');
  return outcome.story;
}

const L = 1_000_000;
const fill = draftOf(
  'movement',
  { from: 'C-01', to: 'C-03', amount: litres(10, 0.2) },
  { atMs: at(1, 9), count: 3 },
);
const line = draftOf('day-line', dayLine(1, { condensate: 994, product: 3, strokes: 40, flushes: 4 }), {
  atMs: at(1, 21),
  count: 4,
});
const weight = draftOf('weigh', { store: 'C-03', amount: litres(10.4, 0.2) }, { atMs: at(2, 9), count: 5 });

describe('estimates', () => {
  test('stand at each line, and before and after each entry that touched the store', async () => {
    const { estimates } = await storyAfter('C-03', [fill, line, weight]);
    expect(estimates.map(({ when, atMs }) => [when, atMs])).toEqual([
      ['after', at(0, 21)],
      ['before', at(1, 9)],
      ['after', at(1, 9)],
      ['line', at(1, 21)],
      ['before', at(2, 9)],
      ['after', at(2, 9)],
    ]);
    expect(estimates.map(({ massMg }) => Math.round(massMg / (0.1 * L)) / 10)).toEqual([
      0, 0, 10, 10, 10, 10.2,
    ]);
    const [before, after] = estimates.slice(-2);
    expect(after?.uMg).toBeLessThan(before?.uMg ?? 0);
  });

  test('do not stand where nothing touched the store', async () => {
    const { estimates } = await storyAfter('C-04', [fill, weight]);
    expect(estimates.map(({ when }) => when)).toEqual(['after']);
  });
});

describe('readings', () => {
  test('stand beside what was believed, with a difference that has the doubt of both', async () => {
    const { gaugings } = await storyAfter('C-03', [fill, line, weight]);
    expect(gaugings).toHaveLength(2);
    const [first, second] = gaugings;
    expect(first).toMatchObject({ how: 'opening', believed: null, difference: null, massMg: 0 });
    expect(second).toMatchObject({ how: 'weighed', massMg: 10.4 * L, uMg: 0.2 * L });
    // 0.05 L of the opening and 0.2 L of the fill; 0.2 L of the reading.
    expect((second?.believed?.uMg ?? 0) / L).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.2 ** 2), 4);
    expect((second?.difference?.massMg ?? 0) / L).toBeCloseTo(0.4, 4);
    expect((second?.difference?.uMg ?? 0) / L).toBeCloseTo(Math.sqrt(0.05 ** 2 + 0.2 ** 2 + 0.2 ** 2), 4);
  });

  test('of a store that is only reckoned are none but the first word', async () => {
    const { gaugings } = await storyAfter('KB', [fill, line]);
    expect(gaugings.map(({ how }) => how)).toEqual(['opening']);
  });
});

test('a book without an outpost file has no story', async () => {
  const port = new MemoryStore({ bookId: 'b', site: 'holm', purpose: 'book', createdAtMs: 0 });
  expect(await storyOf(port, 'C-01')).toEqual({ ok: false, findings: null });
});
