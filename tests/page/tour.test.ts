// Tours of the pages at four widths, light and dark: what axe-core finds, and what it does not look for.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  describeInBrowser,
  emptyBook,
  openBrowser,
  practiceBook,
  settled,
  type Visit,
  visit,
  waterwright,
} from './browser.ts';
import { axeFaults, layoutFaults, ringFaults } from './looks.ts';

const WIDTHS = [320, 390, 768, 1280];
const PAGES = ['#/today', '#/daybook/D14', '#/stores', '#/stores/C-16', '#/parts'];
const NORMAL = { target: 48, main: 56 };

describeInBrowser('tours', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  describe.each(['light', 'dark'])('a tour in %s', (theme) => {
    let here: Visit;
    beforeAll(async () => {
      // Day 18: eight stores are on hold, and somebody has to act now.
      here = await visit(browser, practiceBook(18), { device: { theme } });
    });
    afterAll(() => here.close());

    test.each(PAGES)('%s', async (hash) => {
      await here.open(hash);
      for (const width of WIDTHS) {
        await here.page.setViewportSize({ width, height: 900 });
        const { faults, quantities } = await layoutFaults(here.page, NORMAL);
        expect(faults, `${hash} at ${width}`).toEqual([]);
        if (hash === '#/today' || hash === '#/stores') expect(quantities).toBeGreaterThan(20);
        if (width === 390 || width === 1280)
          expect(await axeFaults(here.page), `${hash} at ${width}`).toEqual([]);
      }
      expect(here.complaints).toEqual([]);
    });
  });

  test('every dialog at two widths: axe-core, targets, nothing cut off', async () => {
    const here = await visit(browser, practiceBook(46));
    const { page } = here;
    await here.open('#/daybook/D45');
    const openers: readonly (readonly [string, () => Promise<void>])[] = [
      ['drink', () => page.click('.log-bar .b:nth-child(2)')],
      ['day line', () => page.click('.log-bar .b:nth-child(1)')],
      ['fill', () => page.click('.log-bar .b:nth-child(3)')],
      ['correct', () => page.click('.book-table .acts .b:first-child')],
      ['undo a line', () => page.click('.book-table .acts .b:last-child')],
      ['close the day', () => page.keyboard.press('C')],
      ['find', () => page.keyboard.press('/')],
      ['keys', () => page.keyboard.press('?')],
      ['time', () => page.click('.when')],
      ['who', () => page.click('.head > .b.small:not(.when)')],
    ];
    for (const [name, open] of openers) {
      await open();
      await page.waitForSelector('dialog[open]');
      await settled(page);
      for (const width of [390, 1280]) {
        await page.setViewportSize({ width, height: 900 });
        expect(await axeFaults(page), `${name} at ${width}`).toEqual([]);
        const { faults } = await layoutFaults(page, NORMAL);
        expect(faults, `${name} at ${width}`).toEqual([]);
      }
      await page.keyboard.press('Escape');
      await page.waitForSelector('dialog', { state: 'detached' });
    }
    expect(here.complaints).toEqual([]);
    await here.close();
  });

  test('by keys alone: every stop has its ring in sight, and none is behind the bar', async () => {
    const here = await visit(browser, practiceBook(46), { width: 390, height: 844 });
    for (const hash of ['#/today', '#/stores/R2']) {
      await here.open(hash);
      const { faults, stops } = await ringFaults(here.page, 150);
      expect(faults, hash).toEqual([]);
      expect(stops).toBeGreaterThan(20);
    }
    await here.close();
  });

  test.each([
    ['glove', { target: 76, main: 76 }],
    ['dense', { target: 24, main: 24 }],
  ])('things to press are large enough in the mode %s', async (targets, least) => {
    const here = await visit(browser, practiceBook(46), { width: 390, device: { targets } });
    const { faults } = await layoutFaults(here.page, least);
    expect(faults).toEqual([]);
    await here.close();
  });

  test('a language twice as long has room at every width', async () => {
    const here = await visit(browser, practiceBook(46), { language: 'pseudo' });
    for (const hash of ['#/today', '#/daybook/D45', '#/stores/R2']) {
      await here.open(hash);
      for (const width of WIDTHS) {
        await here.page.setViewportSize({ width, height: 900 });
        const { faults } = await layoutFaults(here.page, NORMAL);
        expect(faults, `${hash} at ${width}`).toEqual([]);
      }
    }
    expect(await here.page.textContent('nav.pages')).toContain('Today Today');
    await here.close();
  });

  test('states: a book without an opening, a store that is not there, no reading for two days', async () => {
    const here = await visit(browser, emptyBook());
    expect(await here.page.textContent('main')).toContain('Enter the opening stocks first');
    expect(await here.page.locator('.today .big').count()).toBe(0);
    expect(await axeFaults(here.page)).toEqual([]);
    await here.close();
    const silent = practiceBook(46);
    waterwright(['log', 'drink', '8', '--at', 'D50T10:00', '--yes', '--book', silent]);
    const there = await visit(browser, silent, { width: 390 });
    const text = (await there.page.textContent('main')) ?? '';
    const [said, headline] = [text.indexOf('No day line since'), text.indexOf('\u00A0days')];
    expect(said).toBeGreaterThanOrEqual(0);
    expect(said).toBeLessThan(headline);
    expect(await axeFaults(there.page)).toEqual([]);
    await there.page.goto(`${there.origin}/#/stores/C-99`);
    await there.page.waitForSelector('.refusal');
    expect(await there.page.textContent('.refusal')).toContain('C-99');
    expect(await axeFaults(there.page)).toEqual([]);
    expect((await layoutFaults(there.page, NORMAL)).faults).toEqual([]);
    await there.close();
  });

  test('the dim theme and text at twice its size keep to the same', async () => {
    const here = await visit(browser, practiceBook(46), { device: { theme: 'dim' } });
    expect(await axeFaults(here.page)).toEqual([]);
    // Twice the text on 1280 is half the width: what browsers do when the page is enlarged.
    await here.page.setViewportSize({ width: 640, height: 450 });
    expect((await layoutFaults(here.page, NORMAL)).faults).toEqual([]);
    await here.close();
  });
});
