// The papers of a stock count and of what is new, as texts: never wider than asked for, in ASCII where that is asked, one record a line for programs.
import { describe, expect, it } from 'vitest';
import {
  type CountedStore,
  type CountItem,
  type CountResult,
  type CountSheet,
  countResultText,
  countSheetText,
  countTakenText,
  type SheetFigure,
  type SinceSheet,
  sinceText,
  type TextOptions,
} from '../../src/papers/index.ts';
import * as sheets from './sample-sheets.ts';

const because = {
  entries: [],
  method: 'stock-count',
  inputs: [{ name: 'density', value: 997.8, unit: 'kg/m3' }],
};
const litres = (value: number, u95: number): SheetFigure => ({ value, u95, unit: 'L', because });

function stored(id: string, counted: number, book: number, more: Partial<CountedStore> = {}): CountedStore {
  return {
    id,
    place: 'the long rack behind the galley',
    counted: litres(counted, 0.4),
    book: litres(book, 0.5),
    difference: litres(counted - book, 0.6),
    verdict: 'agrees',
    overCapacity: false,
    ...more,
  };
}

const part = { id: 'test kit silver and plate count', count: 12, unit: '' };

const result: CountResult = {
  head: sheets.head,
  kept: true,
  at: 'Day 46 21:00 UTC',
  stores: [
    stored('C-07', 20.3, 0.6, { verdict: 'far off' }),
    stored('C-08', 0.6, 20.3, { verdict: 'far off' }),
    stored('W-01', 30, 20, { verdict: 'far off', overCapacity: true }),
    stored('main tank of the hut', 120.4, 121.2),
  ],
  parts: [part, { id: 'bottled oxygen', count: 31.5, unit: 'kg' }],
  swapped: [['C-07', 'C-08']],
  notRead: ['C-01', 'C-02', 'C-03', 'KB'],
  gone: ['V-1'],
  second: { office: 'medic', confirmation: 'declared, not verified' },
  entries: ['skerry 204', 'skerry 205', 'skerry 206'],
};

const item = (id: string, more: Partial<CountItem> = {}): CountItem => ({
  kind: 'store',
  id,
  name: 'portable container',
  readBy: 'weighing',
  unit: '',
  minutes: 14,
  typed: null,
  ...more,
});

const sheet: CountSheet = {
  head: sheets.head,
  begun: 'Day 46 21:00 UTC',
  places: [
    {
      place: 'the long rack behind the galley',
      items: [item('C-07', { typed: '20.3L+-0.4' }), item('C-08')],
    },
    { place: 'yard', items: [item('main tank of the hut', { readBy: 'gas injection', minutes: 100 })] },
    {
      place: 'parts',
      items: [item(part.id, { kind: 'part', name: part.id, readBy: '', minutes: null, typed: '-' })],
    },
  ],
  read: 2,
  items: 4,
  minutesLeft: 114,
};

const taken = {
  readings: [
    { id: 'C-07', text: '20.3L', store: stored('C-07', 20.3, 20.4), part: null, before: '-' },
    { id: part.id, text: '12', store: null, part, before: null },
    { id: 'KB', text: '-', store: null, part: null, before: '4 L' },
  ],
  read: 3,
};

const since: SinceSheet = {
  head: sheets.head,
  since: 'Day 45 21:00 UTC',
  entries: 4,
  corrections: 1,
  late: 2,
  heldSince: ['C-07'],
  freedSince: ['C-08'],
  moved: [{ store: 'R2', before: litres(179.5, 12), after: litres(174.1, 3) }],
  newFindings: sheets.held.findings.slice(0, 2),
  lines: sheets.book.lines,
};

const papers: Readonly<Record<string, (options: TextOptions) => string>> = {
  'the sheet': (options) => countSheetText(sheet, options),
  'readings that were taken': (options) => countTakenText(taken, options),
  'the end of a count': (options) => countResultText(result, options),
  'the end of a count that is only tried': (options) =>
    countResultText({ ...result, kept: false, entries: [] }, options),
  'since I last looked': (options) => sinceText(since, options),
};

const screen: TextOptions = { width: 80, style: 'screen', colour: false, units: 'L' };

describe.each(Object.entries(papers))('%s', (_name, paper) => {
  it('is never wider than asked for, from 20 columns to 200', () => {
    for (let width = 20; width <= 200; width++) {
      for (const units of ['L', 'kg'] as const) {
        const lines = paper({ ...screen, width, units }).split('\n');
        expect(Math.max(...lines.map((line) => [...line].length)), `${width}`).toBeLessThanOrEqual(width);
      }
    }
  });

  it('is ASCII where that is asked for, and has as many fields in each record of one name', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII is meant
    expect(paper({ ...screen, style: 'ascii' })).toMatch(/^[\u0000-\u007F]+$/);
    const fields = new Map<string, number>();
    for (const line of paper({ ...screen, style: 'plain' })
      .trimEnd()
      .split('\n')) {
      const record = line.split('\t');
      const name = record[0] ?? '';
      expect(record.length, line).toBe(fields.get(name) ?? record.length);
      fields.set(name, record.length);
    }
    expect(fields.size).toBeGreaterThan(0);
  });
});

it('the sheet has a blank for what was not typed, and the words of the end say what is odd', () => {
  expect(countSheetText(sheet, screen).match(/________/g)).toHaveLength(2);
  const end = countResultText(result, { ...screen, width: 200 });
  expect(end).toContain('C-07 and C-08 look swapped');
  expect(end).toContain('more than it holds');
  expect(end).toContain('C-01 to C-03');
  expect(end).toContain('Second person: medic, declared, not verified.');
  expect(end).toContain('no longer aboard, so not entered: V-1.');
});
