// What is seen at once: that lines need somebody, what must not be drunk, the key of the marks, the bar at the lower edge.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeInBrowser, openBrowser, practiceBook, type Visit, visit } from './browser.ts';
import { layoutFaults } from './looks.ts';

/** Words that are broken in their middle: a text without a space that stands on more than one line. */
const brokenWords = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const broken: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent?.checkVisibility() !== true || parent.closest('svg, .hidden, .foot, .skip') !== null)
        continue;
      // Only for voices.
      if (getComputedStyle(parent).clipPath !== 'none') continue;
      for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[\p{L}\d]{3,}/gu)) {
        const range = document.createRange();
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        if (tops.size > 1) broken.push(word);
      }
    }
    return broken;
  });

/** Text that reaches out of the thing to press that it stands in. */
const spills = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.b, .link, .field input, .picker input')]
      .filter((thing) => thing.checkVisibility() && thing.scrollWidth > thing.clientWidth + 1)
      .map((thing) => thing.textContent ?? ''),
  );

describeInBrowser('what is seen at once', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  test('a store that is opened from a line of Today begins at its top, and its verdict lies over nothing', async () => {
    const here = await visit(browser, practiceBook(46), { width: 1280, height: 800 });
    const { page } = here;
    // The styles of every page are there: none of them may reach into this one.
    await here.open('#/reckon/transfer');
    await page.waitForSelector('.calculator');
    await here.open('#/today');
    await page.click('.needs-strip .link');
    expect(await page.evaluate(() => window.scrollY)).toBeGreaterThan(100);
    await page.click('.need a[href*="R2"]');
    await page.waitForSelector('.row.answer');
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    expect(await page.$eval('.row.answer', (verdict) => getComputedStyle(verdict).position)).toBe('static');
    await here.close();
  });

  test.each([
    [1280, 800],
    [390, 844],
  ])(
    'lines that need somebody are told above the fold at %i by %i, with the way to them',
    async (width, height) => {
      const here = await visit(browser, practiceBook(60), { width, height });
      const { page } = here;
      const strip = await page.locator('.needs-strip .link').boundingBox();
      const bar = await page.locator('.bottom').boundingBox();
      expect((strip?.y ?? 9999) + (strip?.height ?? 0)).toBeLessThan(bar?.y ?? 0);
      const said = (await page.textContent('.needs-strip')) ?? '';
      const lines = (await page.textContent('#needs-you + p')) ?? '';
      const counts = (said.match(/\d+/g) ?? []).map((digits) => Number.parseInt(digits, 10));
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(Number.parseInt(lines, 10));
      await page.click('.needs-strip .link');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('needs-you');
      const head = await page.locator('#needs-you').boundingBox();
      expect(head?.y).toBeLessThan(height / 2);
      await here.close();
    },
  );

  test('why R2 is for an emergency, and that it is not to be drunk, stand with its line', async () => {
    const here = await visit(browser, practiceBook(60));
    const line = here.page.locator('.need', { hasText: 'CONDITIONAL' });
    expect(await line.textContent()).toContain('the same water as under hold Q-01 came into it');
    expect(await line.textContent()).toContain('Do not drink: emergency only.');
    expect(await here.page.locator('.store', { hasText: 'R2' }).textContent()).toContain('do not drink');
    await here.close();
  });

  test('the key of the marks stands on the screen and on paper, and waste is told from drinking in black', async () => {
    const here = await visit(browser, practiceBook(60));
    const { page } = here;
    for (const hash of ['#/today', '#/stores']) {
      await here.open(hash);
      for (const media of ['screen', 'print'] as const) {
        await page.emulateMedia({ media });
        const keys = await page.locator('.grade-key li').allTextContents();
        expect(keys.map((text) => text.replace(/[^a-z]/g, ''))).toEqual([
          'drinking',
          'technical',
          'raw',
          'waste',
        ]);
        expect(await page.locator('.grade-key').isVisible()).toBe(true);
        const fills = await page
          .locator('.grade-key .badge > :first-child')
          .evaluateAll((shapes) => shapes.map((shape) => [shape.tagName, getComputedStyle(shape).fill]));
        expect(fills.map(([shape]) => shape)).toEqual(['circle', 'rect', 'path', 'path']);
        expect(fills[3]?.[1]).not.toBe(fills[0]?.[1]);
      }
      await page.emulateMedia({ media: null });
    }
    await here.close();
  });

  test('the chart names what is still to come, berthings and departures, and nothing that is past', async () => {
    const here = await visit(browser, practiceBook(60));
    await here.open('#/today?at=D46');
    expect(await here.page.textContent('.reach')).toContain('Pannier 8 leaves, Day\u00A051');
    expect(await here.page.textContent('.reach')).toMatch(/Pannier 9 berths, Day\u00A0(?:5[2-9]|6\d)/);
    await here.open('#/today');
    expect(await here.page.textContent('.reach')).not.toContain('leaves, Day\u00A051');
    expect(await here.page.textContent('.reach')).toContain('Pannier 9 berths, Day\u00A066');
    await here.close();
  });

  test('every reading that is worth its minutes can be entered where it is told', async () => {
    const here = await visit(browser, practiceBook(60));
    const { page } = here;
    expect(await page.locator('.worth').count()).toBe(2);
    await page.click('.worth >> text=PB');
    expect(await page.textContent('dialog h2')).toBe('Gauge a store');
    expect(await page.inputValue('dialog [data-field=store]')).toBe('PB');
    await here.close();
  });

  test('stores that are numbered on stand together, and a heading is not said twice', async () => {
    const here = await visit(browser, practiceBook(60));
    await here.open('#/stores');
    const names = await here.page.locator('.rack .store-name b').allTextContents();
    expect(names.indexOf('C-19')).toBe(names.indexOf('C-16') + 3);
    await here.open('#/stores/C-03');
    const said = here.page.locator('text="Its life in the book"');
    const shown = await said.evaluateAll((all) => all.filter((one) => one.clientWidth > 1).length);
    expect(shown).toBe(1);
    await here.close();
  });

  test('on a page that is short the bar stands at the lower edge', async () => {
    const here = await visit(browser, practiceBook(60), { width: 1280, height: 1600 });
    await here.open('#/daybook/D60');
    const bar = await here.page.locator('.bottom').boundingBox();
    expect((bar?.y ?? 0) + (bar?.height ?? 0)).toBeCloseTo(1600, 0);
    await here.close();
  });

  describe.each([
    ['320 px', 320, 700, '100%'],
    ['390 px and text at twice its size', 390, 844, '200%'],
    ['1280 px and text at twice its size', 1280, 800, '200%'],
  ])('%s', (_name, width, height, size) => {
    let here: Visit;
    beforeAll(async () => {
      here = await visit(browser, practiceBook(60), { width, height });
      // As the setting of a browser does it: before anything is laid out.
      await here.page.addInitScript((letters) => {
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(`html { font-size: ${letters}; }`);
        document.adoptedStyleSheets = [sheet];
      }, size);
      await here.page.reload();
      await here.page.waitForSelector('[data-ready]');
    });
    afterAll(() => here.close());

    test.each(['#/today', '#/stores', '#/stores/R2', '#/daybook/D59', '#/inbox', '#/reckon'])(
      '%s',
      async (hash) => {
        await here.open(hash);
        expect((await layoutFaults(here.page, { target: 40, main: 40 })).faults).toEqual([]);
        expect(await brokenWords(here.page)).toEqual([]);
        expect(await spills(here.page)).toEqual([]);
      },
    );

    test('the bar takes one row, or two where no word would have room; no word of it is cut', async () => {
      await here.open('#/today');
      const tops = await here.page
        .locator('.log-bar .b')
        .evaluateAll((all) => [...new Set(all.map((one) => Math.round(one.getBoundingClientRect().top)))]);
      expect(tops.length).toBeLessThanOrEqual(size === '200%' && width === 390 ? 2 : 1);
    });

    test('forms: no word is cut, and the day line keeps room for its meters', async () => {
      for (const opener of ['Day line', 'Drink', 'Fill', 'Weigh']) {
        await here.page.click(`.log-bar >> text=${opener}`);
        await here.page.waitForSelector('dialog .save-row');
        expect(await brokenWords(here.page), opener).toEqual([]);
        expect(await spills(here.page), opener).toEqual([]);
        if (opener === 'Day line' && size === '100%') {
          const pad = await here.page.locator('.day-pad').boundingBox();
          expect(pad?.height ?? 9999).toBeLessThan(height / 2.5);
        }
        await here.page.keyboard.press('Escape');
        await here.page.waitForSelector('dialog', { state: 'detached' });
      }
    });
  });
});
