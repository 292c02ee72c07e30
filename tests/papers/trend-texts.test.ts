// The sheet of a trend as text, paper and table: never wider than asked for, in ASCII where that is asked, nothing forgotten.
import { describe, expect, it } from 'vitest';
import {
  qualityTrendText,
  type TextOptions,
  type Trend,
  trendPaper,
  trendTable,
} from '../../src/papers/index.ts';
import { expectGolden } from '../golden/record.ts';
import { oneTrend, sheetOf, storesTrend } from './sample-trend.ts';

const screen: TextOptions = { width: 100, style: 'screen', colour: false, units: 'L' };
const textOf = (trend: Trend | null, change: Partial<TextOptions> = {}) =>
  qualityTrendText(sheetOf(trend), { ...screen, ...change });
/** Words as they stand, wherever their lines break. */
const flat = (text: string) => text.replace(/\s+/g, ' ');

it('golden records of a trend at one point, over stores, and of what was measured', () => {
  const parts = [
    textOf(oneTrend),
    textOf(oneTrend, { width: 80, style: 'ascii' }),
    textOf(storesTrend),
    textOf(null),
  ];
  expectGolden('papers/quality-trend.txt', parts.join('\n\n'));
  const plain = [
    textOf(oneTrend, { style: 'plain' }),
    textOf(storesTrend, { style: 'plain' }),
    textOf(null, { style: 'plain' }),
  ];
  expectGolden('papers/quality-trend-plain.txt', plain.join('\n'));
  // A repository may turn CR LF into LF; that the lines end so is held beside csv-text.ts.
  expectGolden('papers/quality-trend.csv', trendTable(oneTrend).replaceAll('\r\n', '\n'));
});

describe('whatever the width', () => {
  const widths = [20, 32, 45, 60, 80, 100, 160];
  it.each(widths)('%i columns are never passed', (width) => {
    for (const trend of [oneTrend, storesTrend, null])
      for (const style of ['screen', 'ascii'] as const) {
        const lines = textOf(trend, { width, style }).split('\n');
        expect(lines.length).toBeGreaterThan(4);
        for (const line of lines) expect([...line].length, line).toBeLessThanOrEqual(width);
      }
  });

  it('ASCII is ASCII', () => {
    for (const trend of [oneTrend, storesTrend])
      expect(textOf(trend, { style: 'ascii' })).toMatch(/^[\n\u0020-\u007E]*$/);
  });
});

describe('what it says', () => {
  it('a bound is no value, and what was not measured is not nought', () => {
    const text = flat(textOf(oneTrend));
    expect(text).toContain(' <2 ');
    expect(text).toContain(' >25 ');
    expect(text).toContain('nothing was measured; it is not nought');
    expect(text).toContain('Day 16 to Day 30: nothing for 14 days');
  });

  it('limit and control limits are two things, and that some results were not seen', () => {
    const text = flat(textOf(oneTrend));
    expect(text).toContain('at most 11 mg/L (nitrate most)');
    expect(text).toContain('nitrate remembered: off until somebody types its value');
    expect(text).toContain('fitted to 8 results, 7 of them seen');
    expect(text).toContain('The limit says what the water may be');
  });

  it('what the bad stores share, with chance in steps and no probability', () => {
    const text = flat(textOf(storesTrend));
    expect(text).toContain(
      '3 of 3 that came from FA by H-1, 0 of 4 others. Chance alone brings as much in fewer than 1 of 20 such looks.',
    );
    expect(text).toContain('Before that: 0 of 9 stores.');
    expect(text).toContain('Chance is told, not the cause');
    // What chance gives easily is not told beside what it does not.
    expect(text).not.toContain('were filled on');
    expect(text).not.toMatch(/probab|%|0\.0\d* chance/);
  });

  it('nothing measured, said as that', () => {
    const empty = { ...oneTrend, points: [], apart: [], gaps: [], marks: [], methodChanges: [] };
    expect(
      flat(
        textOf({
          ...empty,
          chart: { limits: null, why: 'few results', results: 0, seen: 0, least: 8, enough: [] },
        }),
      ),
    ).toContain('nitrate at tap, mg/L as N. Nothing of it was measured here.');
    expect(flat(qualityTrendText({ ...sheetOf(null), parameters: [] }, screen))).toContain(
      'Nothing has been measured yet',
    );
  });

  it.each([
    ['too few seen', 'only 4 were seen'],
    ['no spread', 'all of 9 results are alike'],
    ['few results', 'they take 8'],
  ] as const)('no limits because of %s', (why, words) => {
    const chart = { limits: null, why, results: 9, seen: 4, least: 8, enough: [] };
    expect(flat(textOf({ ...oneTrend, chart }))).toContain(words);
  });
});

describe('the paper', () => {
  it('is the text in lines and the picture; programs get no paper of their own', () => {
    const paper = trendPaper(sheetOf(oneTrend), { ...screen, style: 'plain', colour: true });
    expect(paper.lines).toEqual(textOf(oneTrend, { style: 'ascii' }).trimEnd().split('\n'));
    expect(paper.svg).toMatch(/^<svg /);
    expect(trendPaper(sheetOf(null), screen).svg).toBeNull();
  });
});

describe('the table for spreadsheets', () => {
  const [heads = [], ...rows] = trendTable(oneTrend)
    .trimEnd()
    .split('\r\n')
    .map((line) => line.split(','));
  it('has a line a result with as many cells as there are heads', () => {
    expect(rows).toHaveLength(oneTrend.points.length);
    for (const row of rows) expect(row).toHaveLength(heads.length);
  });

  it('tells a bound from a value, and the limit from the control limits', () => {
    const cell = (row: number, head: string) => rows[row]?.[heads.indexOf(head)];
    expect([cell(0, 'censored'), cell(0, 'value')]).toEqual(['below', '2']);
    expect([cell(5, 'at_most'), cell(5, 'control_high'), cell(5, 'signals')]).toEqual([
      '11',
      '9.7',
      'beyond the limits',
    ]);
    expect(cell(3, 'duplicate')).toBe('yes');
  });
});
