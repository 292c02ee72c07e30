// Node and Chromium give the same bits for every figure of mathematics and physics.
import { join } from 'node:path';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, openBrowser } from '../browser.ts';
import { figuresAsBits } from './figures.ts';

const ENTRY = join(import.meta.dirname, 'figures.ts');

/** The same source as one script, for a page that has nothing else. */
async function asScript(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [ENTRY],
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'figures',
    target: 'esnext',
  });
  const [script] = outputFiles;
  if (script === undefined) throw new Error('nothing was bundled');
  return script.text;
}

describeInBrowser('the bits of figures', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());

  test('are the same in both engines', async () => {
    const page = await browser.newPage();
    await page.evaluate(await asScript().then((script) => `${script}; window.figures = figures; undefined`));
    const there = await page.evaluate<readonly string[]>('window.figures.figuresAsBits()');
    const here = figuresAsBits();
    expect(here.length).toBeGreaterThan(5000);
    expect(new Set(here).size).toBeGreaterThan(5000);
    expect(there).toEqual(here);
    await page.close();
  });

  test('a last bit that differs would be seen', () => {
    const here = figuresAsBits();
    const [first = ''] = here;
    const other = first.replace(/.$/, (digit) => (digit === '0' ? '1' : '0'));
    expect([other, ...here.slice(1)]).not.toEqual(here);
  });
});
