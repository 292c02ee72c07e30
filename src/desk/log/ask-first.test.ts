// What is asked before it is kept, on the practice book; a yes keeps it, with its finding, and a figure that says nothing never is.
import { beforeEach, describe, expect, test } from 'vitest';
import { ask, KEEPER, practiceDesk, saidOf } from '../../../tests/field-log/practice-desk.ts';
import { wordFinding } from '../../papers/index.ts';
import type { Desk } from '../desk.ts';
import { dayForm } from './day-form.ts';

let desk: Desk;
beforeEach(async () => {
  desk = await practiceDesk();
});

const EVENING = { at: 'D61T21:00' };
const day = (readings: Readonly<Record<string, string>>) => ({ what: 'day', readings }) as const;

describe('amounts', () => {
  test.each([
    ['500L', 'ask first: more-than-there amount, drink-large amount'],
    ['100000', 'ask first: more-than-there amount, drink-large amount'],
    ['200', 'ask first: drink-large amount'],
    ['80', 'kept'],
    ['0', 'bad input: amount-nothing amount'],
    ['5.5', 'bad input: figure-not-whole amount'],
    ['0L', 'bad input: amount-nothing amount'],
  ])('a drink of %s: %s', async (amount, said) => {
    expect(await saidOf(ask(desk, { what: 'drink', amount }))).toBe(said);
  });

  test('no reason makes nothing an amount', async () => {
    const fill = { what: 'fill', store: 'C-03', amount: '0L', from: 'outside' } as const;
    expect(await saidOf(ask(desk, fill, { happened: 'so it is', sure: true }))).toBe(
      'bad input: amount-nothing amount',
    );
  });

  test('a yes keeps the drink, and that it was asked changes nothing in the book', async () => {
    const before = await desk.port.count();
    expect(await saidOf(ask(desk, { what: 'drink', amount: '500L' }))).toMatch(/^ask first/);
    expect(await desk.port.count()).toBe(before);
    expect(await saidOf(ask(desk, { what: 'drink', amount: '500L' }, { sure: true }))).toBe('kept');
  });

  test('a fill from nowhere is asked where its water comes from', async () => {
    const fill = { what: 'fill', store: 'C-02', amount: '1L' } as const;
    expect(await saidOf(ask(desk, fill))).toBe('ask first: source-unsaid from');
    expect(await saidOf(ask(desk, fill, { sure: true }))).toBe('kept');
    expect(await saidOf(ask(desk, { ...fill, from: 'outside' }))).toBe('kept');
  });

  test('what is only tried shows the questions and asks none', async () => {
    const tried = await ask(desk, { what: 'drink', amount: '200' }, { dryRun: true });
    expect(tried.ok && tried.value.findings.map(({ code }) => code)).toContain('drink-large');
  });

  test('a correction to a drink that nobody takes is asked about, one to nothing refused', async () => {
    const drink = await ask(desk, { what: 'drink', amount: '8' });
    const entry = drink.ok ? drink.value.line.ref : '';
    const correct = (value: string) => ask(desk, { what: 'correct', entry, value, reason: 'miscount' });
    expect(await saidOf(correct('300'))).toBe('ask first: drink-large amount');
    expect(await saidOf(correct('0'))).toBe('bad input: amount-nothing amount');
    expect(await saidOf(correct('9'))).toBe('kept');
  });
});

describe('a day line', () => {
  const wild = {
    strokes: '99999',
    product: '6900',
    condensate: '12',
    humidity: '480',
    'cabin-temperature': '219',
  };

  test('far outside of what is expected is asked about at every field, and kept by a yes with its findings', async () => {
    expect(await saidOf(ask(desk, day(wild), EVENING))).toBe(
      'ask first: reading-unusual strokes, reading-unusual product, counter-below-last condensate, reading-unusual humidity, reading-unusual cabin-temperature',
    );
    const kept = await ask(desk, day(wild), { ...EVENING, sure: true });
    expect(kept.ok && kept.value.findings.length).toBeGreaterThan(3);
  });

  test('inside of what is expected is kept, at both ends of the range', async () => {
    const form = await dayForm(desk, KEEPER);
    if (!form.ok) throw new Error('no form');
    for (const end of ['low', 'high'] as const) {
      const typed = form.value.items.map((item) => [item.instrument, `${Math.round(item[end] ?? 0)}`]);
      const tried = await ask(desk, day(Object.fromEntries(typed)), { ...EVENING, dryRun: true });
      const codes = tried.ok ? tried.value.findings.map(({ code }) => code) : ['refused'];
      expect(codes.filter((code) => /^(?:refused|reading-|counter-)/.test(code))).toEqual([]);
    }
  });

  test.each([
    [{ humidity: '101' }, 'ask first: reading-unusual humidity'],
    [{ 'cabin-temperature': '61' }, 'ask first: reading-unusual cabin-temperature'],
    [{ 'cabin-temperature': '-1' }, 'ask first: reading-unusual cabin-temperature'],
    [{ strokes: '430.5' }, 'bad input: figure-not-whole strokes'],
  ])('%j: %s', async (readings, said) => {
    expect(await saidOf(ask(desk, day(readings), EVENING))).toBe(said);
  });
});

describe('the time of a practice book', () => {
  const drink = { what: 'drink', amount: '8' } as const;

  test('goes on to the end of the next day, and no further without a yes', async () => {
    expect(await saidOf(ask(desk, drink, { at: 'D62T00:00' }))).toBe('ask first: time-ahead at');
    expect(await saidOf(ask(desk, drink, { at: 'D90T09:00' }))).toBe('ask first: time-ahead at');
    expect(await saidOf(ask(desk, drink, { at: 'D61T23:59' }))).toBe('kept');
    expect(await saidOf(ask(desk, drink, { at: 'D62T09:00' }))).toBe('kept');
    expect(await saidOf(ask(desk, drink, { at: 'D70T09:00', sure: true }))).toBe('kept');
  });
});

describe('what cannot be read', () => {
  const wordsOf = async (answer: ReturnType<typeof ask>) => {
    const found = await answer;
    return found.ok
      ? 'kept'
      : found.findings.map((finding) => wordFinding(finding)).map(({ text, remedy }) => [text, remedy]);
  };

  test('of a day line names the meter', async () => {
    const [[text] = []] = (await wordsOf(ask(desk, day({ strokes: 'abc' }), EVENING))) as string[][];
    expect(text).toBe('dispenser strokes: "abc" is not a number that can be read.');
  });

  test('without a unit proposes litres', async () => {
    const weigh = { what: 'weigh', store: 'C-10', amount: '8.5' } as const;
    const [[, remedy] = []] = (await wordsOf(ask(desk, weigh))) as string[][];
    expect(remedy).toBe('Add the unit, for example 8.5 L.');
  });

  test('and an amount beyond all measure is told in tonnes, by its field', async () => {
    const weigh = { what: 'move', from: 'C-10', to: 'C-09', amount: '1e9L' } as const;
    expect(await wordsOf(ask(desk, weigh))).toEqual([
      ['"amount" does not fit. Nothing was written.', 'Give at most 100 t of water.'],
    ]);
  });
});
