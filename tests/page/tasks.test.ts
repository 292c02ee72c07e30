// Tasks of every day, counted by a recorder: taps and keys that the browser saw, against the counts that were promised.
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { roundCoverDays } from '../../src/ground/units/index.ts';
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

interface Counts {
  readonly taps: number;
  readonly keys: number;
}

/** Counts what reaches the page, not what the test meant to do. */
async function record(page: Page): Promise<void> {
  await page.evaluate(() => {
    const counts = { taps: 0, keys: 0 };
    Object.assign(window, { counts });
    // A package of the page tells its own parts of keys by events that no finger made.
    addEventListener('pointerdown', (event) => (counts.taps += Number(event.isTrusted)), true);
    addEventListener('keydown', (event) => (counts.keys += Number(event.isTrusted)), true);
  });
}

/** In a quiet moment after the first view the page fetches its dialogs. */
async function dialogsAreThere(page: Page): Promise<void> {
  await page.waitForFunction(() =>
    performance.getEntriesByType('resource').some(({ name }) => /\/sheet-[^/]*\.js$/.test(name)),
  );
}

const counted = (page: Page): Promise<Counts> =>
  page.evaluate(() => (window as unknown as { counts: Counts }).counts);

describeInBrowser('tasks of every day', () => {
  let browser: Browser;
  let book = '';
  let here: Visit;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    book = practiceBook(46);
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    here = await visit(browser, copied(book), { width: 390, height: 844, touch: true });
    page = here.page;
    await dialogsAreThere(page);
    await record(page);
  });
  afterEach(async () => {
    expect(here.complaints).toEqual([]);
    await here.close();
  });

  const strip = () => page.textContent('.strip-row');
  const saved = () => page.waitForSelector('.strip-row');
  async function lastLine(): Promise<{ readonly text: string; readonly ref: string }> {
    const sheet = await page.evaluate(() => fetch('/api/book?most=1').then((reply) => reply.json()));
    return sheet.data.lines[0];
  }

  test('1: a drink of 8 strokes is two taps', async () => {
    await page.tap('.log-bar >> text=Drink');
    await page.tap('.presets >> text=8');
    await saved();
    expect(await counted(page)).toEqual({ taps: 2, keys: 0 });
    expect((await lastLine()).text).toContain('200\u00A0mL (8\u00A0strokes)');
  });

  test('1: a drink of 8 strokes is four keys', async () => {
    for (const key of ['n', 'd', '8', 'Enter']) {
      await page.keyboard.press(key);
      if (key === 'd') await page.waitForSelector('dialog [data-first]');
    }
    await saved();
    expect(await counted(page)).toEqual({ taps: 0, keys: 4 });
    expect((await lastLine()).text).toContain('200\u00A0mL (8\u00A0strokes)');
  });

  test('1a: the day line is two keys, its digits, and one key a meter', async () => {
    const values = ['455', '6.9', '209.4', '2.9', '24', '48.1', '22.1', '101.1', '-'];
    await page.keyboard.press('n');
    await page.keyboard.press('l');
    await page.waitForSelector('.meter input');
    const meters = await page.locator('.meter input').count();
    const typed = values.slice(0, meters);
    for (const value of typed) {
      await page.keyboard.type(value);
      await page.keyboard.press('Enter');
    }
    await saved();
    const digits = typed.join('').length;
    expect(await counted(page)).toEqual({ taps: 0, keys: 2 + digits + meters });
    expect((await lastLine()).text).toMatch(/^day line D47: .*strokes 455/);
  });

  test('1a: a half-typed day line is there again after the page was left', async () => {
    await page.keyboard.press('n');
    await page.keyboard.press('l');
    await page.waitForSelector('.meter input');
    await page.keyboard.type('455');
    await page.reload();
    await page.waitForSelector('[data-ready]');
    await page.click('.log-bar >> text=Day line');
    expect(await page.inputValue('.meter input')).toBe('455');
  });

  test('2: days of cover are in sight without a tap, and why is one', async () => {
    const told = await page.evaluate(() => fetch('/api/today').then((reply) => reply.json()));
    expect(await page.textContent('.today .big')).toContain(
      `${roundCoverDays(told.data.cover.drinking.q05)}\u00A0days`,
    );
    expect(await page.locator('.today .big').first().isVisible()).toBe(true);
    const box = await page.locator('.today .big').first().boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThan(844);
    await page.tap('.today .big');
    await page.waitForSelector('dialog >> text=How it was reckoned');
    expect(await counted(page)).toEqual({ taps: 1, keys: 0 });
  });

  test('3: the weight of a store is three taps and its digits', async () => {
    await page.tap('.log-bar >> text=Weigh');
    await page.tap('dialog .picker >> text=C-07');
    for (const digit of ['1', '9', '.', '3']) await page.tap(`.keypad >> text="${digit}"`);
    await page.tap('dialog button[type=submit]');
    await saved();
    expect(await counted(page)).toEqual({ taps: 3 + 4, keys: 0 });
    expect(await strip()).toMatch(/weigh.* C-07.*19\.3\u00A0kg/);
  });

  test('3: by keys n w c7 Tab 19.3 Enter', async () => {
    for (const key of ['n', 'w', 'c', '7', 'Tab', '1', '9', '.', '3', 'Enter']) {
      await page.keyboard.press(key);
      if (key === 'w') await page.waitForSelector('dialog [data-first]');
    }
    await saved();
    expect(await counted(page)).toEqual({ taps: 0, keys: 10 });
    expect(await strip()).toContain('C-07');
  });

  test('6: may I use this water: one tap on a store, or / c07 Enter', async () => {
    await here.open('#/stores');
    await record(page);
    await page.tap('.store-name >> text=R2');
    await page.waitForSelector('[data-ready=store]');
    expect(await counted(page)).toEqual({ taps: 1, keys: 0 });
    expect(await page.textContent('.answer .md')).toBe('Do not drink, but in an emergency.');
    await record(page);
    for (const key of ['/', 'c', '0', '7']) {
      await page.keyboard.press(key);
      if (key === '/') await page.waitForSelector('dialog input');
    }
    await page.waitForSelector('.found-item[data-focused]');
    await page.keyboard.press('Enter');
    await page.waitForSelector('h1 >> text=C-07');
    expect(await counted(page)).toEqual({ taps: 0, keys: 5 });
  });

  test('7: what was just entered is undone by one tap; both lines stay and the account is as before', async () => {
    const before = await page.textContent('.today .big');
    const sums = await page.textContent('.sum-line');
    for (const key of ['n', 'd', '8', '0', 'Enter']) await page.keyboard.press(key);
    await saved();
    await expect.poll(() => page.textContent('.sum-line')).not.toBe(sums);
    await record(page);
    await page.tap('.log-bar >> text=Undo');
    await expect.poll(() => page.textContent('.sum-line')).toBe(sums);
    expect(await counted(page)).toEqual({ taps: 1, keys: 0 });
    expect(await page.textContent('.today .big')).toBe(before);
    await here.open('#/daybook/all');
    const lines = await page.locator('.book-table tbody tr').allTextContents();
    expect(lines[0]).toContain('undo');
    expect(await page.locator('.book-table tr.undone s').first().textContent()).toContain('80\u00A0strokes');
  });

  test('7: an older line is corrected in four taps and its digits; the first one stays readable', async () => {
    await page.keyboard.press('n');
    await page.keyboard.press('d');
    await page.keyboard.type('80');
    await page.keyboard.press('Enter');
    await saved();
    const { ref } = await lastLine();
    await here.open('#/daybook');
    await record(page);
    await page.tap('.book-table .acts >> nth=0 >> text=Correct');
    for (const digit of ['8']) await page.tap(`.keypad >> text="${digit}"`);
    await page.tap('dialog .choices >> text=miscount');
    await page.tap('dialog button[type=submit]');
    await saved();
    const { taps } = await counted(page);
    expect(taps).toBeLessThanOrEqual(4 + 1);
    await settled(page);
    await expect.poll(() => page.textContent('.book-table')).toContain('corrected by');
    const whole = await page.textContent('.book-table');
    expect(whole).toContain(ref);
    expect(whole).toContain('80\u00A0strokes');
  });

  test('10: the evening close is the button, three ticks and the signature', async () => {
    await here.open('#/daybook/D46');
    await record(page);
    await page.tap('text=Close the day');
    for (const k of [0, 1, 2]) await page.tap(`dialog .tick >> nth=${k}`);
    await page.tap('dialog >> text=Sign as keeper');
    await page.waitForSelector('.strip-row >> text=Day 46 is closed');
    expect(await counted(page)).toEqual({ taps: 5, keys: 0 });
    await here.open('#/daybook/D46');
    expect(await page.textContent('main')).toContain('This day is closed');
  });

  test('keys are silent inside fields, and all of them when they are switched off', async () => {
    await here.open('#/daybook/D45');
    await page.fill('input[type=search]', '');
    await page.focus('input[type=search]');
    await page.keyboard.type('gtndu/?');
    expect(await page.inputValue('input[type=search]')).toBe('gtndu/?');
    expect(await page.locator('dialog').count()).toBe(0);
    expect(page.url()).toContain('#/daybook');
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.keyboard.press('?');
    await page.click('dialog >> text=Turn them off');
    await page.keyboard.press('Escape');
    for (const key of 'gtndu/?P[]') await page.keyboard.press(key);
    await page.waitForTimeout(100);
    expect(await page.locator('dialog').count()).toBe(0);
    expect(page.url()).toContain('#/daybook/D45');
  });

  test('a refusal shows the way out; what has already happened is kept with its reason', async () => {
    await page.click('.log-bar >> text=Fill');
    await page.fill('dialog .picker >> nth=0 >> input', 'c16');
    await page.fill('dialog .picker >> nth=1 >> input', 'c01');
    await page.fill('.amount input', '5');
    await page.click('dialog button[type=submit]');
    await page.waitForSelector('.refusal');
    const said = (await page.textContent('.refusal')) ?? '';
    expect(said).toContain('C-01');
    expect(said).toContain('The way out');
    expect(said).not.toContain('--happened');
    expect((await lastLine()).text).not.toContain('C-01 to C-16');
    await page.click('text=It has already happened');
    await page.click('.refusal .choices >> text=urgent need');
    await page.click('text=Keep it as it happened');
    await saved();
    expect(await strip()).toContain('C-16');
  });

  test('an entry of a closed day is refused, and kept as a late one with a reason', async () => {
    await page.evaluate(() =>
      fetch('/api/book/close', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: '{"day":46}',
      }),
    );
    await page.click('.log-bar >> text=Drink');
    await page.click('dialog >> text=Time …');
    await page.fill('dialog .field >> nth=1 >> input', 'D46T12:00');
    await page.click('.presets >> text=8');
    await page.click('text=It belongs to that day all the same');
    await page.click('.refusal .choices >> text=noted on paper');
    await page.click('text=Keep it as a late entry');
    await saved();
    await here.open('#/daybook/D46');
    // Whether a day is closed is known before it is known what came in after its close.
    await expect.poll(() => page.textContent('main')).toContain('1\u00A0late entry since');
  });

  test('a page that is ended 50 ms after Save has lost nothing', async () => {
    const entries = () =>
      page.evaluate(() =>
        fetch('/api/today').then(async (reply) => (await reply.json()).data.head.entries as number),
      );
    const before = await entries();
    let kept = 0;
    for (let round = 0; round < 3; round += 1) {
      await page.keyboard.press('n');
      await page.keyboard.press('d');
      await page.waitForSelector('dialog input');
      await page.keyboard.type('7');
      await page.keyboard.press('Enter');
      await page.waitForTimeout(50);
      // The renderer ends at once: nothing of the page runs any more.
      await page.goto('chrome://crash').catch(() => undefined);
      await page.close();
      page = await here.context.newPage();
      await page.goto(here.origin);
      await page.waitForSelector('[data-ready]');
      await dialogsAreThere(page);
      kept += 1;
    }
    expect(await entries()).toBe(before + kept);
    const copy = copied(here.book);
    expect(waterwright(['book', 'check', '--book', copy])).toContain('Every chain is whole');
  });
});
