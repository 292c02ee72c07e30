// What paper has to keep to: how many sheets a PDF has, and what is wrong with a page as it would be printed.
import { inflateSync } from 'node:zlib';
import type { Page } from 'playwright-core';

/** Sheets of a PDF: its page objects, also where they are packed in streams. */
export function sheetsOf(pdf: Buffer): number {
  const text = pdf.toString('latin1');
  const packed = [...text.matchAll(/stream\r?\n/g)].map(({ index }) => {
    const from = (index ?? 0) + (text[(index ?? 0) + 6] === '\r' ? 8 : 7);
    const to = text.indexOf('endstream', from);
    try {
      return inflateSync(pdf.subarray(from, to)).toString('latin1');
    } catch {
      return '';
    }
  });
  return [text, ...packed].join('\n').match(/\/Type\s*\/Page(?![a-z])/gi)?.length ?? 0;
}

/** What is wrong with the page as it would be printed. */
export function paperFaults(page: Page) {
  return page.evaluate(() => {
    const faults: string[] = [];
    const shown = (element: Element) => element.checkVisibility() && element.closest('.hidden') === null;
    let texts = 0;
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent === null || node.textContent?.trim() === '' || !shown(parent)) continue;
      if (parent.closest('svg') !== null && parent.closest('.reach') === null) continue;
      texts += 1;
      const style = getComputedStyle(parent);
      const points = Number.parseFloat(style.fontSize) * 0.75;
      if (points < 8.99) faults.push(`${points} pt: ${node.textContent?.slice(0, 40)}`);
      if (parent.closest('svg') === null && style.color !== 'rgb(0, 0, 0)')
        faults.push(`${style.color}: ${node.textContent?.slice(0, 40)}`);
    }
    for (const button of document.querySelectorAll('.b'))
      if (shown(button) && !button.matches('.when')) faults.push(`a button: ${button.textContent}`);
    const foot = document.querySelector('.foot')?.textContent ?? '';
    if (!/entries/.test(foot)) faults.push('no state of the book');
    if (!/seal [0-9a-f]{16}/.test(foot)) faults.push('no seal');
    return { faults, texts };
  });
}
