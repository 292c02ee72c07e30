// An undo without a number: the youngest entry of the last ten minutes, then the next older one, and so on.
import { expect, test } from 'vitest';
import { ask, KEEPER, practiceDesk, saidOf } from '../../../tests/field-log/practice-desk.ts';
import { log } from './log.ts';

test('takes back one after the other, over all the hours that a practice book leaps', async () => {
  const desk = await practiceDesk();
  const refs: string[] = [];
  for (const [request, at] of [
    [{ what: 'drink', amount: '8' }, 'D61T08:00'],
    [{ what: 'move', amount: '1L', from: 'C-10', to: 'C-09' }, 'D61T09:00'],
    [{ what: 'day', readings: { strokes: '430' } }, 'D61T21:00'],
  ] as const) {
    const kept = await ask(desk, request, { at });
    refs.unshift(kept.ok ? kept.value.line.ref : 'not kept');
  }
  const undone: string[] = [];
  for (let k = 0; k < 3; k++) {
    const answer = await ask(desk, { what: 'undo' });
    undone.push(answer.ok ? answer.value.line.text : 'refused');
  }
  expect(undone).toEqual(refs.map((ref) => `undo of entry ${ref}`));
  expect(await saidOf(ask(desk, { what: 'undo' }))).toBe('bad input: nothing-to-undo');
});

test('goes back no further than ten minutes, and touches nothing of another office', async () => {
  const desk = await practiceDesk();
  await ask(desk, { what: 'drink', amount: '8' });
  expect(await saidOf(ask(desk, { what: 'undo' }, {}, 'second'))).toBe('bad input: nothing-to-undo');
  const later = { ...KEEPER, nowUtcMs: KEEPER.nowUtcMs + 11 * 60_000 };
  expect(await saidOf(log(desk, later, { what: 'undo' }))).toBe('bad input: nothing-to-undo');
  expect(await saidOf(ask(desk, { what: 'undo' }))).toBe('kept');
});
