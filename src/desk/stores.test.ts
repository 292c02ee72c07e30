// "May I use this water?": what it may not be used for comes first, for every store of the practice book.
import { beforeAll, expect, test } from 'vitest';
import { ask, KEEPER, practiceDesk } from '../../tests/field-log/practice-desk.ts';
import type { Desk } from './desk.ts';
import { storeList, storeShow } from './stores.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await practiceDesk();
  const drained = await ask(
    desk,
    { what: 'use', use: 'flush', amount: '4L', from: 'C-09' },
    { happened: 'so' },
  );
  if (!drained.ok) throw new Error('not drained');
  const filled = await ask(desk, { what: 'move', amount: '5L', from: 'R1', to: 'C-11' }, {}, 'chief');
  if (!filled.ok) throw new Error('not filled');
});

async function answerOf(store: string): Promise<string> {
  const shown = await storeShow(desk, { store }, { kind: 'now' }, KEEPER);
  return shown.ok ? shown.value.answer : 'no answer';
}

test.each([
  ['KB', /^Do not drink\. It is raw water; only the purifier may take it\.$/],
  ['C-10', /^Do not drink\. It is technical water, for electrolyser and flush alone: /],
  ['W-01', /^Do not drink\. It is waste\.$/],
  ['R2', /^Do not drink, but in an emergency\. CONDITIONAL Q-01 since /],
  ['C-01', /^Do not count on it: nothing above its usable remainder is in it\.$/],
  ['C-09', /^Do not drink\. By the book less than nothing is in it: /],
  ['C-11', /^Yes, as drinking water by the rules of this outpost: /],
])('%s', async (store, words) => {
  expect(await answerOf(store)).toMatch(words);
});

test('no store of another grade than drinking is answered with a yes', async () => {
  const list = await storeList(desk, { kind: 'now' }, KEEPER);
  if (!list.ok) throw new Error('no list');
  const others = list.value.stores.filter(({ grade }) => grade !== 'drinking');
  expect(others.length).toBeGreaterThan(5);
  for (const { id } of others) expect(await answerOf(id)).toMatch(/^Do not /);
});
