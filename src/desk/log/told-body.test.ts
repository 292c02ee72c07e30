// What a person tells of an entry: texts are read by the shape of their field, names are found in the book, slips are named.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { MemoryStore } from '../../book/index.ts';
import { Desk } from '../desk.ts';
import { startPractice } from '../start.ts';
import type { Context } from './context.ts';
import { type Told, toldBody } from './told-body.ts';

let context: Context;
beforeAll(async () => {
  const example = (name: string) =>
    readFileSync(join(import.meta.dirname, '../../../examples/corrie', name), 'utf8');
  const port = new MemoryStore({ bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  const desk = await Desk.open(port, { chance: () => new Uint8Array(10) });
  const moment = { nowUtcMs: 0, offsetMin: 0, by: 'keeper' };
  const lines = example('field-log.jsonl').split('\n').slice(0, 1);
  const made = await startPractice(desk, moment, {
    outpost: { name: 'o', text: example('outpost.yaml') },
    log: { name: 'l', lines },
  });
  const opened = await desk.account();
  if (!made.ok || !opened.ok) throw new Error('no practice book');
  context = { desk, fold: opened.value.fold, moment, presentMs: desk.presentMs(opened.value.fold, moment) };
});

const read = (kind: string, told: Told) => toldBody(context, kind, told);
const bodyOf = (kind: string, told: Told): unknown => {
  const answer = read(kind, told);
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
  return answer.value.body;
};
const codeOf = (kind: string, told: Told) => {
  const answer = read(kind, told);
  return answer.ok
    ? 'taken'
    : answer.findings.map(({ code, where }) => `${code} ${where.field ?? ''}`).join(', ');
};

test('a counter that is replaced: where it stood, shares in per cent, and a reading that nobody took', () => {
  const told = { instrument: 'strokes', serial: 'DS-32', 'starts-at': '0', 'calibration-relative': '0.8%' };
  expect(bodyOf('instrument-replaced', { ...told, 'ended-at': '212' })).toEqual({
    instrument: 'strokes',
    serial: 'DS-32',
    endedAt: 212,
    startsAt: 0,
    calibrationRelative: 0.008,
  });
  expect(bodyOf('instrument-replaced', { ...told, 'ended-at': '-' })).toMatchObject({ endedAt: null });
  expect(
    bodyOf('instrument-calibrated', {
      instrument: 'strokes',
      'calibration-relative': '0.004',
      'litres-per-count': '0.0247',
    }),
  ).toEqual({ instrument: 'strokes', calibrationRelative: 0.004, litresPerCount: 0.0247 });
  expect(codeOf('instrument-replaced', { instrument: 'strokes', serial: 'DS-32' })).toBe(
    'field-needed starts-at',
  );
  expect(codeOf('instrument-calibrated', { instrument: 'strokse' })).toBe('not-in-book instrument');
  expect(codeOf('instrument-calibrated', { instrument: 'strokes', 'calibration-relative': 'one' })).toMatch(
    /calibration-relative$/,
  );
});

test('texts become amounts, times, numbers, lists and pairs', () => {
  expect(bodyOf('sample', { store: 'c05', sample: 'S-1', tests: 'silver, TOC', volume: '200mL' })).toEqual({
    store: 'C-05',
    sample: 'S-1',
    tests: ['silver', 'TOC'],
    volumeMg: 199_560,
  });
  expect(bodyOf('meter', { readings: 'strokes=455,product=6,9,flushes=-' })).toEqual({
    readings: [
      { instrument: 'strokes', value: 455 },
      { instrument: 'product', value: 6.9 },
      { instrument: 'flushes', value: null },
    ],
  });
  expect(bodyOf('result', { sample: 'S-1', values: 'silver=0.19 mg/L,TOC=<0,2mg/L' })).toMatchObject({
    values: [
      { parameter: 'silver', value: 0.19, unit: 'mg/L' },
      { parameter: 'TOC', value: 0.2, unit: 'mg/L', below: true },
    ],
  });
  expect(bodyOf('cabin-window', { before: '101.2 kPa', during: '70', until: 'D2T12:00' })).toMatchObject({
    beforeKPaAbs: 101.2,
    duringKPaAbs: 70,
  });
});

test('what a file has typed already is left, and lists that nobody tells are empty', () => {
  expect(bodyOf('hold', { hold: 'H', stores: ['c05', 'C-06'], reason: 'smell' })).toEqual({
    hold: 'H',
    stores: ['C-05', 'C-06'],
    conditional: [],
    reason: 'smell',
  });
  expect(bodyOf('visit-slip', { visit: 'P', plannedDay: 52, newDay: 66 })).toEqual({
    visit: 'P',
    plannedDay: 52,
    newDay: 66,
  });
});

test('an opening stock without its ± is asked for it; nothing is known exactly', () => {
  const stores = (amount: string) => ({
    asOf: '2147-02-28T21:00Z',
    peopleAboard: 4,
    stores: [{ store: 'R1', amount, grade: 'drinking' }],
  });
  expect(codeOf('opening', stores('172 L'))).toBe('field-needed stores[0].amount');
  expect(codeOf('opening', stores('172 L+-6'))).toBe('taken');
  expect(codeOf('opening', stores('0 L'))).toBe('taken');
});

test('a slip is named with its field', () => {
  expect(codeOf('sample', { store: 'c99', sample: 'S' })).toBe('not-in-book store');
  expect(codeOf('sample', { store: 'c05', sample: 'S', volume: '200' })).toBe('unit-missing volume');
  expect(codeOf('hold', { hold: 'H', stores: 'c05,c99', reason: 'r' })).toBe('not-in-book store');
  expect(codeOf('roster', { change: 'arrive' })).toBe('field-needed people');
  expect(codeOf('check', { what: 'labels', ok: 'perhaps' })).toBe('field-needed ok');
  expect(codeOf('cabin-window', { before: '70 L', during: '70', until: 'now' })).toBe(
    'unit-of-other-kind before',
  );
  expect(codeOf('smple', {})).toBe('kind-unknown kind');
});
