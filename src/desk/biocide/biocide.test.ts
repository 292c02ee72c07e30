// Biocide at the desk: doses that are refused and kept, what a dose is reckoned from, tastes, and the sheet of a store.
import { beforeEach, describe, expect, test } from 'vitest';
import { HOLM_DAY_ONE_MS } from '../../../tests/journeys/holm.ts';
import { HOLM_SILVER } from '../../../tests/journeys/holm-silver.ts';
import { holmOpening } from '../../../tests/journeys/told.ts';
import { MemoryStore } from '../../book/index.ts';
import { Desk } from '../desk.ts';
import { log } from '../log/log.ts';
import { reckonOver } from '../reckon/ask.ts';
import { storeShow } from '../stores.ts';

const DAY = 86_400_000;
let desk: Desk;
let count = 0;
function next(): number {
  count += 1;
  return count;
}

const moment = (day: number) => ({
  nowUtcMs: HOLM_DAY_ONE_MS + (day - 1) * DAY + 12 * 3_600_000,
  offsetMin: 0,
  by: 'keeper',
});
const tell = (day: number, kind: string, fields: Readonly<Record<string, unknown>>, more = {}) =>
  log(desk, moment(day), { what: 'told', kind, fields }, more);
const dose = (each: string, more: Readonly<Record<string, string>> = {}, also = {}) =>
  tell(3, 'dose', { stores: 'C-04', biocide: 'silver', doseEach: each, ...more }, { sure: true, ...also });

async function begun(): Promise<Desk> {
  const port = new MemoryStore({ bookId: 'b', site: 'holm', purpose: 'book', createdAtMs: 0 });
  const opened = await Desk.open(port, {
    chance: () => Uint8Array.from({ length: 10 }, (_, at) => (at === 0 ? next() : at)),
  });
  const made = (kind: 'outpost' | 'opening', body: never, at: number) => ({
    id: opened.newId(at + next()),
    ...{ kind, body, version: 1, by: 'keeper', happenedOffsetMin: 0, enteredOffsetMin: 0 },
    ...{ site: 'holm', happenedAtMs: at, enteredAtMs: at },
  });
  const at = HOLM_DAY_ONE_MS - 3 * 3_600_000;
  const drafts = [
    made('outpost', { text: HOLM_SILVER } as never, at - 1),
    made('opening', holmOpening() as never, at),
  ];
  const kept = await opened.keep(drafts as never, moment(1));
  if (!kept.ok) throw new Error(JSON.stringify(kept.findings));
  return opened;
}

async function result(day: number, value: string): Promise<void> {
  const sampled = await tell(day, 'sample', { store: 'C-04', sample: `S-${day}`, tests: 'silver' });
  const told = await tell(day, 'result', { sample: `S-${day}`, values: `silver=${value}` }, { sure: true });
  expect([sampled, told]).toMatchObject([{ ok: true }, { ok: true }]);
}

const shown = async (day: number, store = 'C-04') => {
  const sheet = await storeShow(desk, { store }, { kind: 'now' }, moment(day));
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.findings));
  return sheet.value;
};

beforeEach(async () => {
  desk = await begun();
});

describe('a dose above the maximum', () => {
  test.each([
    ['by what is wanted', () => dose('10mL', { target: '2' })],
    ['by volume and strength', () => dose('100mL')],
  ])('is refused %s, and the book stays as it was', async (_, asked) => {
    const before = await desk.port.heads();
    const answer = await asked();
    expect(answer).toMatchObject({ ok: false, problem: 'refused' });
    expect(answer.ok ? [] : answer.findings.map(({ code, data }) => [code, data['rule']])).toEqual([
      ['intention-refused', 'dose-maximum'],
    ]);
    expect(await desk.port.heads()).toEqual(before);
  });

  test('counts what is in the water already', async () => {
    // 20 mL of 400 mg/L in 18 L make 0.44 in clean water, and 0.63 where 0.19 are in it.
    expect(await dose('20mL', {}, { dryRun: true })).toMatchObject({ ok: true });
    await result(2, '0.19 mg/L');
    const answer = await dose('20mL');
    expect(answer).toMatchObject({ ok: false, problem: 'refused' });
    const data = answer.ok ? {} : answer.findings[0]?.data;
    expect(data?.['resultMgPerL']).toBeCloseTo(0.6335, 3);
    expect(data?.['presentMgPerL']).toBeCloseTo(0.19, 9);
  });

  test('that has happened is kept, and its store is on hold', async () => {
    const answer = await dose('100mL', {}, { happened: 'poured already' });
    expect(answer.ok).toBe(true);
    expect((await shown(3)).store.mark).toBe('HOLD');
    expect((await shown(3)).findings.map(({ code }) => code)).toContain('dose-above-maximum');
  });

  test('up to it is kept', async () => {
    expect(await dose('8mL', { target: '0.2' })).toMatchObject({ ok: true });
  });
});

describe('the sheet of a store', () => {
  test('knows no rate of its own accord, and counts by age', async () => {
    const { biocide } = await shown(10);
    expect(biocide).toMatchObject({
      ...{ biocide: 'silver', rate: null, level: null, noRate: 'no results', ends: null },
      ...{ leastMgPerL: 0.05, mostMgPerL: 0.4, untilBy: 'policy', untilDay: 120 },
    });
  });

  test('has level, rate, days and their ± from two results, and the earlier end counts', async () => {
    await result(2, '0.2 mg/L');
    await result(22, '0.15 mg/L');
    const { biocide } = await shown(30);
    // ln(0.2/0.15) in 20 days.
    const perDay = 100 * (1 - Math.exp(-Math.log(0.2 / 0.15) / 20));
    expect(biocide?.rate?.value).toBeCloseTo(perDay, 6);
    expect(biocide?.rate?.u95).toBeGreaterThan(0.1);
    expect(biocide?.level?.value).toBeCloseTo(0.15 * 0.75 ** (8 / 20), 6);
    expect(biocide).toMatchObject({ levelIs: 'now', ratedBy: 'own', ratedResults: 2, untilBy: 'forecast' });
    const { q05, q50, q95 } = biocide?.ends ?? { q05: null, q50: null, q95: null };
    // 0.05 is reached ln(0.15/0.05)/0.01438 = 76 days after Day 22.
    expect(q50).toBe(98);
    expect(q05).toBeLessThan(98);
    expect(q95).toBeGreaterThan(98);
    expect(biocide?.untilDay).toBe(q05);
    expect(biocide?.results.map(({ valueMgPerL }) => valueMgPerL)).toEqual([0.2, 0.15]);
  });

  test('tells volume and what it makes together, each with its ±, and the cautions', async () => {
    await result(2, '0.03 mg/L');
    const { biocide } = await shown(2);
    const { redose } = biocide ?? {};
    expect(redose?.volume).toMatchObject({ unit: 'mL' });
    expect(redose?.volume.value).toBeCloseTo((1000 * 18 * 0.17) / 399.8, 6);
    expect(redose?.volume.u95).toBeGreaterThan(0.3);
    expect(redose?.resulting).toMatchObject({ unit: 'mg/L' });
    expect(redose?.resulting.value).toBeCloseTo(0.2, 12);
    expect(redose?.resulting.u95).toBeGreaterThan(0.009);
    expect(redose).toMatchObject({ mostMgPerL: 0.5, assumesNothingLeft: false });
    expect(redose?.cautions).toHaveLength(2);
  });

  test('says no more of what is below the least', async () => {
    await result(2, '0.03 mg/L');
    expect((await shown(2)).biocide).toMatchObject({ untilBy: 'below least', untilDay: null });
  });

  test('a limit at or under the least is below it too, and one above it says nothing', async () => {
    await result(2, '<0.05 mg/L');
    expect((await shown(2)).biocide).toMatchObject({ untilBy: 'below least', level: null });
    await result(4, '<0.2 mg/L');
    expect((await shown(4)).biocide).toMatchObject({ untilBy: 'policy', level: null });
  });

  test('has none of an emptied store and of technical water', async () => {
    expect((await shown(2, 'C-03')).biocide).toBeNull();
    expect((await shown(2, 'C-02')).biocide).toBeNull();
    expect((await shown(2, 'C-02')).life).toMatchObject({ fills: 1, lifeCycles: 5, verdict: 'within' });
    expect((await shown(2, 'PB')).life).toBeNull();
  });
});

test('the calculator of doses takes what the book and the file know', async () => {
  await result(2, '0.03 mg/L');
  const fields = { store: 'C-04', wanted: '0.2mg/L' };
  const sheet = await reckonOver(desk, { what: 'dose', fields }, { kind: 'now' }, moment(2));
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.findings));
  const given = Object.fromEntries(sheet.value.inputs.map(({ name, value, by }) => [name, [value, by]]));
  expect(given['present']?.[1]).toBe('book');
  expect(given['present']?.[0]).toBeCloseTo(0.03, 9);
  expect(given['stock']).toEqual([400, 'outpost file']);
  expect(given['maximum']).toEqual([0.5, 'outpost file']);
  const [volume, resulting] = sheet.value.results;
  expect(volume?.value).toBeCloseTo((1000 * 18 * 0.17) / 399.8, 6);
  expect(resulting?.value).toBeCloseTo(0.2, 12);
  // The volume is decided; what comes of it is as unsure as what was in the water, 0.01 at 95 %.
  expect(resulting?.u95).toBeGreaterThan(0.009);
  const over = await reckonOver(
    desk,
    { what: 'dose', fields: { ...fields, wanted: '2mg/L' } },
    { kind: 'now' },
    moment(2),
  );
  expect(over).toMatchObject({ ok: false, problem: 'refused' });
});

describe('a taste', () => {
  test.each([
    ['no place', { words: 'metallic' }],
    ['two places', { words: 'metallic', store: 'C-04', point: 'tap' }],
  ])('of %s is asked for one', async (_, fields) => {
    const answer = await tell(2, 'taste', fields);
    expect(answer).toMatchObject({ ok: false });
    expect(answer.ok ? [] : answer.findings.map(({ code }) => code)).toEqual(['field-needed']);
  });

  test('of a store stands in its history; too strong is no strength', async () => {
    const told = await tell(2, 'taste', { words: 'metallic', store: 'c-04', strength: '2', who: 'second' });
    expect(told.ok).toBe(true);
    expect((await shown(2)).history.map(({ kind }) => kind)).toEqual(['opening', 'taste']);
    expect(await tell(2, 'taste', { words: 'metallic', store: 'C-04', strength: '6' })).toMatchObject({
      ok: false,
    });
  });
});
