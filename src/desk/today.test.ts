// What Today says needs somebody: one line for one thing, the gravest first, and none for what prints as nothing.
import { beforeEach, describe, expect, test } from 'vitest';
import { ask, KEEPER, practiceDesk } from '../../tests/field-log/practice-desk.ts';
import { aloud, needsOf, type WordedFinding } from '../papers/index.ts';
import type { Desk } from './desk.ts';
import { storeShow } from './stores.ts';
import { today } from './today.ts';

let desk: Desk;
beforeEach(async () => {
  desk = await practiceDesk();
});

async function sheetOf() {
  const sheet = await today(desk, { kind: 'now' }, KEEPER);
  if (!sheet.ok) throw new Error('no sheet');
  return sheet.value;
}
const drawn = (findings: readonly WordedFinding[]) =>
  findings.filter(({ code, text }) => code === 'reserve-drawn' && text.includes('Day 61'));

describe('the reserve', () => {
  test('that was drawn by many small drinks of one day is one line with all of it', async () => {
    for (const hour of [10, 11, 12, 13, 14, 15])
      await ask(desk, { what: 'drink', amount: '20' }, { at: `D61T${hour}:00` });
    const lines = drawn((await sheetOf()).findings);
    expect(lines).toHaveLength(1);
    expect(lines[0]?.text.replaceAll('\u00A0', ' ')).toMatch(
      /^\d\.\d L came out of the reserve, R1, on Day 61, in \d entries, the last of them corrie \d+\.$/,
    );
  });

  test('that was drawn by a sip is no line', async () => {
    const before = (await sheetOf()).findings.length;
    for (let k = 0; k < 8; k++) await ask(desk, { what: 'drink', amount: '5' }, { at: `D61T0${k}:30` });
    const sip = await ask(desk, { what: 'drink', amount: '1' }, { at: 'D61T09:00' });
    expect(sip.ok && sip.value.findings.map(({ code }) => code)).toEqual([]);
    const after = await sheetOf();
    expect(after.findings.map(({ text }) => text).filter((text) => text.startsWith('0.0'))).toEqual([]);
    expect(after.findings.length).toBeLessThanOrEqual(before + 1);
  });
});

test('a headline that reads no days is the first thing that needs somebody', async () => {
  const [first] = (await sheetOf()).findings;
  expect([first?.code, first?.severity]).toEqual(['cover-out', 'act-now']);
  expect(first?.text).toMatch(/^Drinking water that can be counted on is out: /);
});

test('Say it counts the lines that Today shows', async () => {
  const sheet = await sheetOf();
  const now = needsOf(sheet.findings).filter(({ finding }) => finding.severity === 'act-now').length;
  expect(now).toBeLessThan(sheet.findings.filter(({ severity }) => severity === 'act-now').length);
  expect(aloud(sheet)).toContain(`${now} things to act on now`);
});

test('the page of a store has its findings as Today has them: the gravest first, what is past last, as to be known', async () => {
  const all = new Set((await sheetOf()).findings.map(({ text }) => text));
  for (const store of ['R1', 'R2', 'C-16']) {
    const shown = await storeShow(desk, { store }, { kind: 'now' }, KEEPER);
    const findings = shown.ok ? shown.value.findings : [];
    const ranks = findings.map(({ severity }) => ['act-now', 'act-today', 'know'].indexOf(severity));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    const past = findings.filter(({ text }) => !all.has(text));
    expect(past.every(({ severity }) => severity === 'know')).toBe(true);
  }
});

test('a visit that is past is not ahead, and the next one comes first', async () => {
  await ask(desk, {
    what: 'told',
    kind: 'visit-slip',
    fields: { visit: 'Pannier 9', plannedDay: 66, newDay: 115 },
  });
  const { visits, head } = await sheetOf();
  expect(visits.map(({ visit }) => visit)).toEqual(['Pannier 10', 'Pannier 9']);
  for (const { aboard, berthDay, departDay } of visits) {
    expect(aboard ? (departDay ?? head.day) : berthDay).toBeGreaterThanOrEqual(head.day);
  }
});
