// What may be asked to go where, on the practice book: an intention is refused with its way out, a fact is kept and told.
import { beforeEach, describe, expect, test } from 'vitest';
import { ask, practiceDesk, saidOf } from '../../../tests/field-log/practice-desk.ts';
import type { Desk } from '../desk.ts';

let desk: Desk;
beforeEach(async () => {
  desk = await practiceDesk();
});

const move = (from: string, to: string, amount = '1L') => ({ what: 'move', amount, from, to }) as const;

describe('an emptied drinking container', () => {
  test.each([
    ['waste', 'W-01', 'refused: intention-refused grade'],
    ['conditional reserve', 'R2', 'refused: intention-refused conditional, intention-refused reserve-draw'],
    ['reserve', 'R1', 'refused: intention-refused reserve-draw'],
  ])('is not for %s', async (_, from, refused) => {
    expect(await saidOf(ask(desk, move(from, 'C-12')))).toBe(refused);
    expect(await saidOf(ask(desk, { what: 'fill', store: 'C-12', amount: '1L', from }))).toBe(refused);
  });

  test('takes technical water, and is technical from then on', async () => {
    const filled = await ask(desk, move('C-10', 'C-12'));
    expect(await saidOf(Promise.resolve(filled))).toBe('kept');
    expect(filled.ok && filled.value.became).toEqual(['C-12 is technical from now on; it was drinking.']);
  });

  test('that got waste in fact is waste, waits, and this is told at once', async () => {
    const fact = await ask(desk, move('W-01', 'C-12'), { happened: 'wrong hose' });
    expect(fact.ok && fact.value.became).toEqual([
      'C-12 is waste from now on; it was drinking.',
      expect.stringMatching(/^C-12 is on HOLD \(rule corrie \d+\) from now on\.$/),
      expect.stringMatching(/^W-01 is on HOLD/),
    ]);
    expect(fact.ok && fact.value.findings.map(({ code }) => code)).toContain('grade-may-not-flow');
  });

  test('that got conditional water in fact is conditional', async () => {
    const fact = await ask(desk, move('R2', 'C-12'), { happened: 'no other left' });
    expect(fact.ok && fact.value.became).toEqual(['C-12 is CONDITIONAL (Q-01) from now on.']);
    expect(fact.ok && fact.value.findings.map(({ code }) => code)).toContain('conditional-water-moved');
  });

  test('and a run or a push that is begun is asked by the same rules', async () => {
    const told = (kind: string, fields: Readonly<Record<string, unknown>>) =>
      ({ what: 'told', kind, fields }) as const;
    expect(await saidOf(ask(desk, told('run-start', { run: 'x', from: 'W-01', to: 'C-12' })))).toBe(
      'refused: intention-refused grade',
    );
    const legs = { from: [{ store: 'W-01', amount: '1L' }], to: [{ store: 'C-12', amount: '1L' }] };
    expect(await saidOf(ask(desk, told('push', { ...legs, amount: '1L' })))).toBe(
      'refused: intention-refused grade',
    );
  });
});

describe('the reserve', () => {
  test('is drawn by the office that the outpost file names, and by no other', async () => {
    expect(await saidOf(ask(desk, move('R1', 'C-12'), {}, 'chief'))).toBe('kept');
    expect(await saidOf(ask(desk, { what: 'use', amount: '1L', use: 'drink', from: 'R1' }))).toBe(
      'refused: intention-refused reserve-draw',
    );
    expect(await saidOf(ask(desk, { what: 'drink', amount: '8' }))).toBe('kept');
  });

  test('that is conditional is not drunk', async () => {
    const drink = { what: 'use', amount: '1L', use: 'drink', from: 'R2' } as const;
    expect(await saidOf(ask(desk, drink, {}, 'chief'))).toBe('refused: intention-refused conditional');
  });
});
