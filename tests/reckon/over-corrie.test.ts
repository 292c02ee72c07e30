// Calculators over the practice book: what they take from the outpost file, from stores, from runs and from the last gauging.
import { beforeAll, describe, expect, it } from 'vitest';
import { type Desk, readSight, reckonOver } from '../../src/desk/index.ts';
import type { ReckonSheet } from '../../src/papers/index.ts';
import { corrieDesk, MOMENT } from './corrie-at-the-end.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await corrieDesk();
});

async function asked(what: string, fields: Readonly<Record<string, string>>, at = 'D60') {
  const sight = await readSight(desk, MOMENT, { at: { text: at, field: 'at' }, asOf: undefined });
  if (!sight.ok) throw new Error(JSON.stringify(sight.findings));
  return await reckonOver(desk, { what, fields }, sight.value, MOMENT);
}

async function answered(
  what: string,
  fields: Readonly<Record<string, string>>,
  at?: string,
): Promise<ReckonSheet> {
  const answer = await asked(what, fields, at);
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
  return answer.value;
}

const result = (sheet: ReckonSheet, name: string) => {
  const found = sheet.results.find((each) => each.name === name);
  if (found === undefined) throw new Error(`no result is called ${name}`);
  return found;
};

describe('gauging', () => {
  it('R2 on Day 56: 173.6 L, u 1.6, and the tank itself makes most of it', async () => {
    const sheet = await answered('gauge', { store: 'R2', reading: 'last' });
    const water = result(sheet, 'water-in-tank');
    expect(water.value).toBeCloseTo(173.6, 1);
    expect((water.u95 ?? 0) / 2).toBeCloseTo(1.6, 1);
    const share = (name: string) => sheet.inputs.find((input) => input.name === name)?.share ?? 0;
    expect(share('tank') + share('seating')).toBeGreaterThan(0.95);
    expect(sheet.inputs.find(({ name }) => name === 'tank-after')?.refs).toEqual(['corrie 231']);
  });

  it('R1 on the same day', async () => {
    expect(
      result(await answered('gauge', { store: 'R1', reading: 'last' }), 'water-in-tank').value,
    ).toBeCloseTo(170.3, 1);
  });

  it('a full bottle into R2 is refused, and the rating is that of its own file', async () => {
    const answer = await asked('gauge', { store: 'R2', ullage: '6.4L', 'tank-before': '101.3kPa' });
    expect(answer).toMatchObject({ ok: false, problem: 'refused' });
    if (answer.ok) return;
    const { rule, endKPa, ratingKPa } = answer.findings[0]?.data ?? {};
    expect(rule).toBe('charge-too-high');
    expect(endKPa).toBeCloseTo(405.4, 1);
    expect(ratingKPa).toBeCloseTo(201.2, 6);
  });
});

describe('a transfer', () => {
  it('through H-1 is learned from its runs: 20.5 L take 15.9 min within 5 %', async () => {
    const sheet = await answered('transfer', { hose: 'H-1', volume: '20.5L' }, 'D30');
    const minutes = result(sheet, 'time').value / 60;
    expect(Math.abs(minutes / 15.9 - 1)).toBeLessThan(0.05);
    expect(sheet.sayings.map(({ key }) => key)).toContain('hose-learned');
  });

  it('before its first run the doubt is that of the formulas, and larger', async () => {
    const before = result(await answered('transfer', { hose: 'H-1', volume: '20.5L' }, 'D6'), 'time');
    const after = result(await answered('transfer', { hose: 'H-1', volume: '20.5L' }, 'D30'), 'time');
    expect(after.u95 ?? 0).toBeLessThan((before.u95 ?? 0) * 0.6);
  });

  it('takes what there is in one store, and no more than the other has room for', async () => {
    const sheet = await answered('transfer', { from: 'C-02', to: 'C-11', hose: 'H-1' }, 'D46');
    const volume = sheet.inputs.find(({ name }) => name === 'volume');
    expect(volume?.by).toBe('book');
    expect(volume?.value).toBeGreaterThan(19);
    expect(volume?.value).toBeLessThan(20.5);
    expect(volume?.u95).toBeGreaterThan(0);
  });

  it('above the lowest rating of hose, couplings and stores is refused', async () => {
    expect(await asked('transfer', { hose: 'H-1', to: 'C-11', over: '100kPa', volume: '1L' })).toMatchObject({
      ok: false,
      problem: 'refused',
    });
  });
});

it('a store that is not there is named with the nearest ones', async () => {
  const answer = await asked('pressure', { store: 'R9' });
  expect(answer).toMatchObject({ ok: false, problem: 'not in book' });
});

it('people and the cabin come from the book', async () => {
  const oxygen = await answered('oxygen', {}, 'D38');
  expect(oxygen.inputs.find(({ name }) => name === 'people')).toMatchObject({ value: 7, by: 'book' });
  const dew = await answered('dewpoint', { humidity: '50%' });
  expect(dew.inputs.find(({ name }) => name === 'cabin')).toMatchObject({ value: 101.2, by: 'outpost file' });
});
