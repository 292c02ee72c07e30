// What people type stays text, nothing leaves this machine, and the page breaks none of its own rules while it is used.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeInBrowser, openBrowser, practiceBook, settled, type Visit, visit } from './browser.ts';
import { HOSTILE, TAGS } from './hostile-texts.ts';

describeInBrowser('hostile texts, and who is asked', () => {
  let browser: Browser;
  let here: Visit;
  beforeAll(async () => {
    browser = await openBrowser();
    here = await visit(browser, practiceBook(46));
  });
  afterAll(async () => {
    await here.close();
    await browser.close();
  });

  const leftBehind = () =>
    here.page.evaluate(() => ({
      ran: '__x' in window,
      brought: document.querySelectorAll(
        '#page script, #page iframe, #page img, #page object, #page embed, #page form[action], #page style',
      ).length,
    }));

  test('60 hostile notes and sources are kept, and shown letter by letter as text', async () => {
    expect(HOSTILE).toHaveLength(60);
    const statuses = await here.page.evaluate(async (texts) => {
      const told: number[] = [];
      for (const text of texts) {
        const reply = await fetch('/api/log', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({
            request: { what: 'drink', amount: '1' },
            with: { note: text, source: text.slice(0, 60) },
            by: 'keeper',
          }),
        });
        told.push(reply.status);
      }
      return told;
    }, HOSTILE);
    const kept = HOSTILE.filter((_, k) => statuses[k] === 201);
    // Signs that turn the reading direction may be refused by the book; nothing else is.
    expect(kept.length).toBeGreaterThanOrEqual(40);
    await here.open('#/daybook/all');
    const shown = (await here.page.textContent('.book-table')) ?? '';
    for (const text of kept) expect(shown).toContain(text);
    expect(await leftBehind()).toEqual({ ran: false, brought: 0 });
  });

  test('in the address, in fields and in a search they stay text too', async () => {
    for (const text of HOSTILE.slice(0, 20)) {
      await here.page.goto(`${here.origin}/#/stores/${encodeURIComponent(text)}`);
      await here.page.waitForSelector('.refusal');
      await here.page.goto(`${here.origin}/#/${encodeURIComponent(text)}`);
      await here.page.waitForSelector('main h1');
      expect(await here.page.textContent('main h1')).toContain(text);
    }
    await here.open('#/daybook/all');
    await here.page.fill('input[type=search]', TAGS[0] ?? '');
    await settled(here.page);
    expect(await leftBehind()).toEqual({ ran: false, brought: 0 });
  });

  test('a tour of everything asks nobody but this machine, and breaks no rule of the policy', async () => {
    for (const hash of [
      '#/today',
      '#/daybook/D45',
      '#/stores',
      '#/stores/R2',
      '#/inbox',
      '#/parts',
      '#/today?at=D14',
    ])
      await here.open(hash);
    for (const key of ['?', '/']) {
      await here.page.keyboard.press(key);
      await here.page.waitForSelector('dialog[open]');
      await here.page.keyboard.press('Escape');
    }
    const outside = here.asked.filter((address) => !address.startsWith(`${here.origin}/`));
    expect(outside).toEqual([]);
    expect(here.asked.length).toBeGreaterThan(30);
    expect(here.complaints).toEqual([]);
  });

  test('a control: a script inside the markup is refused by the policy', async () => {
    await here.page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'window.__x = 1';
      document.body.append(script);
    });
    expect((await leftBehind()).ran).toBe(false);
    expect(here.complaints.some((said) => said.includes('Content Security Policy'))).toBe(true);
  });

  test('the token has left the address, and no script can read the cookie', async () => {
    expect(here.page.url()).not.toContain('token');
    expect(await here.page.evaluate(() => document.cookie)).toBe('');
  });

  test('without a server the page says so, keeps what it shows, and comes back by itself', async () => {
    await here.open('#/today');
    const cover = await here.page.textContent('.today .big');
    await here.context.setOffline(true);
    await here.page.evaluate(() => fetch('/api/today').catch(() => undefined));
    await here.page.click('.log-bar >> text=Drink');
    await here.page.click('.presets >> text=8');
    await here.page.waitForSelector('.refusal');
    expect(await here.page.textContent('.refusal')).toContain('Nothing was written');
    await here.page.keyboard.press('Escape');
    expect(await here.page.textContent('.today .big')).toBe(cover);
    await here.context.setOffline(false);
    await here.page.click('.log-bar >> text=Drink');
    await here.page.click('.presets >> text=8');
    await here.page.waitForSelector('.strip-row >> text=Saved');
  });
});
