// A real browser before a real server over a copy of a practice book: what every test of the page begins with.
import { spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { describe, test } from 'vitest';
import { nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { type Serving, serve } from '../../src/doors/server/index.ts';

export const ROOT = join(import.meta.dirname, '..', '..');
const PROGRAM = join(ROOT, 'dist', 'waterwright.js');
const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
/** Set where a machine has no browser and somebody knows it. */
const WITHOUT = 'WATERWRIGHT_NO_BROWSER';
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function browserPath(): string | null {
  const named = process.env['WATERWRIGHT_CHROMIUM'];
  return [...(named === undefined ? [] : [named]), ...PLACES].find((path) => existsSync(path)) ?? null;
}

/** Defines tests that need a browser. Without one they fail, unless somebody said that there is none: then it is said aloud. */
export function describeInBrowser(name: string, define: () => void): void {
  if (browserPath() === null && process.env[WITHOUT] !== undefined) {
    test('the page was not looked at: there is no Chromium here', () => {
      console.warn(`No test of the page was run: there is no Chromium, and ${WITHOUT} is set.`);
    });
    return;
  }
  describe(name, define);
}

export async function openBrowser(flags: readonly string[] = []): Promise<Browser> {
  const executablePath = browserPath();
  if (executablePath === null) {
    throw new Error(
      `There is no Chromium at ${PLACES.join(', ')}. Install it, or set ${WITHOUT}=1 to go without.`,
    );
  }
  return await chromium.launch({ executablePath, args: [...FLAGS, ...flags] });
}

/** Runs the program; what it printed to standard output. */
export function waterwright(words: readonly string[], env: NodeJS.ProcessEnv = {}): string {
  const { status, stdout, stderr } = spawnSync(process.execPath, [PROGRAM, ...words], {
    encoding: 'utf8',
    // Where no locale is set the command line prints ASCII signs, and the page does not.
    env: { ...process.env, LC_ALL: 'C.UTF-8', NO_COLOR: '1', COLUMNS: '100', ...env },
  });
  if (status !== 0) throw new Error(`waterwright ${words.join(' ')} ended with ${status}: ${stderr}`);
  return stdout;
}

/** The practice book up to a day, made once a machine and copied for each who asks. */
export function practiceBook(untilDay: number): string {
  const folder = join(ROOT, '.cache', 'page-books');
  mkdirSync(folder, { recursive: true });
  const made = join(folder, `d${untilDay}-${process.pid}.water`);
  if (!existsSync(made)) waterwright(['init', '--practice', '--until', `D${untilDay}`, '--book', made]);
  return copied(made);
}

/** A book that has its outpost file and nothing else. */
export function emptyBook(): string {
  const made = join(mkdtempSync(join(tmpdir(), 'waterwright-page-')), 'empty.water');
  waterwright(['init', '--outpost', join(ROOT, 'examples/corrie/outpost.yaml'), '--book', made]);
  return made;
}

export function copied(book: string): string {
  const copy = join(mkdtempSync(join(tmpdir(), 'waterwright-page-')), 'book.water');
  copyFileSync(book, copy);
  return copy;
}

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly origin: string;
  readonly serving: Serving;
  /** The file of the book. */
  readonly book: string;
  /** Every address that the browser asked for. */
  readonly asked: readonly string[];
  /** What the browser complained of: errors, broken rules of the page's policy. */
  readonly complaints: readonly string[];
  open(hash: string): Promise<void>;
  close(): Promise<void>;
}

interface How {
  readonly width?: number;
  readonly height?: number;
  readonly touch?: boolean;
  /** What the device remembers before the page is opened. */
  readonly device?: Readonly<Record<string, unknown>>;
  readonly language?: string;
}

export async function serveBook(book: string): Promise<Serving> {
  return await serve({
    book: await openBook(book, { owner: 'test of the page', readOnly: false }),
    tools: { hash: nodeHash, chance: () => new Uint8Array(randomBytes(10)) },
    clock: { now: () => Date.now(), offsetMin: () => 0 },
    version: 'test',
    build: 'test',
    pageFolder: join(ROOT, 'dist', 'web'),
    port: 0,
  });
}

/** A page of its own over a book of its own, let in by its launch token. */
export async function visit(browser: Browser, book: string, how: How = {}): Promise<Visit> {
  const serving = await serveBook(book);
  const context = await browser.newContext({
    viewport: { width: how.width ?? 1280, height: how.height ?? 900 },
    hasTouch: how.touch ?? false,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  // Sooner than the test's own patience, so that what was waited for is named.
  page.setDefaultTimeout(15_000);
  const asked: string[] = [];
  const complaints: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (said) => {
    if (said.type() === 'error' && !/status of 4\d\d/.test(said.text())) complaints.push(said.text());
  });
  await page.addInitScript(rememberBefore, { device: how.device ?? null, language: how.language ?? null });
  await page.goto(serving.launchAddress());
  await page.waitForSelector('[data-ready], .refusal');
  return {
    page,
    context,
    origin: serving.address,
    serving,
    book,
    asked,
    complaints,
    async open(hash) {
      await page.goto(`${serving.address}/${hash}`);
      await page.waitForSelector('[data-ready], .refusal');
      await settled(page);
    },
    async close() {
      await context.close();
      await serving.close();
      rmSync(join(book, '..'), { recursive: true, force: true });
    },
  };
}

/** Runs in the browser before the page does; what a test has put there later stays. */
function rememberBefore(told: {
  device: Readonly<Record<string, unknown>> | null;
  language: string | null;
}): void {
  if (told.device !== null && localStorage.getItem('waterwright') === null)
    localStorage.setItem('waterwright', JSON.stringify(told.device));
  if (told.language !== null) localStorage.setItem('waterwright-language', told.language);
}

/** No request under way and the letters there. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.waitForFunction(() => document.querySelector('.working') === null);
}
