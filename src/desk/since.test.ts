// What is new since a look: by how far the book went then where that is known, else by the time at which it was entered.
import { expect, test } from 'vitest';
import { deskOver, NOW } from '../../tests/docs/gallery/asked-desk.ts';
import { draftOf, holmBook, keep } from '../../tests/journeys/kept.ts';
import { at, litres } from '../../tests/journeys/told.ts';
import { lookNow, since } from './since.ts';

const hold = draftOf(
  'hold',
  { hold: 'Q-1', stores: ['C-04'], conditional: [], reason: 'smell' },
  { atMs: at(1, 8), count: 11 },
);
const drunk = draftOf(
  'movement',
  { from: 'C-04', to: 'people', amount: litres(1), use: 'drink' },
  { atMs: at(1, 9), count: 12 },
);

async function lookedAt() {
  const port = await holmBook();
  await keep(port, [drunk]);
  const desk = await deskOver(port);
  const look = await lookNow(desk, NOW);
  if (!look.ok) throw new Error('no look');
  return { port, desk, look: look.value };
}

test('a line that came in after the look is new, however long ago it was entered elsewhere', async () => {
  const { port, desk, look } = await lookedAt();
  await keep(port, [hold]);
  desk.forget();
  const sheet = await since(desk, look, NOW);
  expect(sheet).toMatchObject({ ok: true, value: { entries: 1, late: 1, heldSince: ['C-04'] } });
  // By the time of entering alone nothing would be new, and the hold would have been known.
  const byTime = await since(desk, { atMs: look.atMs }, NOW);
  expect(byTime).toMatchObject({ ok: true, value: { entries: 0, heldSince: [] } });
});

test('nothing is new right after a look', async () => {
  const { desk, look } = await lookedAt();
  expect(await since(desk, look, NOW)).toMatchObject({
    ok: true,
    value: { entries: 0, corrections: 0, late: 0, moved: [], newFindings: [], lines: [] },
  });
});

test('an amendment that came in after the look is not yet in what was believed then', async () => {
  const { port, desk, look } = await lookedAt();
  await keep(port, [draftOf('undo', { target: drunk.id }, { atMs: at(1, 10), count: 13 })]);
  desk.forget();
  const sheet = await since(desk, look, NOW);
  expect(sheet).toMatchObject({ ok: true, value: { entries: 1, corrections: 1 } });
  // A litre more than was believed then, and far more than its ±.
  const moved = sheet.ok ? sheet.value.moved.find(({ store }) => store === 'C-04') : undefined;
  expect((moved?.after.value ?? 0) - (moved?.before.value ?? 0)).toBeCloseTo(1, 9);
});

test('a look that has not happened yet is none, nor one by an office that is not there', async () => {
  const { desk } = await lookedAt();
  const later = await since(desk, { atMs: NOW.nowUtcMs + 1 }, NOW);
  expect(later.ok ? [] : later.findings.map(({ code }) => code)).toEqual(['in-the-future']);
  const stranger = await lookNow(desk, { ...NOW, by: 'cook' });
  expect(stranger.ok ? [] : stranger.findings.map(({ code }) => code)).toEqual(['office-unknown']);
});
