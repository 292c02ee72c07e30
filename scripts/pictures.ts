// Makes the pictures of the page that the documents show: real ones, of the practice book, in a real browser.
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { openBrowser, practiceBook, ROOT, settled, type Visit, visit } from '../tests/page/browser.ts';

const FOLDER = join(ROOT, 'docs', 'pictures');

interface Picture {
  readonly name: string;
  readonly hash: string;
  readonly width: number;
  readonly height: number;
  readonly theme?: string;
  readonly before?: (page: Page) => Promise<void>;
}

const PICTURES: readonly Picture[] = [
  { name: 'today', hash: '#/today', width: 1280, height: 1180 },
  { name: 'today-narrow', hash: '#/today', width: 390, height: 844 },
  { name: 'today-on-hold-dark', hash: '#/today?at=D18', width: 1280, height: 1180, theme: 'dark' },
  { name: 'store', hash: '#/stores/R2', width: 1280, height: 1180 },
  { name: 'daybook', hash: '#/daybook/D9', width: 1280, height: 820 },
  {
    name: 'drink',
    hash: '#/today',
    width: 390,
    height: 844,
    before: async (page) => {
      await page.click('.log-bar .b:nth-child(2)');
      await page.waitForSelector('.presets .b');
    },
  },
  {
    name: 'reckoned',
    hash: '#/today',
    width: 1280,
    height: 820,
    before: async (page) => {
      await page.click('.nq');
      await page.waitForSelector('dialog .plain li');
    },
  },
  {
    name: 'reckon',
    hash: '#/reckon/transfer',
    width: 1280,
    height: 1240,
    before: async (page) => {
      const given = { from: 'C-08', to: 'C-07', hose: 'H-1' };
      for (const [field, id] of Object.entries(given)) await page.selectOption(`[name=${field}]`, id);
      await page.fill('[name=over]', '30');
      await page.waitForSelector('.calculator[data-answer=answer]:not([data-old])');
      await page.evaluate(() => window.scrollTo(0, 0));
    },
  },
  { name: 'parts-dim', hash: '#/parts', width: 1280, height: 1240, theme: 'dim' },
];

async function take(
  here: Visit,
  { name, hash, width, height, theme = 'light', before }: Picture,
): Promise<void> {
  const { page } = here;
  await page.setViewportSize({ width, height });
  await page.evaluate(
    (chosen) => localStorage.setItem('waterwright', JSON.stringify({ theme: chosen })),
    theme,
  );
  await page.goto('about:blank');
  await here.open(hash);
  await before?.(page);
  await settled(page);
  await page.screenshot({ path: join(FOLDER, `${name}.png`) });
  console.log(`docs/pictures/${name}.png`);
}

rmSync(FOLDER, { recursive: true, force: true });
mkdirSync(FOLDER, { recursive: true });
const browser = await openBrowser();
const here = await visit(browser, practiceBook(46));
for (const picture of PICTURES) await take(here, picture);
await here.close();
await browser.close();
