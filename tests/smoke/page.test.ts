// The page comes up in a real browser and shows Today without a complaint; all else about it is held by `npm run test:browser`.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { roundCoverDays } from '../../src/ground/units/index.ts';
import { describeInBrowser, openBrowser, practiceBook, type Visit, visit } from '../page/browser.ts';

describeInBrowser('the page', () => {
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

  test('comes up with the days of cover that the server tells, and complains of nothing', async () => {
    const told = await here.page.evaluate(() => fetch('/api/today').then((reply) => reply.json()));
    expect(await here.page.textContent('.today .big')).toContain(
      `${roundCoverDays(told.data.cover.drinking.q05)}\u00A0days`,
    );
    expect(await here.page.locator('.store').count()).toBeGreaterThan(0);
    expect(here.complaints).toEqual([]);
  });

  test('control: an error on the page is a complaint', async () => {
    const heard = here.page.waitForEvent('pageerror');
    await here.page.evaluate(() => {
      setTimeout(() => {
        throw new Error('on purpose');
      });
    });
    await heard;
    expect(here.complaints).toEqual(['on purpose']);
  });
});
