// The inbox in a browser: a bare number is taken in no unit by itself, and rows are looked at before anything is kept.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, openBrowser, practiceBook, ROOT, type Visit, visit } from './browser.ts';
import { axeFaults, layoutFaults } from './looks.ts';

const SHEETS = join(ROOT, 'examples', 'spreadsheet');

describeInBrowser('the inbox', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  const entries = (here: Visit): Promise<number> =>
    here.page.evaluate(() =>
      fetch('/api/today').then(async (reply) => (await reply.json()).data.head.entries),
    );

  test('430 without a unit waits, is shown in each unit, and is taken with the one that somebody says', async () => {
    const here = await visit(browser, practiceBook(46));
    const { page } = here;
    expect(await page.textContent('.needs, main')).toContain('430');
    await here.open('#/inbox');
    const waiting = (await page.textContent('.waiting')) ?? '';
    expect(waiting).toContain('Pannier 9 water load 430');
    expect(waiting).toContain('430 kg = 430.9\u00A0L');
    expect(waiting).toContain('more than that');
    const before = await entries(here);
    await page.click('.waiting button >> text=Settle it');
    await page.click('.settle >> text="lb"');
    await page.click('text=Try it');
    await page.waitForSelector('text=It would become');
    expect(await page.textContent('.settle')).toContain('430 lb');
    expect(await entries(here)).toBe(before);
    for (const width of [320, 390, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      expect((await layoutFaults(page, { target: 48, main: 56 })).faults, `at ${width}`).toEqual([]);
    }
    expect(await axeFaults(page)).toEqual([]);
    await page.click('text=Take it into the book');
    await page.waitForSelector('text=Nothing waits');
    // The note told anew, and the line that says what became of the old one.
    expect(await entries(here)).toBe(before + 2);
    expect(here.complaints).toEqual([]);
    await here.close();
  });

  test('an untidy sheet: looked at, its good rows added, its odd ones waiting; brought again it adds nothing', async () => {
    const here = await visit(browser, practiceBook(31));
    const { page } = here;
    await here.open('#/inbox');
    const before = await entries(here);
    await page.setInputFiles('input[type=file]', join(SHEETS, 'april-days.csv'));
    await page.click('text=Look first');
    await page.waitForSelector('text=What each row would become');
    expect(await entries(here)).toBe(before);
    const preview = (await page.textContent('main')) ?? '';
    expect(preview).toContain('about 440 (display dark)');
    expect(preview).toContain('it stays a text, and nothing is worked out');
    expect(await page.textContent('button.main')).toBe('Add 26 of 33 rows');
    expect(await axeFaults(page)).toEqual([]);
    await page.click('text=Add 26 of 33 rows');
    await page.waitForSelector('.strip-row');
    await expect.poll(() => page.locator('.waiting').count()).toBe(5);
    const after = await entries(here);
    expect(after).toBeGreaterThan(before + 26);
    await page.setInputFiles('input[type=file]', join(SHEETS, 'april-days.csv'));
    await page.click('text=Look first');
    await page.waitForSelector('text=What each row would become');
    expect(await page.textContent('button.main')).toBe('Add 0 of 33 rows');
    await page.click('.waiting >> nth=4 >> button >> text=Drop it');
    await page.click('.settle >> text=a line of headings');
    await page.click('.settle >> button.b:not(.small)');
    await expect.poll(() => page.locator('.waiting').count()).toBe(4);
    expect(here.complaints).toEqual([]);
    await here.close();
  });

  test('pasted rows without a clock are asked about, and go in once it is said', async () => {
    const here = await visit(browser, practiceBook(31));
    const { page } = here;
    await here.open('#/inbox');
    const rows = readFileSync(join(SHEETS, 'april-acts.tsv'), 'utf8').split('\n');
    await page.fill('textarea', rows.slice(0, 12).join('\n'));
    await page.click('text=Look first');
    await page.waitForSelector('.refusal, .stack table');
    await page.click('text=Say what the rows themselves do not prove');
    await page.fill('.declare input', '+05:30');
    await page.click('text=Look first');
    await page.waitForSelector('text=What each row would become');
    expect(await page.textContent('main')).toContain('clock +05:30');
    await here.close();
  });
});
