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

  /** What the page makes of the same source, after something was done to its engine. */
  async function figuresThere(before = ''): Promise<readonly string[]> {
    const page = await browser.newPage();
    await page.evaluate(`${before}; ${await asScript()}; window.figures = figures; undefined`);
    const there = await page.evaluate<readonly string[]>('window.figures.figuresAsBits()');
    await page.close();
    return there;
  }

  test('are the same in both engines', async () => {
    const here = figuresAsBits();
    expect(here.length).toBeGreaterThan(5000);
    expect(new Set(here).size).toBeGreaterThan(5000);
    expect(await figuresThere()).toEqual(here);
  });

  test('an engine whose square root is off in the last bit is found out', async () => {
    const off = 'const root = Math.sqrt; Math.sqrt = (x) => root(x) * (1 + Number.EPSILON)';
    expect(await figuresThere(off)).not.toEqual(figuresAsBits());
  });
});
