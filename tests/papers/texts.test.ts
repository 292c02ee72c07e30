// The papers as texts: golden records of sheets made by hand, and what must hold for every one of them.
import { describe, expect, it, test } from 'vitest';
import {
  bookText,
  findingsText,
  keptText,
  storesText,
  storeText,
  type TextOptions,
  todayText,
} from '../../src/papers/index.ts';
import { expectGolden } from '../golden/record.ts';
import { heldQuality } from './sample-quality.ts';
import * as sheets from './sample-sheets.ts';

const screen: TextOptions = { width: 80, style: 'screen', colour: false, units: 'L' };
const ascii: TextOptions = { ...screen, style: 'ascii' };
const plain: TextOptions = { ...screen, style: 'plain' };

const { normal, held, silent, empty, oneStore, book, kept, errors } = sheets;
const stores = { head: normal.head, stores: held.stores, quality: heldQuality };

/** Every paper, as a function of the options alone. */
const papers: Readonly<Record<string, (options: TextOptions) => string>> = {
  'today-normal': (options) => todayText(normal, options),
  'today-held': (options) => todayText(held, options),
  'today-silent': (options) => todayText(silent, options),
  'today-empty': (options) => todayText(empty, options),
  stores: (options) => storesText(stores, options),
  'stores-none': (options) => storesText({ head: empty.head, stores: [], quality: {} }, options),
  store: (options) => storeText(oneStore, options),
  book: (options) => bookText(book, options),
  'book-none': (options) => bookText({ ...book, lines: [], more: false }, options),
  kept: (options) => keptText(kept, options),
  'kept-not': (options) => keptText({ ...kept, kept: false }, options),
  findings: (options) => findingsText([...held.findings.slice(0, 3), sheets.copy], options),
  errors: (options) => findingsText(errors, options),
};

describe('golden records', () => {
  test.each(Object.keys(papers))('%s on a screen of 80', (name) => {
    expectGolden(`papers/${name}.txt`, papers[name]?.(screen) ?? '');
  });

  test.each(['today-held', 'stores', 'store', 'book', 'errors'])('%s on a screen of 40', (name) => {
    expectGolden(`papers/${name}-40.txt`, papers[name]?.({ ...screen, width: 40 }) ?? '');
  });

  test.each(['today-normal', 'stores', 'findings'])('%s in ASCII', (name) => {
    expectGolden(`papers/${name}-ascii.txt`, papers[name]?.(ascii) ?? '');
  });

  test.each(['today-held', 'stores', 'store', 'book', 'kept', 'errors'])('%s for programs', (name) => {
    expectGolden(`papers/${name}-plain.tsv`, papers[name]?.(plain) ?? '');
  });

  test.each(['today-normal', 'stores'])('%s in kilograms', (name) => {
    expectGolden(`papers/${name}-kg.txt`, papers[name]?.({ ...screen, units: 'kg' }) ?? '');
  });

  it('in colour', () => {
    expectGolden('papers/today-held-colour.txt', todayText(held, { ...screen, colour: true }));
  });
});

describe.each(Object.entries(papers))('%s', (_name, paper) => {
  it('is never wider than asked for, from 20 columns to 200', () => {
    for (let width = 20; width <= 200; width++) {
      for (const style of ['screen', 'ascii'] as const) {
        const widest = Math.max(
          ...paper({ ...screen, style, width })
            .split('\n')
            .map((line) => [...line].length),
        );
        expect(widest, `${width} ${style}`).toBeLessThanOrEqual(width);
      }
    }
  });

  it('ends with a line end, and has no trace of the machine', () => {
    for (const options of [screen, ascii, plain, { ...screen, width: 40 }]) {
      const text = paper(options);
      expect(text).not.toMatch(/undefined|NaN|\bnull\b|\[object|Infinity|\u00A0/);
      if (text !== '') expect(text.endsWith('\n')).toBe(true);
    }
  });

  it('is ASCII where ASCII was asked for, and one record a line for programs', () => {
    expect(paper(ascii)).toMatch(/^[\u0020-\u007E\n]*$/);
    expect(paper(plain)).toMatch(/^[\u0020-\u007E\n\t]*$/);
    expect(paper({ ...plain, width: 20 })).toBe(paper(plain));
  });

  it('says the same without colour', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the signs that colour a word
    expect(paper({ ...screen, colour: true }).replace(/\u001B\[[0-9;]*m/g, '')).toBe(paper(screen));
  });
});

describe('Today', () => {
  const lines = (sheet: typeof normal) => todayText(sheet, screen).split('\n');

  it('says first that it is old', () => {
    expect(lines(silent)[0]).toBe('No day line since Day 44 21:00 UTC: the figures are 2 days old.');
    expect(lines(normal)[0]).toBe(
      'Skerry · Day 46 · 2147-04-15 Sat · 21:00 UTC · 4 people · closed to Day 31',
    );
  });

  it('rounds the days that can be counted on down', () => {
    expect(lines(normal)).toContain(
      'Drinking water we can count on    17.9 days in 19 of 20 outcomes (middle 18.9)',
    );
  });

  it('shows no litres of a stock without their ±', () => {
    for (const sheet of [normal, held, silent]) {
      const where = lines(sheet).slice(lines(sheet).findIndex((line) => line.startsWith('WHERE IT IS')));
      const bare = where.join(' ').match(/\d\s+L\b/g) ?? [];
      const whole = where.join(' ').match(/[\d.]+ ± [\d.]+\s+L\b/g) ?? [];
      expect(whole.length).toBeGreaterThan(5);
      expect(bare.length).toBe(whole.length);
    }
  });

  it('adds up as it is printed', () => {
    const text = todayText(normal, { ...screen, width: 200 });
    const sum = /IN ALL\s+([\d.]+) ± [\d.]+ L = ((?:.|\n)*?)\n\n/.exec(text);
    const parts = (sum?.[2] ?? '').split(/\s\+\s+/).map((part) => Number(/(-?[\d.]+) ± /.exec(part)?.[1]));
    expect(parts).toHaveLength(6);
    expect(parts.reduce((total, part) => total + part, 0)).toBe(Number(sum?.[1]));
  });

  it('says that parts are rounded by themselves where they do not make the total', () => {
    const text = todayText({ ...normal, sums: normal.sums.slice(1) }, screen);
    expect(text.replace(/\s+/g, ' ')).toContain('(each rounded by itself)');
  });

  it('tells findings alike once, and at most eight', () => {
    expect(lines(normal).join(' ')).toContain('(2 like this)');
    expect(todayText(held, screen)).toContain('and 2 more: waterwright book show --findings');
  });

  it('counts the rows that a first page has no room for', () => {
    const many = Array.from({ length: 20 }, (_, k) =>
      sheets.store({ id: `T-${k + 10}`, litres: [100 + k, 2], kind: 'tank' }),
    );
    const text = todayText({ ...normal, stores: many }, screen);
    expect(text).toContain('T-25');
    expect(text).not.toContain('T-26');
    expect(text).toContain('and 4 more: waterwright store list');
  });

  it('does not count a store as empty that holds less than nothing', () => {
    const odd = sheets.store({
      id: 'K-2',
      litres: [-10.6, 0.6],
      kind: 'softBag',
      emptied: true,
      mark: 'EMPTY',
      grade: 'raw',
    });
    const fresh = sheets.store({ id: 'C-20', litres: [0, 0.1], grade: null });
    const lines = todayText({ ...normal, stores: [odd, fresh] }, screen).split('\n');
    expect(lines).toContain('  raw, weighed 30 h: K-2 \u221210.6 ± 0.6 L');
    expect(lines).toContain('  Emptied, or never used: C-20');
  });

  it('never drops the word that a store may not be used', () => {
    for (let width = 20; width <= 120; width++) {
      const text = todayText(held, { ...screen, width });
      expect(text).toContain('HOLD');
      expect(text).toContain('CONDITIONAL');
    }
  });

  it('has its marks in a list of 40 columns too', () => {
    expect(storesText(stores, { ...screen, width: 40 }).match(/HOLD/g)).toHaveLength(4);
  });
});
