// The purifier beds of the practice outpost, as they were known day by day, and of a small outpost with its own story.
import { beforeAll, describe, expect, test } from 'vitest';
import { deskOver } from '../../tests/docs/gallery/asked-desk.ts';
import { KEEPER, practiceDesk } from '../../tests/field-log/practice-desk.ts';
import { holmWithBeds } from '../../tests/journeys/holm-beds.ts';
import { holmBook } from '../../tests/journeys/kept.ts';
import type { BedDay, BedSheet } from '../papers/index.ts';
import { bedPlot, bedTable } from '../papers/index.ts';
import { bedList, bedShow } from './beds.ts';
import type { Desk } from './desk.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await practiceDesk();
});

/** As known at the end of the line of a day. */
async function knownOn(day: number, bed = 'lead'): Promise<BedSheet> {
  const ms = Date.UTC(2147, 1, 28 + day, 21);
  const sheet = await bedShow(desk, { bed }, { kind: 'as known at', ms }, KEEPER);
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.findings));
  return sheet.value;
}

const dayOf = (day: BedDay | undefined): number => Math.floor(day?.day ?? Number.NaN);
function datesOf(sheet: BedSheet, parameter: string) {
  const dates = sheet.parameters.find((one) => one.parameter === parameter)?.dates;
  return { q10: dayOf(dates?.q10), q50: dayOf(dates?.q50), q90: dayOf(dates?.q90) };
}

describe('on Day 32', () => {
  test('the carbon reaches its limit about Day 35; 80 of 100 within six days, and Day 37 among them', async () => {
    const { q10, q50, q90 } = datesOf(await knownOn(32), 'TOC');
    expect(q50).toBeGreaterThanOrEqual(34);
    expect(q50).toBeLessThanOrEqual(39);
    expect(q90 - q10).toBeLessThanOrEqual(6);
    expect(q10).toBeLessThanOrEqual(37);
    expect(q90).toBeGreaterThanOrEqual(37);
  });

  test('conductivity is flat, with its figures, and organic breakthrough stands first', async () => {
    const sheet = await knownOn(32);
    const conductivity = sheet.parameters.find(({ parameter }) => parameter === 'conductivity');
    expect(conductivity?.moves).toBe('flat');
    expect(Math.abs(conductivity?.perDay?.value ?? 9)).toBeLessThan(conductivity?.perDay?.u95 ?? 0);
    expect(sheet.causes.map(({ cause }) => cause)[0]).toBe('organic breakthrough');
    expect(sheet.causes).toHaveLength(6);
    for (const { evidence } of sheet.causes)
      for (const { text } of evidence) expect(text).toMatch(/\d|fewer than three|not read/);
  });

  test('it is read sooner or changed, with two spares and the visit that comes too late', async () => {
    const { advice } = await knownOn(32);
    expect(advice?.verdict).toBe('read sooner');
    expect(advice?.nextReadingDay).toBe(35);
    expect(advice?.spares).toEqual({ part: 'purifier bed', count: 2 });
    expect(advice?.visit).toEqual({ visit: 'Pannier 9', day: 52 });
    expect(advice?.texts.join(' ')).toContain('the limit comes before it');
  });

  test('throughput is that of the truth, within its ±', async () => {
    const { used } = (await knownOn(32)).bed;
    expect(Math.abs(used.value - 832)).toBeLessThan(used.u95 ?? 0);
  });
});

test('on Day 29 the band is wider, and holds what came', async () => {
  const [before, after] = [datesOf(await knownOn(29), 'TOC'), datesOf(await knownOn(32), 'TOC')];
  expect(before.q90 - before.q10).toBeGreaterThan(after.q90 - after.q10);
  expect(before.q90).toBeGreaterThanOrEqual(37);
});

test('on Day 35 it is due on Day 36 to 39, more goes through since visitors came, and the bed is changed now', async () => {
  const sheet = await knownOn(35);
  const { q50 } = datesOf(sheet, 'TOC');
  expect(q50).toBeGreaterThanOrEqual(36);
  expect(q50).toBeLessThanOrEqual(39);
  expect(sheet.parameters.find(({ parameter }) => parameter === 'conductivity')?.moves).toBe('flat');
  expect(sheet.causes[0]?.cause).toBe('organic breakthrough');
  expect(sheet.advice?.verdict).toBe('change now');
  expect(sheet.feed?.perDay.value).toBeGreaterThan(11);
  expect(sheet.feed?.people.map(({ people }) => people)).toEqual([7, 4]);
});

describe('after the change of Day 36', () => {
  test('the old lag bed is lead, with about a third of its use, one spare is left, and nothing rises', async () => {
    const sheet = await knownOn(40);
    expect(sheet.bed.since).toMatchObject({ begun: 'change', day: 36 });
    expect(sheet.bed.used.value).toBeGreaterThan(330);
    expect(sheet.bed.used.value).toBeLessThan(380);
    expect(sheet.advice?.spares?.count).toBe(1);
    expect(sheet.causes).toEqual([]);
    expect(datesOf(sheet, 'TOC').q10).toBeGreaterThan(70);
    expect(sheet.changes).toMatchObject([{ toldL: 857 }]);
    expect(Math.abs((sheet.changes[0]?.reckonedL ?? 0) - 857)).toBeLessThan(26);
  });

  test('what is read while the buffer still holds old water teaches nothing', async () => {
    const carbon = (await knownOn(40)).readings.filter(({ parameter }) => parameter === 'TOC');
    expect(carbon.slice(-2).map(({ value, of }) => [value, of])).toEqual([
      [1.4, 'mixed water'],
      [0.5, 'these beds'],
    ]);
  });

  test('the lag bed is new', async () => {
    const { bed, advice, parameters } = await knownOn(40, 'lag');
    expect(bed.used.value).toBeLessThan(30);
    expect([advice, parameters]).toEqual([null, []]);
  });
});

test('a bed that is not there is not found, with the names that are', async () => {
  const answer = await bedShow(desk, { bed: 'third' }, { kind: 'now' }, KEEPER);
  expect(answer.ok).toBe(false);
  expect(answer.ok ? [] : answer.findings.map(({ code, data }) => [code, data['nearest']])).toEqual([
    ['not-in-book', ['lead', 'lag']],
  ]);
});

test('the list has both beds and the date of the first', async () => {
  const sheet = await bedList(desk, { kind: 'now' }, KEEPER);
  expect(sheet.ok && sheet.value.beds.map(({ id, dates }) => [id, dates !== null])).toEqual([
    ['lead', true],
    ['lag', false],
  ]);
});

test('the plot and its table carry the figures of the sheet', async () => {
  const sheet = await knownOn(32);
  const svg = bedPlot(sheet);
  expect(svg).toContain('<title>');
  expect(svg).toContain('TOC 2.1');
  expect(svg).not.toMatch(/NaN|undefined/);
  const rows = bedTable(sheet).trim().split('\r\n');
  const own = sheet.readings.filter(({ parameter }) => parameter === 'TOC').length;
  expect(rows).toHaveLength(1 + own + (sheet.plot?.curve.length ?? 0));
});

test('an outpost that has beds and no limit for them tells their use, and no date', async () => {
  const holm = await deskOver(await holmBook(holmWithBeds));
  const sheet = await bedShow(holm, {}, { kind: 'now' }, KEEPER);
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.findings));
  const { bed, parameters, advice, plot } = sheet.value;
  expect(bed.used.value).toBe(400);
  expect(bed.since.begun).toBe('outpost file');
  expect([parameters, plot, advice?.verdict]).toEqual([[], null, 'no dates']);
  expect(bedPlot(sheet.value)).toContain('</svg>');
});
