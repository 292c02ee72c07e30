// The page Quality: tours at four widths, what a bad sample holds before it is saved, ways out of a hold, paper, and agreement.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
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
import { axeFaults, layoutFaults } from './looks.ts';
import { paperFaults, sheetsOf } from './on-paper.ts';

const WIDTHS = [320, 390, 768, 1280];
const NORMAL = { target: 48, main: 56 };
const MEDIC = { office: 'medic' };

const bytesOf = (file: string): string => createHash('sha256').update(readFileSync(file)).digest('hex');

/** A failing result of the sample that waits, typed and looked at. */
async function typeBadResult(page: Page): Promise<void> {
  await page.keyboard.press('n');
  await page.keyboard.press('s');
  await page.waitForSelector('dialog[open] .value');
  await page.click('dialog >> text=SMP-03');
  await page.fill('[data-field="silver"]', '0.03');
  await page.fill('[data-field="plate count"]', '140');
  await page.waitForSelector('.will-hold .tree');
  await settled(page);
}

describeInBrowser('quality', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  describe.each(['light', 'dark'])('a tour in %s', (theme) => {
    let here: Visit;
    beforeAll(async () => {
      here = await visit(browser, practiceBook(14), { device: { theme } });
    });
    afterAll(() => here.close());

    test.each(['#/quality', '#/quality/Q-01', '#/quality/SMP-03', '#/stores/C-05'])('%s', async (hash) => {
      await here.open(hash);
      for (const width of WIDTHS) {
        await here.page.setViewportSize({ width, height: 900 });
        const { faults } = await layoutFaults(here.page, NORMAL);
        expect(faults, `${hash} at ${width}`).toEqual([]);
        if (width === 390 || width === 1280)
          expect(await axeFaults(here.page), `${hash} at ${width}`).toEqual([]);
      }
      expect(here.complaints).toEqual([]);
    });
  });

  test('every sheet at two widths: axe-core, targets, nothing cut off', async () => {
    const here = await visit(browser, practiceBook(14));
    const { page } = here;
    await here.open('#/quality/Q-01');
    const ways = ['Downgrade', 'Waive', 'Park', 'Release', 'Treat', 'Set a result aside'];
    const openers: readonly (readonly [string, () => Promise<void>])[] = [
      ...ways.map((way) => [way, () => page.click(`.ways >> text="${way}"`)] as const),
      [
        'result',
        async () => {
          await here.open('#/quality');
          await page.click('text=New result');
        },
      ],
      ['sample', () => page.click('text=New sample')],
      ['hold', () => page.click('.title >> text=Put on hold')],
      ['limits', () => page.click('text=Choose limits')],
    ];
    for (const [name, open] of openers) {
      await open();
      await page.waitForSelector('dialog[open] .save-row');
      await settled(page);
      for (const width of [320, 390, 1280]) {
        await page.setViewportSize({ width, height: 900 });
        expect(await axeFaults(page), `${name} at ${width}`).toEqual([]);
        expect((await layoutFaults(page, NORMAL)).faults, `${name} at ${width}`).toEqual([]);
      }
      await page.keyboard.press('Escape');
      await page.waitForSelector('dialog', { state: 'detached' });
    }
    expect(here.complaints).toEqual([]);
    await here.close();
  });

  test('a bad sample: its tree, litres, free water and cover stand before Save, and Back leaves every byte', async () => {
    const here = await visit(browser, practiceBook(13));
    const { page } = here;
    const before = bytesOf(here.book);
    await typeBadResult(page);
    const told = (await page.textContent('.will-hold')) ?? '';
    for (const store of ['C-05', 'C-06', 'C-11', 'C-12', 'C-13', 'C-14', 'C-15', 'C-16', 'R2'])
      expect(told).toContain(store);
    expect(told).toContain('164\u00A0±\u00A03\u00A0L');
    expect(told).toContain('Nobody drank of it');
    expect(await page.textContent('.value:has([data-field="silver"]) .value-verdict')).toBe('BELOW');
    expect(await page.textContent('.value:has([data-field="plate count"]) .value-verdict')).toBe('ABOVE');
    // The command line tells the same figures.
    const said = waterwright([
      'sample',
      'result',
      'SMP-03',
      '--silver',
      '0.03mg/L',
      '--plate-count',
      '140',
      '--dry-run',
      '--json',
      '--book',
      copied(here.book),
    ]);
    const { tree } = JSON.parse(said).data;
    expect(await page.locator('.will-hold .tree .mark:text-is("HOLD")').count()).toBe(tree.hold.length);
    const free = (await page.textContent('.in-short')) ?? '';
    for (const cover of [tree.effect[0].before, tree.effect[0].after]) {
      expect(free).toContain(
        `${Math.floor(cover.q05 * (cover.q05 < 20 ? 10 : 1)) / (cover.q05 < 20 ? 10 : 1)}\u00A0days`,
      );
    }
    for (const width of [390, 1280]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await axeFaults(page)).toEqual([]);
      expect((await layoutFaults(page, NORMAL)).faults).toEqual([]);
    }
    await page.click('text=Back, save nothing');
    await page.waitForSelector('dialog', { state: 'detached' });
    expect(bytesOf(here.book)).toBe(before);
    expect(here.complaints).toEqual([]);
    await here.close();
  });

  test('three taps and the digits: the result is kept with its hold, and the stores are held', async () => {
    const here = await visit(browser, practiceBook(13), { device: { office: 'medic' } });
    const { page } = here;
    await here.open('#/quality');
    await page.click('text=New result');
    await page.click('dialog >> text=SMP-03');
    // The first value has the focus: digits can be typed at once.
    await page.waitForFunction(() => document.activeElement?.getAttribute('data-field') === 'silver');
    await page.keyboard.type('0.03');
    await page.click('text=/Save and hold 8\\sstores/');
    await page.waitForSelector('dialog', { state: 'detached' });
    await page.waitForSelector('.hold-item');
    expect(await page.textContent('.hold-item')).toContain('C-16');
    await here.close();
  });

  test('below the detection limit is taken as such, and a figure that cannot be read is told at its field', async () => {
    const here = await visit(browser, practiceBook(13));
    const { page } = here;
    await here.open('#/quality');
    await page.click('text=New result');
    await page.click('dialog >> text=SMP-03');
    await page.fill('[data-field="TOC"]', '<0.05');
    await page.waitForFunction(
      () => document.querySelector('.value:has([data-field="TOC"]) .value-verdict')?.textContent === 'within',
    );
    await page.fill('[data-field="TOC"]', '0.5 furlong');
    await page.waitForSelector('.value:has([data-field="TOC"]) .off');
    await here.close();
  });

  test('a hold of fewer stores takes a reason and a second person', async () => {
    const here = await visit(browser, practiceBook(13));
    const { page } = here;
    await typeBadResult(page);
    await page.click('text=Save, hold only …');
    await page.click('.fewer >> text=C-05');
    expect(await page.locator('.fewer >> text=/Save with/').count()).toBe(0);
    await page.click('.fewer >> text=another hose was used');
    await page.click('.fewer .flow >> text=/chief/');
    await page.waitForSelector('dialog', { state: 'detached' });
    await here.open('#/quality');
    await page.waitForSelector('.hold-item');
    const line = (await page.textContent('.hold-item')) ?? '';
    expect(line).toContain('C-06');
    expect(line).not.toContain('C-05');
    await here.close();
  });

  test('a release that nothing proves is refused in words; the same as a fact is kept', async () => {
    const here = await visit(browser, practiceBook(14), { device: MEDIC });
    const { page } = here;
    await here.open('#/quality/Q-01');
    await page.click('.ways >> text="Release"');
    await page.click('dialog .choices >> text=C-05');
    await page.click('.save-row button');
    await page.waitForSelector('.refusal');
    expect(await page.textContent('.refusal')).toContain('no results prove C-05');
    await page.click('text=It has already happened');
    await page.click('.refusal .choices .b:first-child');
    await page.click('.refusal .stack > .b');
    await page.waitForSelector('dialog', { state: 'detached' });
    await here.close();
  });

  test('a waiver asks for a second person and stands as WAIVED', async () => {
    const here = await visit(browser, practiceBook(14), { device: MEDIC });
    const { page } = here;
    await here.open('#/quality/Q-01');
    await page.click('.ways >> text="Waive"');
    await page.click('dialog .choices >> text=C-05');
    await page.fill('dialog .field:has-text("Until") input', 'D20');
    await page.click('dialog >> text=the reserve is needed');
    await page.click('.save-row button');
    await page.waitForSelector('.refusal');
    await page.click('.refusal .flow >> text=/chief/');
    await page.waitForSelector('dialog', { state: 'detached' });
    await here.open('#/stores/C-05');
    expect(await page.textContent('.answer .mark')).toBe('WAIVED');
    await here.close();
  });

  test('who drank opens with the code of the medic alone, and is gone when it is closed', async () => {
    const book = practiceBook(46);
    waterwright(['sample', 'add', 'PB', '--name', 'S-1', '--book', book]);
    const result = ['sample', 'result', 'S-1', '--plate-count', '400', '--hold', 'all'];
    waterwright([...result, '--yes', '--book', book]);
    const here = await visit(browser, book, { device: MEDIC });
    const { page } = here;
    await here.open('#/quality/Q-02');
    await page.click('text=Who drank of it, for the medic');
    await page.fill('dialog input', '11111');
    await page.click('dialog >> text="Open"');
    await page.waitForSelector('.refusal');
    expect(await page.locator('.drank .plain').count()).toBe(0);
    await page.fill('dialog .field:has-text("A new code") input', '73915');
    await page.click('dialog >> text=Set the code');
    await page.waitForSelector('.refusal', { state: 'detached' });
    await page.fill('dialog input', '73915');
    await page.click('dialog >> text="Open"');
    await page.waitForSelector('.drank .plain li');
    const line = (await page.textContent('.drank .plain li')) ?? '';
    expect(line).toContain('from PB');
    expect(await axeFaults(page)).toEqual([]);
    // Not on paper, in no table, and in no field.
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.drank').isVisible()).toBe(false);
    await page.emulateMedia({ media: null });
    expect(await page.locator('dialog table').count()).toBe(0);
    await page.keyboard.press('Escape');
    await page.waitForSelector('dialog', { state: 'detached' });
    expect(await page.content()).not.toContain(line);
    expect(await page.evaluate(() => JSON.stringify(localStorage))).not.toContain('73915');
    await page.click('text=Who drank of it, for the medic');
    await page.waitForSelector('.drank');
    expect(await page.locator('.drank .plain').count()).toBe(0);
    await here.close();
  });

  test('choosing limits: what it would hold is shown first, and takes a reason', async () => {
    const here = await visit(browser, practiceBook(14));
    const { page } = here;
    const before = bytesOf(here.book);
    await here.open('#/quality');
    await page.click('text=Choose limits');
    await page.click('dialog >> text=outpost policy');
    await page.waitForSelector('.will-hold h3');
    expect(await page.locator('.save-row button').isDisabled()).toBe(true);
    await page.keyboard.press('Escape');
    expect(bytesOf(here.book)).toBe(before);
    await here.close();
  });

  test('on A4: black, nothing to press, no more sheets than needed', async () => {
    const here = await visit(browser, practiceBook(14));
    for (const [hash, most] of [
      ['#/quality', 4],
      ['#/quality/Q-01', 3],
      ['#/quality/SMP-03', 2],
    ] as const) {
      await here.open(hash);
      await here.page.waitForSelector('.seal', { state: 'attached' });
      await here.page.emulateMedia({ media: 'print' });
      expect((await paperFaults(here.page)).faults, hash).toEqual([]);
      await here.page.emulateMedia({ media: null });
      const pdf = await here.page.pdf({ preferCSSPageSize: true, printBackground: true });
      expect(sheetsOf(pdf), hash).toBeLessThanOrEqual(most);
    }
    await here.close();
  });
});
