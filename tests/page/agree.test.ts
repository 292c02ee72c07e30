// Page, command line and paper agree to the printed digit, at four moments of the practice book.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { formatFigure, roundCoverDays } from '../../src/ground/units/index.ts';
import type { StoreLine, TodaySheet } from '../../src/papers/index.ts';
import {
  copied,
  describeInBrowser,
  openBrowser,
  practiceBook,
  settled,
  type Visit,
  visit,
  waterwright,
} from './browser.ts';

const MOMENTS = ['D14', 'D33', 'D46', 'D60'];

/** What the command line prints, its lines joined, so that a figure that it broke over two lines is found. */
const flat = (text: string): string => text.replaceAll('\u00A0', ' ').replace(/\s+/g, ' ');

describeInBrowser('page, command line and paper', () => {
  let browser: Browser;
  let here: Visit;
  let book = '';
  beforeAll(async () => {
    browser = await openBrowser();
    book = practiceBook(60);
    here = await visit(browser, copied(book));
  });
  afterAll(async () => {
    await here.close();
    await browser.close();
  });

  describe.each(MOMENTS)('at %s', (moment) => {
    const told = (...words: readonly string[]) => waterwright([...words, '--at', moment, '--book', book]);
    const sheet = () => (JSON.parse(told('today', '--json')) as { data: TodaySheet }).data;

    test('Today: cover, free water, reserve, every store and the sum', async () => {
      await here.open('#/today');
      // The time control, as a person sets it.
      await here.page.click('.when');
      await here.page.fill('dialog .field input', moment);
      await here.page.keyboard.press('Enter');
      await here.page.waitForSelector(`.notice >> text=${sheet().head.stamp}`);
      await settled(here.page);
      const page = flat((await here.page.textContent('main')) ?? '');
      const cli = flat(told('today', '--width', '400'));
      const { cover, reserve, total, head } = sheet();
      let compared = 0;
      for (const each of Object.values(cover)) {
        const figures = [
          ...(each.q05 === null ? [] : [`${roundCoverDays(each.q05)} days`]),
          formatFigure(each.free, { style: 'screen' }),
          ...(each.use === null ? [] : [formatFigure(each.use, { style: 'screen' })]),
        ].map(flat);
        for (const figure of figures) {
          expect(page).toContain(figure);
          expect(cli).toContain(figure);
          compared += 1;
        }
      }
      for (const figure of [...(reserve === null ? [] : [reserve.volume]), total]) {
        expect(page).toContain(flat(formatFigure(figure, { style: 'screen' })));
        expect(cli).toContain(flat(formatFigure(figure, { style: 'screen' })));
        compared += 1;
      }
      expect(flat((await here.page.textContent('.when')) ?? '')).toContain(flat(head.stamp));
      // Parts of the sum, as they were rounded to add up.
      const inAll = /IN ALL .*?(?= NEXT|$)/.exec(cli)?.[0] ?? '';
      for (const part of await here.page.locator('.sum-line .qty').allTextContents()) {
        expect(inAll).toContain(flat(part));
        compared += 1;
      }
      expect(compared).toBeGreaterThan(12);
    });

    test('Stores: each figure as the command line prints it', async () => {
      await here.open(`#/stores?at=${moment}`);
      const shown = new Map<string, string>();
      for (const row of await here.page.locator('.rack .store').all())
        shown.set(
          (await row.locator('.store-name b').textContent()) ?? '',
          flat((await row.locator('.qty').textContent()) ?? ''),
        );
      const stores = (JSON.parse(told('store', 'list', '--json')) as { data: { stores: StoreLine[] } }).data
        .stores;
      const plain = told('store', 'list', '--plain');
      expect(shown.size).toBe(stores.length);
      for (const { id, volume } of stores) {
        const figure = flat(formatFigure(volume, { style: 'screen' }));
        expect(shown.get(id), id).toBe(figure);
        const [value = '', , doubt = ''] = figure.replace('\u2212', '-').replaceAll('\u202F', '').split(' ');
        const line =
          plain.split('\n').find((each) => each.startsWith(`${id}\t`) || each.includes(`\t${id}\t`)) ?? '';
        expect(line, id).toContain(`${value}\t${doubt}`);
      }
    });

    test('on paper: the same cover, free water and sum as on the screen', async () => {
      await here.open(`#/today?at=${moment}`);
      const figures = async () => {
        const seen = here.page.locator('.big .qty, .nq .qty');
        const shown: string[] = [];
        for (const one of await seen.all())
          if (await one.isVisible()) shown.push(flat((await one.textContent()) ?? ''));
        return shown;
      };
      const onScreen = await figures();
      await here.page.emulateMedia({ media: 'print' });
      expect(await figures()).toEqual(onScreen);
      await here.page.emulateMedia({ media: 'screen' });
      expect(onScreen.length).toBeGreaterThan(8);
    });
  });
});
