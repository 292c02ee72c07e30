// Paper: each page on one sheet of A4, black, at least 9 pt, nothing to press, with the state of the book and its seal.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, openBrowser, practiceBook, type Visit, visit } from './browser.ts';
import { paperFaults, sheetsOf } from './on-paper.ts';

describeInBrowser('paper', () => {
  let browser: Browser;
  let here: Visit;
  beforeAll(async () => {
    browser = await openBrowser();
    here = await visit(browser, practiceBook(46));
  });
  afterAll(async () => {
    await here.close();
    await browser.close();
  });

  test.each(['#/today', '#/daybook/D45', '#/stores', '#/stores/R2', '#/stores/C-07'])('%s', async (hash) => {
    await here.open(hash);
    await here.page.waitForSelector('.seal', { state: 'attached' });
    await here.page.emulateMedia({ media: 'print' });
    const { faults, texts } = await paperFaults(here.page);
    expect(faults).toEqual([]);
    expect(texts).toBeGreaterThan(20);
    await here.page.emulateMedia({ media: null });
    const pdf = await here.page.pdf({ preferCSSPageSize: true, printBackground: true });
    expect(sheetsOf(pdf)).toBe(1);
  });

  test.each([9, 14, 18, 26, 33, 41, 46])(
    'Today of Day %i, with all that was on hold or asked then',
    async (day) => {
      await here.open(`#/today?at=D${day}`);
      await here.page.waitForSelector('.seal', { state: 'attached' });
      expect(sheetsOf(await here.page.pdf({ preferCSSPageSize: true, printBackground: true }))).toBe(1);
    },
  );

  test.each(['C-03', 'C-09', 'C-16', 'PB', 'R1', 'W-06'])(
    'the page of %s stands on one sheet',
    async (id) => {
      await here.open(`#/stores/${id}`);
      await here.page.waitForSelector('.seal', { state: 'attached' });
      expect(sheetsOf(await here.page.pdf({ preferCSSPageSize: true, printBackground: true }))).toBe(1);
    },
  );

  test('what Today leaves out on paper is said, and where the focus stands is not printed', async () => {
    await here.open('#/today?at=D27');
    const hidden =
      (await here.page.textContent('main .row button[aria-expanded=false] >> text=/more/')) ?? '';
    await here.page.emulateMedia({ media: 'print' });
    const left = here.page.locator('.print-only');
    expect(await left.isVisible()).toBe(true);
    expect(await left.textContent()).toContain(`and ${Number.parseInt(hidden, 10)}\u00A0more line`);
    await here.page.focus('.when');
    expect(
      await here.page.evaluate(() => getComputedStyle(document.activeElement as Element).outlineStyle),
    ).toBe('none');
    await here.page.emulateMedia({ media: null });
  });

  test('a whole book goes over several sheets, and the count of sheets can tell', async () => {
    await here.open('#/daybook/all');
    const pdf = await here.page.pdf({ preferCSSPageSize: true });
    expect(sheetsOf(pdf)).toBeGreaterThan(2);
  });

  test('a label alone is printed, on one sheet', async () => {
    await here.open('#/stores/R2');
    await here.page.click('text=Print its label');
    await here.page.waitForSelector('.label');
    await here.page.emulateMedia({ media: 'print' });
    expect(await here.page.locator('main').isVisible()).toBe(false);
    const box = await here.page.locator('.label').boundingBox();
    expect(await here.page.textContent('.label')).toContain('CONDITIONAL');
    const millimetre = 96 / 25.4;
    expect(box?.width).toBeCloseTo(60 * millimetre, 0);
    expect(box?.height).toBeCloseTo(40 * millimetre, 0);
    await here.page.emulateMedia({ media: null });
    expect(sheetsOf(await here.page.pdf({ preferCSSPageSize: true }))).toBe(1);
  });
});
