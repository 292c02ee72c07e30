// Reckon in a browser: every calculator as the command line has it, answered as one types, on every screen and on paper.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { reckonForms } from '../../src/desk/index.ts';
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
import { HOSTILE } from './hostile-texts.ts';
import { axeFaults, layoutFaults, ringFaults } from './looks.ts';
import { paperFaults, sheetsOf } from './on-paper.ts';

const FORMS = reckonForms().forms;
const NAMES = FORMS.map(({ calculator }) => calculator);
const WIDTHS = [320, 390, 768, 1280];
const NORMAL = { target: 48, main: 56 };

const flat = (text: string): string => text.replaceAll('\u00A0', ' ').replace(/\s+/g, ' ').trim();

/** The answer to what stands in the form now has come. */
async function answered(page: Page, as = 'answer'): Promise<void> {
  await page.waitForSelector(`.calculator[data-answer="${as}"]:not([data-old])`);
}

async function example(page: Page): Promise<void> {
  await page.click('text=Fill in the example');
  await answered(page);
  await settled(page);
}

async function enter(page: Page, field: string, text: string): Promise<void> {
  const place = page.locator(`[name="${field}"]`);
  if (!(await place.isVisible())) await page.click('.more-fields > summary');
  if ((await place.evaluate(({ tagName }) => tagName)) === 'SELECT') await place.selectOption(text);
  else await place.fill(text);
}

describeInBrowser('Reckon', () => {
  let browser: Browser;
  let book = '';
  let here: Visit;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    book = practiceBook(46);
    here = await visit(browser, copied(book));
    page = here.page;
  });
  afterAll(async () => {
    expect(here.complaints).toEqual([]);
    await here.close();
    await browser.close();
  });

  // Where a test ended half-way, the next one begins as the first did.
  beforeEach(async () => {
    await page.emulateMedia({ media: null });
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  const told = (words: readonly string[]) => waterwright(['reckon', ...words, '--book', book]);
  const flagsOf = (calculator: string) => {
    const form = FORMS.find((each) => each.calculator === calculator);
    return Object.entries(form?.example ?? {}).map(([name, text]) => `--${name}=${text}`);
  };

  /** Names and figures as they stand on the page: results, then inputs. */
  async function pairs(): Promise<readonly string[]> {
    const rows = await page.evaluate(() => {
      const text = (within: Element, what: string) => within.querySelector(what)?.textContent ?? '';
      const main = [...document.querySelectorAll('.answer-main')].map(
        (each) => `${text(each, '.answer-name')} ${text(each, '.answer-figure')}`,
      );
      const others = [...document.querySelectorAll('.results > div')].map(
        (each) => `${text(each, 'dt')} ${text(each, 'dd')}`,
      );
      const inputs = [...document.querySelectorAll('.how tbody tr')].map(
        (each) => `${text(each, 'th')} ${text(each, '.qty')} ${text(each, 'td:nth-child(5)')}`,
      );
      return [...main, ...others, ...inputs];
    });
    return rows.map(flat);
  }

  /** What the page shows and the command line does not. */
  const unlike = (shown: readonly string[], cli: string) => shown.filter((pair) => !cli.includes(pair));

  test.each(NAMES)('%s: with its example the same figures as the command line', async (calculator) => {
    await here.open(`#/reckon/${calculator}`);
    await example(page);
    const cli = flat(told([calculator, ...flagsOf(calculator), '--explain', '--width', '400']));
    const shown = await pairs();
    expect(shown.length).toBeGreaterThan(4);
    expect(unlike(shown, cli)).toEqual([]);
    // A control: one other digit is seen.
    const wrong = shown.map((pair, k) =>
      k === 0 ? pair.replace(/\d(?=\D*$)/, (digit) => `${9 - Number(digit)}`) : pair,
    );
    expect(wrong[0]).not.toBe(shown[0]);
    expect(unlike(wrong, cli)).toHaveLength(1);
    for (const saying of await page.locator('.answer .sayings li').allTextContents())
      expect(cli).toContain(flat(saying));
    for (const equation of await page.locator('.equation').allTextContents())
      expect(cli).toContain(flat(equation));
  });

  test('hazard boxes come before the answer, on the screen and on paper', async () => {
    for (const { calculator, cautions } of FORMS) {
      await here.open(`#/reckon/${calculator}`);
      await example(page);
      expect(await page.locator('.hazard b').allTextContents()).toEqual(cautions.map(({ signal }) => signal));
      for (const media of ['screen', 'print'] as const) {
        await page.emulateMedia({ media });
        const tops = await page.evaluate(() =>
          ['.hazards > :last-child', '.answer-main'].map(
            (what) => document.querySelector(what)?.getBoundingClientRect().top ?? null,
          ),
        );
        const [hazard, answer] = tops;
        if (cautions.length > 0) expect(hazard, calculator).toBeLessThan(answer ?? 0);
      }
      await page.emulateMedia({ media: null });
    }
    expect(FORMS.filter(({ cautions }) => cautions.length > 0).length).toBeGreaterThan(7);
  });

  test('with names of the book: a filling from store to store, through a hose', async () => {
    await here.open('#/reckon/transfer');
    await page.click('text=Clear');
    for (const [field, text] of [
      ['from', 'C-08'],
      ['to', 'C-07'],
      ['hose', 'H-1'],
      ['over', '30'],
    ] as const)
      await enter(page, field, text);
    await answered(page);
    const words = ['transfer', '--from', 'C-08', '--to', 'C-07', '--hose', 'H-1', '--over', '30kPa'];
    const cli = flat(told([...words, '--explain', '--width', '400']));
    const shown = await pairs();
    expect(unlike(shown, cli)).toEqual([]);
    expect(sheetsOf(await page.pdf({ preferCSSPageSize: true, printBackground: true }))).toBe(1);
    expect(await page.textContent('.how')).toContain('For from store C-08, to store C-07, hose H-1.');
    // Under an empty field stands what was taken for it.
    const hint = page
      .locator('.reckon-field', { has: page.locator('[name="length"]') })
      .locator('.reckon-hint');
    expect(flat((await hint.textContent()) ?? '')).toBe('Taken: 6 m – outpost file: hose H-1');
  });

  test('typing changes the answer after a pause, and what is missing is said calmly', async () => {
    await here.open('#/reckon/oxygen');
    await page.click('text=Clear');
    await answered(page);
    const figure = async () => flat((await page.textContent('.answer-figure')) ?? '');
    const ofBook = await figure();
    await enter(page, 'people', '8');
    await page.waitForSelector('.calculator[data-old]');
    await answered(page);
    const ofEight = await figure();
    expect(ofEight).not.toBe(ofBook);
    await here.open('#/reckon/weigh');
    await page.click('text=Clear');
    await answered(page, 'needs');
    expect(await page.locator('.not-yet li').allTextContents()).toEqual([
      'time of one full swing',
      'stiffness of the spring',
    ]);
    expect(await page.locator('.needed').count()).toBe(2);
    expect(await page.locator('.refusal, [role=alert], [aria-invalid]').count()).toBe(0);
    // Another calculator and back: what was typed is there.
    await page.goto(`${here.origin}/#/reckon/oxygen`);
    await page.waitForSelector('[name=people]');
    expect(await page.inputValue('[name=people]')).toBe('8');
  });

  test('an older answer never overwrites a younger one', async () => {
    await here.open('#/reckon/mix');
    await page.click('text=Clear');
    await answered(page, 'needs');
    let held = 0;
    await page.route('**/api/reckon/mix', async (route) => {
      if (route.request().postData()?.includes('"11L"') === true) {
        held += 1;
        await new Promise((later) => setTimeout(later, 1200));
      }
      await route.continue();
    });
    await enter(page, 'concentration', '0.3');
    await enter(page, 'volume', '11');
    await expect.poll(() => held).toBe(1);
    await enter(page, 'volume', '12');
    await answered(page);
    const shown = async () => flat((await page.textContent('.how')) ?? '');
    expect(await shown()).toContain('12 L');
    await page.waitForTimeout(1500);
    expect(await shown()).toContain('12 L');
    await page.unroute('**/api/reckon/mix');
  });

  test('a figure that cannot be read is told at its field, after the pause and not while one types', async () => {
    await here.open('#/reckon/dose');
    await example(page);
    const found = page.locator('.reckon-found p');
    await enter(page, 'volume', '20 blocks');
    expect(await found.count()).toBe(0);
    await answered(page, 'look');
    expect(await found.count()).toBe(1);
    expect(await found.textContent()).toContain('blocks');
    expect(await page.getAttribute('[name=volume]', 'aria-invalid')).toBe('true');
    expect(await page.locator('.not-yet li').allTextContents()).toEqual(['volume of water']);
    await page.locator('[name=volume]').press('End');
    await page.locator('[name=volume]').press('x');
    expect(await found.count()).toBe(0);
    await enter(page, 'volume', '20');
    await answered(page);
    expect(await page.locator('[aria-invalid]').count()).toBe(0);
  });

  test('a charge that R2 may not have is refused, with the end pressure and the charge that is safe', async () => {
    await here.open('#/reckon/gauge');
    await page.click('text=Clear');
    await enter(page, 'store', 'R2');
    await enter(page, 'bottle-before', '600');
    await answered(page, 'refused');
    const said = flat((await page.textContent('.answer .refusal')) ?? '');
    const cli = (() => {
      try {
        return told(['gauge', '--store', 'R2', '--bottle-before', '600kPa']);
      } catch (error) {
        return flat(String(error));
      }
    })();
    const [, end = '', rating = ''] =
      /would end at ([\d.]+ kPa) absolute, and its lowest rating is ([\d.]+ kPa)/.exec(said) ?? [];
    expect(end).not.toBe('');
    expect(cli).toContain(`would end at ${end} absolute`);
    expect(said).toContain('The way out');
    const safe = /Charge the bottle to at most ([\d.]+ kPa) absolute/.exec(said)?.[1] ?? 'nothing';
    expect(cli).toContain(`Charge the bottle to at most ${safe} absolute`);
    expect(cli).toContain(`lowest rating is ${rating} absolute`);
    expect(await page.locator('.answer-main').count()).toBe(0);
    // The charge that it calls safe is taken.
    await enter(page, 'bottle-before', safe.replace(' kPa', ''));
    await answered(page);
    expect(await page.locator('.refusal').count()).toBe(0);
  });

  test('looks at the past when the time control is set', async () => {
    const words = ['transfer', '--from', 'C-17', '--over', '30kPa', '--length', '6m', '--bore', '8mm'];
    for (const at of ['D10', 'D40']) {
      await here.open(`#/reckon/transfer?at=${at}`);
      await page.click('text=Clear');
      for (const [field, text] of [
        ['from', 'C-17'],
        ['over', '30'],
        ['length', '6'],
        ['bore', '8'],
      ] as const)
        await enter(page, field, text);
      await answered(page);
      const cli = flat(told([...words, '--explain', '--width', '400', '--at', at]));
      expect(unlike(await pairs(), cli)).toEqual([]);
    }
  });

  test('results and inputs are copied with value, ± and unit in cells of their own', async () => {
    await here.context.grantPermissions(['clipboard-read', 'clipboard-write']);
    await here.open('#/reckon/dewpoint');
    await example(page);
    await page.click('.how >> text=Copy the table');
    await page.waitForSelector('text=Copied, with headings and units');
    const copy = await page.evaluate(() => navigator.clipboard.readText());
    expect(copy.split('\n')[0]).toBe('Input\tValue\t±\tUnit\tWhere from\tPart of the ±');
    expect(copy).toContain('relative humidity\t50.0\t2.0\t%\ttyped\t100 %');
    await page.click('.answer >> text=Show as a table');
    await page.click('.answer >> text=Copy the table');
    await expect
      .poll(() => page.evaluate(() => navigator.clipboard.readText()))
      .toMatch(/^What\tValue\t±\tUnit\ndew point\t11\.1\t0\.6\t°C\n/);
  });

  test('the condensate of the days: every day in the table, and the days that fall out by shape and word', async () => {
    await here.open('#/reckon/condense');
    await page.waitForSelector('.condensate .plot');
    const sheet = (
      JSON.parse(told(['condense', '--days', '400', '--json'])) as {
        data: { lines: readonly { day: number; verdict: string }[] };
      }
    ).data;
    const out = sheet.lines.filter(({ verdict }) => verdict !== 'as expected');
    expect(out.length).toBeGreaterThan(2);
    expect(await page.locator('.came').count()).toBe(sheet.lines.length);
    for (const verdict of ['less came', 'more came']) {
      const many = out.filter((line) => line.verdict === verdict).length;
      expect(await page.locator(`.came.out[data-verdict="${verdict}"]`).count()).toBe(many);
      expect(await page.locator('.out-word', { hasText: verdict }).count()).toBeGreaterThan(0);
    }
    await page.click('.condensate >> text=Show as a table');
    const cli = flat(told(['condense', '--days', '400', '--width', '200']));
    const rows = await page.locator('.day-table tbody tr').all();
    expect(rows).toHaveLength(sheet.lines.length);
    for (const row of rows) {
      const cells = await row.evaluate((each) =>
        [...each.children].map((cell) => cell.querySelector('.qty')?.textContent ?? cell.textContent ?? ''),
      );
      const bare = flat(cells.map((cell) => cell.replace(/\u00A0L$/, '')).join(' '));
      expect(cli).toContain(bare);
    }
  });

  test('60 hostile strings stay text: in figures, in the address', async () => {
    expect(HOSTILE).toHaveLength(60);
    await here.open('#/reckon/weigh');
    const fields = ['period', 'stiffness', 'carriage', 'empty', 'frame'] as const;
    let wrong = 0;
    for (let k = 0; k < HOSTILE.length; k += fields.length) {
      for (const [n, field] of fields.entries()) {
        const text = HOSTILE[k + n] ?? '';
        await enter(page, field, text);
        expect(await page.inputValue(`[name=${field}]`)).toBe(text.replaceAll(/[\r\n]/g, ''));
      }
      await answered(page, 'look');
      wrong += await page.locator('.reckon-found p').count();
    }
    expect(wrong).toBe(HOSTILE.length);
    for (const text of HOSTILE) {
      await page.goto(`${here.origin}/#/reckon/${encodeURIComponent(text)}`);
      await expect.poll(() => page.textContent('.reckon-about')).toBe(`There is no calculator ${text}.`);
    }
    const left = await page.evaluate(() => ({
      ran: '__x' in window,
      brought: document.querySelectorAll('#page :is(script, iframe, img, object, embed, form[action], style)')
        .length,
    }));
    expect(left).toEqual({ ran: false, brought: 0 });
    await here.open('#/reckon/weigh');
    await page.click('text=Clear');
  });

  test.each(NAMES)('%s filled prints on one sheet of A4, black, at least 9 pt', async (calculator) => {
    await here.open(`#/reckon/${calculator}`);
    await example(page);
    await page.waitForSelector('.seal', { state: 'attached' });
    await page.emulateMedia({ media: 'print' });
    const { faults, texts } = await paperFaults(page);
    expect(faults).toEqual([]);
    expect(texts).toBeGreaterThan(20);
    for (const line of await page.locator('.blank').all())
      expect((await line.boundingBox())?.width).toBeGreaterThan(100);
    await page.emulateMedia({ media: null });
    expect(sheetsOf(await page.pdf({ preferCSSPageSize: true, printBackground: true }))).toBe(1);
  });

  test('by keys alone: from Today to an answer, with a ring at every stop', async () => {
    const there = await visit(browser, copied(book), { width: 390, height: 844 });
    await there.page.keyboard.press('g');
    await there.page.keyboard.press('k');
    await there.page.waitForSelector('[data-ready=reckon]');
    await settled(there.page);
    const onto = async (what: string) => {
      for (let k = 0; k < 60; k += 1) {
        await there.page.keyboard.press('Tab');
        if (await there.page.evaluate((text) => document.activeElement?.matches(text), what)) return;
      }
      throw new Error(`no stop at ${what}`);
    };
    await onto('a[href="#/reckon/oxygen"]');
    await there.page.keyboard.press('Enter');
    await answered(there.page);
    await onto('[name=people]');
    await there.page.keyboard.type('6');
    await onto('[name=share]');
    await there.page.keyboard.type('50');
    await there.page.keyboard.press('Enter');
    await answered(there.page);
    expect(flat((await there.page.textContent('.how')) ?? '')).toContain('50 %');
    for (const hash of ['#/reckon', '#/reckon/transfer', '#/reckon/condense']) {
      await there.open(hash);
      const { faults, stops } = await ringFaults(there.page, 150);
      expect(faults, hash).toEqual([]);
      expect(stops).toBeGreaterThan(15);
    }
    await there.close();
  });

  describe.each(['light', 'dark'])('a tour in %s', (theme) => {
    test.each(['', ...NAMES])('#/reckon/%s', async (calculator) => {
      await page.evaluate(
        (chosen) => localStorage.setItem('waterwright', JSON.stringify({ theme: chosen })),
        theme,
      );
      await page.goto('about:blank');
      await here.open(calculator === '' ? '#/reckon' : `#/reckon/${calculator}`);
      if (calculator !== '') await example(page);
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 900 });
        const { faults } = await layoutFaults(page, NORMAL);
        expect(faults, `at ${width}`).toEqual([]);
        if (width === 390 || width === 1280) expect(await axeFaults(page), `at ${width}`).toEqual([]);
      }
    });
  });

  test('states without an answer have room, and axe-core finds nothing in them', async () => {
    const states: readonly (readonly [string, string, Readonly<Record<string, string>>])[] = [
      ['weigh', 'needs', {}],
      ['gauge', 'refused', { store: 'R2', 'bottle-before': '600' }],
      ['condense', 'untold', { air: '22', humidity: '50', 'air-flow': '120', coolant: '6' }],
      ['dose', 'look', { volume: 'x', wanted: '-3', stock: '400' }],
      ['dewpoint', 'cannot', { air: '400', humidity: '50' }],
    ];
    for (const [calculator, as, fields] of states) {
      await here.open(`#/reckon/${calculator}`);
      await page.click('text=Clear');
      for (const [field, text] of Object.entries(fields)) await enter(page, field, text);
      await answered(page, as);
      const said = (await page.textContent('.calculator')) ?? '';
      expect(said).not.toMatch(/--[a-z]/);
      expect(said).not.toContain('waterwright');
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 900 });
        expect((await layoutFaults(page, NORMAL)).faults, `${as} at ${width}`).toEqual([]);
      }
      expect(await axeFaults(page), as).toEqual([]);
    }
  });

  test('a language twice as long, the dim theme, and gloves have room', async () => {
    const there = await visit(browser, copied(book), {
      language: 'pseudo',
      device: { theme: 'dim', targets: 'glove' },
    });
    for (const hash of ['#/reckon', '#/reckon/transfer', '#/reckon/condense']) {
      await there.open(hash);
      if (hash !== '#/reckon') {
        await there.page.click('.reckon-form .b.small >> nth=0');
        await answered(there.page);
      }
      for (const width of WIDTHS) {
        await there.page.setViewportSize({ width, height: 900 });
        const { faults } = await layoutFaults(there.page, { target: 76, main: 76 });
        expect(faults, `${hash} at ${width}`).toEqual([]);
      }
      expect(await axeFaults(there.page), hash).toEqual([]);
    }
    await there.close();
  });

  test('comes with its first opening, not with the first view', async () => {
    const there = await visit(browser, copied(book));
    const first = await there.page.evaluate(
      () => document.querySelector<HTMLScriptElement>('script[type=module]')?.src ?? '',
    );
    expect(await (await there.page.request.get(first)).text()).not.toContain('calculator-head');
    expect(there.asked.filter((address) => address.includes('/api/reckon'))).toEqual([]);
    await there.close();
  });
});
