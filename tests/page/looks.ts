// What every view has to keep to at every width: no sideways scroll, quantities in one piece, things to press large enough.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { ROOT } from './browser.ts';

const AXE = readFileSync(join(ROOT, 'node_modules/axe-core/axe.min.js'), 'utf8');
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
  readonly passes: readonly unknown[];
}

/** Violations as axe-core tells them; it must have looked at something. */
export async function axeFaults(page: Page): Promise<readonly string[]> {
  // As tall as the page is: what lies under the bar at one place of a scroll is no fault, and is asked elsewhere.
  const size = page.viewportSize();
  const whole = await page.evaluate(() => document.documentElement.scrollHeight);
  if (size !== null) await page.setViewportSize({ width: size.width, height: Math.max(size.height, whole) });
  await page.evaluate(AXE);
  const result = await page.evaluate(
    (tags) =>
      (window as unknown as { axe: { run: (what: Document, how: object) => Promise<AxeResult> } }).axe.run(
        document,
        {
          runOnly: tags,
          resultTypes: ['violations'],
        },
      ),
    TAGS,
  );
  if (size !== null) await page.setViewportSize(size);
  if (result.passes.length < 10) throw new Error('axe-core looked at next to nothing');
  return result.violations.flatMap(({ id, nodes }) =>
    nodes
      .slice(0, 3)
      .map(({ html, failureSummary }) => `${id}: ${html.slice(0, 200)} ${failureSummary ?? ''}`),
  );
}

/** What the eye would mind, told as one text a fault. */
export async function layoutFaults(page: Page, least: { readonly target: number; readonly main: number }) {
  return await page.evaluate(({ target, main }) => {
    const faults: string[] = [];
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth)
      faults.push(`scrolls sideways by ${root.scrollWidth - root.clientWidth}`);
    const shown = (element: Element) => element.checkVisibility({ visibilityProperty: true });
    const quantities = [...document.querySelectorAll('.qty')].filter(shown);
    for (const quantity of quantities) {
      const range = document.createRange();
      range.selectNodeContents(quantity);
      const tops = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
      if (tops.size > 1) faults.push(`stands on ${tops.size} lines: ${quantity.textContent}`);
    }
    const targets = [...document.querySelectorAll('button, a[href], input, select, summary')].filter(shown);
    for (const thing of targets) {
      if (thing.matches('.skip, input[type=checkbox]')) continue;
      const { width, height } = thing.getBoundingClientRect();
      const least = thing.matches('.b:not(.small), nav a') ? main : target;
      if (width < least - 0.5 || height < least - 0.5)
        faults.push(`${Math.round(width)} by ${Math.round(height)}: ${thing.outerHTML.slice(0, 120)}`);
    }
    if (targets.length < 4) faults.push('there is next to nothing to press');
    // Text that is cut off by its own box.
    for (const element of document.querySelectorAll('.b, .q, .nq, th, td, dd, dt, p, h1, h2, h3')) {
      if (!shown(element) || element.closest('.hidden, .label') !== null) continue;
      if (element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).display !== 'inline')
        faults.push(`runs over: ${element.outerHTML.slice(0, 120)}`);
    }
    return { faults, quantities: quantities.length, targets: targets.length };
  }, least);
}

/** Walks with Tab from the top to the bottom; every stop has a ring that can be seen and is not hidden behind the bar. */
export async function ringFaults(
  page: Page,
  most: number,
): Promise<{ faults: readonly string[]; stops: number }> {
  const faults: string[] = [];
  let stops = 0;
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  for (; stops < most; stops += 1) {
    await page.keyboard.press('Tab');
    const seen = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const style = getComputedStyle(element);
      const box = element.getBoundingClientRect();
      const at = document.elementFromPoint(box.x + box.width / 2, box.y + Math.min(box.height / 2, 20));
      const isCovered =
        at !== null && !element.contains(at) && !at.contains(element) && at.closest('.bottom') !== null;
      return {
        what: element.outerHTML.slice(0, 120),
        ring: Number.parseFloat(style.outlineWidth),
        isDrawn: style.outlineStyle !== 'none',
        isOut: box.bottom < 0 || box.top > innerHeight,
        isCovered,
      };
    });
    if (seen === null) break;
    if (!seen.isDrawn || seen.ring < 3) faults.push(`no ring: ${seen.what}`);
    if (seen.isOut) faults.push(`out of sight: ${seen.what}`);
    if (seen.isCovered) faults.push(`behind the bar: ${seen.what}`);
  }
  return { faults, stops };
}
