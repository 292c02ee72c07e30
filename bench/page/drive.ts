// A browser at a quarter of its speed before a served book: how long Today takes, how much script it asked for first, how fast an entry is saved.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core';
import type { Serving } from '../../src/doors/server/index.ts';

const ROOT = join(import.meta.dirname, '..', '..');
/** The processor of a small tablet beside that of a desk. */
const SLOW_DOWN = 4;

export interface Measured {
  readonly readyMs: readonly number[];
  readonly savedMs: readonly number[];
  readonly pageMs: readonly number[];
  readonly scriptBytes: number;
  /** An empty page with the same frame, as a yardstick. */
  readonly blankMs: readonly number[];
}

export async function drive(serving: Serving, rounds: number): Promise<Measured> {
  const browser = await chromium.launch({
    executablePath: process.env['WATERWRIGHT_CHROMIUM'] ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'],
  });
  try {
    return await measured(browser, serving, rounds);
  } finally {
    await browser.close();
  }
}

async function measured(browser: Browser, serving: Serving, rounds: number): Promise<Measured> {
  const times = {
    readyMs: [] as number[],
    savedMs: [] as number[],
    pageMs: [] as number[],
    blankMs: [] as number[],
  };
  let scriptBytes = 0;
  for (let round = 0; round < rounds; round += 1) {
    // A fresh context each time: nothing is in the browser's store.
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    const page = await context.newPage();
    await page.goto(serving.launchAddress());
    await page.waitForSelector('[data-ready=today]');
    const cookies = await context.cookies();
    await context.close();
    const cold = await browser.newContext({ viewport: { width: 1280, height: 900 } });
    await cold.addCookies(cookies);
    const slow = await cold.newPage();
    await slowed(slow);
    times.blankMs.push(await timed(slow, `${serving.address}/nothing-here`, 'body'));
    times.readyMs.push(await timed(slow, serving.address, '[data-ready=today]'));
    scriptBytes = await scriptsBefore(slow);
    await dialogsAreThere(slow);
    times.savedMs.push(await saveOnce(slow));
    times.pageMs.push(await pageOnce(slow));
    await cold.close();
  }
  return { ...times, scriptBytes };
}

async function slowed(page: Page): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
  return session;
}

/** From the start of the navigation to the frame in which the thing is there, on the clock of the page. */
async function timed(page: Page, address: string, selector: string): Promise<number> {
  await page.goto(address, { waitUntil: 'commit' });
  return await page.evaluate(
    (wanted) =>
      new Promise<number>((done) => {
        const look = (): void => {
          if (document.querySelector(wanted) === null) requestAnimationFrame(look);
          else requestAnimationFrame(() => done(performance.now()));
        };
        look();
      }),
    selector,
  );
}

/** Scripts that came before Today stood, packed as a server would pack them. */
async function scriptsBefore(page: Page): Promise<number> {
  const names = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .filter(({ name }) => name.endsWith('.js'))
      .map(({ name }) => new URL(name).pathname),
  );
  return [...new Set(names)]
    .map((name) => gzipSync(readFileSync(join(ROOT, 'dist/web', name)), { level: 9 }).length)
    .reduce((sum, bytes) => sum + bytes, 0);
}

async function dialogsAreThere(page: Page): Promise<void> {
  await page.waitForFunction(() =>
    performance.getEntriesByType('resource').some(({ name }) => /\/sheet-[^/]*\.js$/.test(name)),
  );
}

/** From the tap on a count of strokes to the strip that says it is saved. */
async function saveOnce(page: Page): Promise<number> {
  await page.click('.log-bar .b:nth-child(2)');
  await page.waitForSelector('.presets .b');
  return await page.evaluate(
    () =>
      new Promise<number>((done) => {
        const started = performance.now();
        document.querySelector<HTMLElement>('.presets .b')?.click();
        const look = (): void => {
          if (document.querySelector('.strip-row') === null) requestAnimationFrame(look);
          else done(performance.now() - started);
        };
        look();
      }),
  );
}

async function pageOnce(page: Page): Promise<number> {
  return await page.evaluate(
    () =>
      new Promise<number>((done) => {
        const started = performance.now();
        location.hash = '#/stores';
        const look = (): void => {
          if (document.querySelector('[data-ready=stores]') === null) requestAnimationFrame(look);
          else done(performance.now() - started);
        };
        look();
      }),
  );
}
