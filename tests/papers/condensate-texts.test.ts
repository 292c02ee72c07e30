// The sheet of condensate as a text: never wider than asked for, in ASCII where that is asked, one record a line for programs.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { condensateSheet, Desk } from '../../src/desk/index.ts';
import { roundFigure } from '../../src/ground/units/index.ts';
import {
  type CondensateSheet,
  condensateText,
  type SheetFigure,
  type TextOptions,
} from '../../src/papers/index.ts';
import { bookOf } from '../journeys/checks.ts';
import { practiceEntries } from '../metamorphic/practice.ts';

const screen: TextOptions = { width: 100, style: 'screen', colour: false, units: 'L' };
const moment = { nowUtcMs: Date.UTC(2147, 3, 30), offsetMin: 0, by: 'keeper' };

let sheet: CondensateSheet;
let desk: Desk;
beforeAll(async () => {
  const entries = await practiceEntries();
  const port = await bookOf([...entries].sort((a, b) => a.number - b.number));
  desk = await Desk.open(port, { chance: () => new Uint8Array(10) });
  sheet = await sheetOf(null);
});

async function sheetOf(days: number | null): Promise<CondensateSheet> {
  const answer = await condensateSheet(desk, { sight: { kind: 'now' }, moment, query: { days } });
  if (!answer.ok) throw new Error(JSON.stringify(answer.findings));
  return answer.value;
}

describe('the sheet of the practice outpost', () => {
  it('has the fault of the separator as one run of days, and what the bag gave beside it', () => {
    const [fault] = sheet.runs;
    expect(fault).toMatchObject({ verdict: 'less came', firstDay: 18, lastDay: 21 });
    // 10.2 L went to the bag.
    expect(Math.abs((fault?.total.value ?? 0) - 10.2)).toBeLessThanOrEqual(fault?.total.u95 ?? 0);
    expect(sheet.foundTotal.value).toBeCloseTo(10.2, 6);
    expect(sheet.found.map(({ store, day }) => [store, day])).toEqual([
      ['K-2', 22],
      ['K-2', 23],
    ]);
  });

  it('gives every figure its ± and what it rests on', () => {
    for (const line of sheet.lines)
      for (const figure of [line.expected, line.collected, line.shortfall]) {
        expect(figure.u95).toBeGreaterThan(0);
        expect(figure.because.method).toBe('cabin-humidity');
        expect(figure.because.entries.length).toBe(1);
      }
    const names = sheet.lines[33]?.expected.because.inputs.map(({ name }) => name);
    expect(names).toEqual(['people · days', 'people', 'change of the air', 'known leak', 'density']);
  });

  it('may show the last days alone; what it says of the whole book stays', async () => {
    const last = await sheetOf(5);
    expect(last.lines.map(({ day }) => day)).toEqual([56, 57, 58, 59, 60]);
    expect(last.judged).toEqual(sheet.judged);
    expect(last.runs).toEqual([]);
  });

  it('looks from any day, by what was known then', async () => {
    const sight = { kind: 'as known at', ms: Date.UTC(2147, 2, 19, 21, 30) } as const;
    const answer = await condensateSheet(desk, { sight, moment, query: { days: 3 } });
    if (!answer.ok) throw new Error('no sheet');
    expect(answer.value.lines.map(({ day, verdict }) => [day, verdict])).toEqual([
      [17, 'as expected'],
      [18, 'less came'],
      [19, 'less came'],
    ]);
    expect(answer.value.found).toEqual([]);
    expect(answer.value.lines[2]?.expected.value).toBe(sheet.lines[18]?.expected.value);
  });
});

describe('the page of the method', () => {
  const page = readFileSync(join(import.meta.dirname, '../../docs/methods/cabin-humidity.md'), 'utf8');
  const block = /```shortfall\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
  const rows = block
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(/ {2,}/));
  const said = (figure: SheetFigure) => {
    const { value, u95 } = roundFigure(figure);
    return `${value} ± ${u95}`;
  };

  it('shows the fault as it is reckoned, beside the truth', () => {
    expect(rows.length).toBe(4);
    for (const [day = '', missing = '', truth = ''] of rows) {
      const line = sheet.lines[Number(day) - 1];
      if (line === undefined) throw new Error(`no Day ${day}`);
      expect(said(line.shortfall)).toBe(missing);
      expect(Math.abs(line.shortfall.value - Number(truth))).toBeLessThanOrEqual(line.shortfall.u95 ?? 0);
    }
  });

  it('tells the sum and how many days hold 0', () => {
    const [fault] = sheet.runs;
    if (fault === undefined) throw new Error('no fault');
    expect(page).toContain(
      `In all ${said(fault.total)} L; ${sheet.foundTotal.value.toFixed(1)} L were in the bag`,
    );
    const disturbed = new Set([18, 19, 20, 21, 27, 28, 29, 30, 31, 32, 33, 34]);
    const quiet = sheet.lines.filter(({ day }) => !disturbed.has(day));
    const held = quiet.filter(({ verdict }) => verdict === 'as expected').length;
    expect(page).toContain(`Of the ${quiet.length} days without fault or leak, ${held} hold 0`);
    const more = sheet.runs.filter(({ firstDay }) => firstDay >= 27 && firstDay <= 34);
    expect(more.map(({ firstDay, lastDay }) => [firstDay, lastDay])).toEqual([[27, 27]]);
  });
});

describe('as a text', () => {
  it.each([20, 40, 60, 80, 100, 140])('keeps to %d columns, in every style and unit', (width) => {
    for (const style of ['screen', 'ascii'] as const)
      for (const units of ['L', 'kg'] as const) {
        const text = condensateText(sheet, { ...screen, width, style, units });
        for (const line of text.split('\n')) expect([...line].length).toBeLessThanOrEqual(width);
        if (style === 'ascii') expect(text).toMatch(/^[\n -~]*$/);
      }
  });

  it('says what stands out, and what it may be', () => {
    const text = condensateText(sheet, screen);
    expect(text).toMatch(/ 18 .* less came\n 19 .* less came\n 20 .* less came\n 21 .* less came\n/);
    expect(text).toMatch(/Days 18 to 21: \S+ ± \S+ L less came than expected\./);
    expect(text).toContain('another condenser or to a\ncold surface');
    expect(text).toMatch(/Found since, collected without a meter: 10\.2 ± 0\.8 L in K-2/);
    expect(text).toMatch(
      /A person and day: 1\.7\d ± 0\.\d+ L, learned from \d+ days; by the outpost file 1\.7 ± 0\.3 L\./,
    );
    expect(condensateText({ ...sheet, taughtBy: 0 }, screen)).toContain('no day has taught otherwise yet');
  });

  it('of a book without a closed day says so', () => {
    const empty = { ...sheet, lines: [], runs: [], found: [] };
    expect(condensateText(empty, screen)).toContain(
      'No day has been closed by a reading of the condensers yet.',
    );
  });

  it('is one record a line for programs, figures without units', () => {
    const lines = condensateText(sheet, { ...screen, style: 'plain' })
      .trimEnd()
      .split('\n');
    expect(lines.length).toBe(60 + sheet.runs.length + 2 + 2);
    const fields = (lines[17] ?? '').split('\t');
    expect(fields.slice(0, 4)).toEqual(['day', '18', '1', '4.00']);
    expect(fields.at(-1)).toBe('less came');
    expect(fields.length).toBe(11);
    expect(lines.at(-1)).toBe(`judged\t60\t${sheet.judged.held}`);
  });
});
