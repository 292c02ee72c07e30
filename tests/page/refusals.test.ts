// What is said to a press: refusals and questions in sight and focused, marks at the field, remedies that can be pressed.
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import {
  copied,
  describeInBrowser,
  openBrowser,
  practiceBook,
  settled,
  type Visit,
  visit,
} from './browser.ts';
import { axeFaults, layoutFaults } from './looks.ts';

/** Whether the middle of an element is what stands there on the screen. */
const inSight = (page: Page, selector: string): Promise<boolean> =>
  page.evaluate((wanted) => {
    const element = document.querySelector(wanted);
    if (element === null) return false;
    const { x, y, width, height, top, bottom } = element.getBoundingClientRect();
    const there = document.elementFromPoint(x + width / 2, y + Math.min(height / 2, 20));
    return top >= 0 && bottom <= innerHeight && there !== null && element.contains(there);
  }, selector);

describeInBrowser('what is said to a press', () => {
  let browser: Browser;
  let book = '';
  let here: Visit;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    book = practiceBook(60);
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    here = await visit(browser, copied(book), { width: 1280, height: 800 });
    page = here.page;
  });
  afterEach(async () => {
    expect(here.complaints).toEqual([]);
    await here.close();
  });

  const entries = () =>
    page.evaluate(() =>
      fetch('/api/today').then(async (reply) => (await reply.json()).data.head.entries as number),
    );
  const focusIn = (selector: string) =>
    page.evaluate((wanted) => document.activeElement?.closest(wanted) !== null, selector);

  test('a refusal takes the focus, comes into sight, and stands beside Save', async () => {
    const before = await entries();
    await page.click('.log-bar >> text=Fill');
    await page.fill('[data-field=store]', 'c02');
    await page.fill('[data-field=from]', 'w01');
    await page.fill('[data-field=amount]', '5');
    await page.click('.save-row button');
    await page.waitForSelector('.refusal');
    expect(await focusIn('.refusal')).toBe(true);
    expect(await inSight(page, '.refusal')).toBe(true);
    expect(await page.textContent('.save-row p')).toMatch(/^Not saved\. .*C-02/);
    await page.mouse.wheel(0, 2000);
    await page.waitForTimeout(100);
    expect(await inSight(page, '.save-row p')).toBe(true);
    expect(await entries()).toBe(before);
    expect(await axeFaults(page)).toEqual([]);
  });

  test('Save stands last in every form that can be long', async () => {
    for (const opener of ['Fill', 'Weigh', 'Drink']) {
      await page.click(`.log-bar >> text=${opener}`);
      await page.waitForSelector('dialog form');
      expect(
        await page.evaluate(() => document.querySelector('dialog form')?.lastElementChild?.className),
        opener,
      ).toBe('save-row');
      await page.keyboard.press('Escape');
    }
  });

  test('a drink that cannot well be true is asked about: changed in its field, or kept', async () => {
    const before = await entries();
    await page.click('.log-bar >> text=Drink');
    await page.fill('dialog .field input', '200');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.refusal >> text=Keep it as it is?');
    expect(await focusIn('.refusal')).toBe(true);
    expect(await page.textContent('.refusal')).not.toMatch(/--yes|waterwright/);
    expect(await entries()).toBe(before);
    await page.click('.refusal >> text=Change it');
    expect(await page.locator('.refusal').count()).toBe(0);
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('200');
    await page.keyboard.press('Enter');
    await page.click('.refusal >> text=Keep it >> nth=1');
    await page.waitForSelector('.strip-row');
    expect(await entries()).toBe(before + 1);
  });

  test('a day line that cannot be true is marked at its fields, asked about, and is no headline', async () => {
    const headline = await page.textContent('.today .big');
    await page.click('.log-bar >> text=Day line');
    const wild = ['99999', '6900', '12', '2.9', '24', '480', '219', '101.1'];
    for (const [k, value] of wild.entries()) await page.fill(`.meter input >> nth=${k}`, value);
    const marks = await page.locator('.meter .off').allTextContents();
    expect(marks).toHaveLength(5);
    expect(marks[0]).toBe('Above what is expected, 309–648: look again.');
    await page.click('.save-row button');
    await page.waitForSelector('.refusal >> text=Keep it as it is?');
    expect(await inSight(page, '.refusal > p')).toBe(true);
    expect(await page.locator('.refusal li').count()).toBe(5);
    await page.click('.refusal >> text=Change it');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('meter-strokes');
    await page.keyboard.press('Escape');
    expect(await page.textContent('.today .big')).toBe(headline);
  });

  test('the pad erases, dashes of every length are one, and a blank is asked about once', async () => {
    await page.click('.log-bar >> text=Day line');
    await page.click('.keypad >> text="7"');
    await page.click('.keypad >> text="8"');
    await page.click('.keypad [aria-label=Erase]');
    expect(await page.inputValue('.meter input >> nth=0')).toBe('7');
    await page.fill('.meter input >> nth=0', '455');
    await page.fill('.meter input >> nth=1', '–');
    expect(await page.textContent('.meter >> nth=1')).toContain('no reading');
    expect(await page.textContent('.meters')).toContain('cabin temperature');
    await page.click('.save-row button');
    expect(await page.textContent('.day-pad .refusal')).toContain('6\u00A0meters are blank.');
    await page.click('text=Fill in');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('meter-condensate');
    await page.click('.save-row button');
    await page.click('text=Not read: save the line');
    await page.waitForSelector('.strip-row');
    expect(await page.textContent('.strip-row')).toMatch(/day line D61.*strokes 455/);
  });

  test('a day line is corrected meter by meter', async () => {
    await here.open('#/daybook/D59');
    await page.locator('tr', { hasText: 'day line D59' }).locator('text=Correct').click();
    await page.waitForSelector('dialog .meter');
    await page.fill('#meter-strokes', '433');
    await page.click('dialog .choices >> text=misread');
    await page.click('.save-row button');
    await page.waitForSelector('.strip-row');
    await settled(page);
    await expect
      .poll(() => page.locator('tr', { hasText: 'day line D59' }).first().textContent())
      .toMatch(/Now: .*strokes 433/);
  });

  test('undo goes back step by step, and says truly when nothing is left', async () => {
    for (const count of ['4', '6']) {
      await page.click('.log-bar >> text=Drink');
      await page.click(`.presets >> text="${count}"`);
      await page.waitForSelector(`.strip-row >> text=${count}\u00A0strokes`);
    }
    for (const number of [251, 250]) {
      await page.click('.log-bar >> text=Undo');
      await page.waitForSelector(`.strip-row >> text=Undone: entry corrie ${number}`);
    }
    await page.click('.log-bar >> text=Undo');
    await page.waitForSelector('.strip-row >> text=Nothing is left to undo');
  });

  test('a remedy is pressed where it stands, and no line of Today or of a store speaks of a command', async () => {
    const spoken = /waterwright| --[a-z]/;
    let pressed = 0;
    for (const hash of ['#/today', '#/stores/R2', '#/stores/C-09', '#/inbox']) {
      await here.open(hash);
      const more = page.locator('.need button[aria-expanded=false]');
      while ((await more.count()) > 0) await more.first().click();
      expect(await page.textContent('main'), hash).not.toMatch(spoken);
      pressed += await page.locator('.need .pairs .link').count();
    }
    expect(pressed).toBeGreaterThan(3);
    await here.open('#/stores/R2');
    await page.locator('.need', { hasText: 'CONDITIONAL' }).locator('text=More').click();
    await page.click('.need .pairs >> text=Enter a sample');
    expect(await page.inputValue('dialog [data-field=of]')).toBe('R2');
    expect(await axeFaults(page)).toEqual([]);
  });

  test('a store is connected, emptied and declared full from its page', async () => {
    await here.open('#/stores/C-10');
    await page.click('text=Connect it');
    await page.click('dialog .choices >> text=dispenser feed');
    await page.click('.save-row button');
    await page.waitForSelector('.refusal');
    await page.keyboard.press('Escape');
    await page.click('text=Connect it');
    expect(await page.textContent('dialog .choices')).toContain('electrolyser/flush feed (now C-09)');
    await page.click('dialog .choices >> text=electrolyser/flush feed');
    // Day 60 is closed: what is entered now belongs to the day after.
    await page.click('dialog >> text=Time …');
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
    await page.keyboard.type('D61 08:00');
    await page.click('.save-row button');
    await page.waitForSelector('.strip-row >> text=hook-up');
    await expect.poll(() => page.textContent('.title')).toContain('on the electrolyser/flush feed');
    for (const [act, said] of [
      ['It is empty', 'declared empty'],
      ['It is full', 'declared full'],
    ]) {
      await page.click(`.answer >> text=${act}`);
      expect(await layoutFaults(page, { target: 48, main: 56 })).toMatchObject({ faults: [] });
      await page.click('.save-row button');
      await page.waitForSelector(`.strip-row >> text=${said}`);
    }
  });

  test('only what can be weighed is offered, with its content; a fill shows the room', async () => {
    await page.click('.log-bar >> text=Weigh');
    await page.click('dialog >> text=All stores');
    const offered = await page.locator('dialog .picker .b').allTextContents();
    expect(offered.length).toBeGreaterThan(15);
    expect(offered.filter((text) => !/C-\d\d/.test(text))).toEqual([]);
    expect(offered.every((text) => /±.*L/.test(text))).toBe(true);
    expect(await page.textContent('dialog .amount')).toContain('Without the container');
    await page.keyboard.press('Escape');
    await page.click('.log-bar >> text=Fill');
    expect(await page.textContent('dialog .picker .b >> nth=0')).toMatch(/room \d/);
  });

  test('a time says its clock, is read as people type it, and nonsense is refused in its place', async () => {
    await page.click('.log-bar >> text=Drink');
    await page.click('.when >> text=−60');
    await page.click('.when >> text=−15');
    expect(await page.textContent('.when output')).toBe('75\u00A0min earlier, 20:05\u00A0UTC');
    await page.click('dialog >> text=Time …');
    const field = page.locator('dialog .field input').last();
    await field.fill('soonish');
    await field.blur();
    expect(await page.textContent('dialog .off')).toContain('“soonish” is no time');
    await page.keyboard.press('Escape');
    const address = page.url();
    for (const [typed, said] of [
      ['abc', '“abc” is no time'],
      ['D99', 'still to come'],
    ] as const) {
      await page.click('.when');
      await page.fill('dialog input', typed);
      await page.keyboard.press('Enter');
      expect(await page.textContent('dialog .off')).toContain(said);
      expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('INPUT');
      expect(page.url()).toBe(address);
      await page.keyboard.press('Escape');
    }
    await page.click('.when');
    await page.fill('dialog input', 'day 46 14:00');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.notice >> text=Day 46');
  });

  test('a search goes over the whole book, and says so', async () => {
    await here.open('#/daybook/D60');
    expect(await page.textContent('.sieves')).toContain('Find in the lines of Day\u00A060');
    await here.open('#/daybook/all');
    expect(await page.textContent('.sieves')).toContain('Find in all lines of the book');
    const field = page.locator('input[type=search]');
    await field.focus();
    await page.keyboard.type('E0034');
    await expect.poll(() => page.locator('.book-table tbody tr').count()).toBe(1);
    expect(await page.textContent('.book-table')).toContain('corrie 35');
    expect(await field.inputValue()).toBe('E0034');
    await field.fill('nothing of the kind');
    await page.waitForSelector('text=No line of the book holds that.');
  });
});
