// The papers as a browser prints them: sheets of A4 and Letter, sizes of letters and of tick squares, one ink, no script.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Desk, type PaperName, paper, readSight } from '../../src/desk/index.ts';
import { documentHtml, type PaperSize } from '../../src/papers/index.ts';
import { LOG_LINES } from '../field-log/corrie-log.ts';
import { deskOfLines, KEEPER, must } from '../quality/before-result.ts';
import { describeInBrowser, openBrowser } from './browser.ts';
import { sheetsOf } from './on-paper.ts';

/** Day, paper, what it is of, and the most sheets that it may take. */
const CASES: readonly (readonly [string, PaperName, string, number])[] = [
  ['D14', 'sample-sheet', 'SMP-03', 2],
  ['D14', 'sample-sheet', 'R2', 2],
  ['D14', 'certificate', 'C-05', 2],
  ['D19', 'certificate', 'C-05', 2],
  ['D46', 'certificate', 'R2', 2],
  ['D14', 'hold-notice', 'Q-01', 3],
  ['D46', 'hold-notice', 'Q-01', 3],
  ['D19', 'hold-release', 'Q-01', 3],
  ['D46', 'hold-release', 'Q-01', 3],
  ['D46', 'trend-sheet', 'TOC', 2],
];

describeInBrowser('papers of quality', () => {
  let browser: Browser;
  let page: Page;
  let desk: Desk;
  beforeAll(async () => {
    desk = await deskOfLines(LOG_LINES);
    browser = await openBrowser();
    page = await browser.newPage({ javaScriptEnabled: true });
    await page.emulateMedia({ media: 'print' });
  });
  afterAll(async () => {
    await browser?.close();
  });

  async function load(day: string, name: PaperName, of: string, size: PaperSize): Promise<string> {
    const typed = { text: `${day}T23:00`, field: 'at' };
    const sight = await must(readSight(desk, KEEPER, { at: typed, asOf: undefined }));
    const document = await must(paper(desk, name, { query: { of }, sight, moment: KEEPER }));
    const html = documentHtml(document, { size, units: 'L' });
    await page.setContent(html);
    return html;
  }

  test.each(CASES)('%s %s of %s', async (day, name, of, most) => {
    for (const size of ['A4', 'Letter'] as const) {
      await load(day, name, of, size);
      const pdf = await page.pdf({ preferCSSPageSize: true });
      const sheets = sheetsOf(pdf);
      expect(sheets).toBeGreaterThan(0);
      expect(sheets).toBeLessThanOrEqual(most);
    }
    const { small, coloured, ticks, texts, wide } = await page.evaluate(looked);
    expect({ small, coloured, wide }).toEqual({ small: [], coloured: [], wide: [] });
    expect(texts).toBeGreaterThan(20);
    for (const mm of ticks) expect(mm).toBeGreaterThanOrEqual(5.99);
  });

  test('the look at a page finds small letters, colour and what is too wide', async () => {
    await page.setContent(
      '<p style="font-size:8pt">a</p><p style="color:#900">b</p><table style="width:900mm"><tr><td>c</td></tr></table>',
    );
    const { small, coloured, wide } = await page.evaluate(looked);
    expect([small.length, coloured.length, wide.length]).toEqual([1, 1, 1]);
  });
});

/** Runs in the page. Letters of a picture are as large as the picture is drawn. */
function looked() {
  const small: string[] = [];
  const coloured: string[] = [];
  let texts = 0;
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (parent === null || node.textContent?.trim() === '' || parent.closest('title, desc') !== null)
      continue;
    texts += 1;
    const svg = parent.closest('svg');
    const style = getComputedStyle(parent);
    const scale = svg === null ? 1 : Math.min(svg.clientWidth / 880, svg.clientHeight / 500);
    const points = Number.parseFloat(style.fontSize) * 0.75 * scale;
    if (points < 8.99) small.push(`${points} pt: ${node.textContent?.slice(0, 40)}`);
    if (svg === null && style.color !== 'rgb(0, 0, 0)') coloured.push(node.textContent ?? '');
  }
  const ticks = [...document.querySelectorAll('.tick')].map(
    (tick) => (Number.parseFloat(getComputedStyle(tick, '::before').width) * 25.4) / 96,
  );
  const wide = [...document.querySelectorAll('table')].flatMap((table) =>
    table.getBoundingClientRect().width > document.body.clientWidth + 1 ? [table.textContent ?? ''] : [],
  );
  return { small, coloured, ticks, texts, wide };
}
