// The page read aloud: short enough to be repeated, in whole sentences, with no sign that is not said.
import { expect, test } from 'vitest';
import { held, normal, silent } from '../../../../tests/papers/sample-sheets.ts';
import type { TodaySheet } from '../../sheets/today.ts';
import { aloud, LONGEST_ALOUD } from './aloud.ts';

const first = (sheet: TodaySheet) => sheet.findings[0] as TodaySheet['findings'][number];

function withFinding(text: string): TodaySheet {
  return { ...normal, findings: [{ ...first(held), severity: 'act-now', text }] };
}

test.each([
  ['normal', normal],
  ['held', held],
  ['silent', silent],
])('of the page %s every sign is said, and the sentences are whole', (_name, sheet) => {
  const text = aloud(sheet);
  expect(text.length).toBeLessThanOrEqual(LONGEST_ALOUD);
  expect(text).toMatch(/^Day 46, \d\d:\d\d UTC\. .*\.$/);
  expect(text).not.toMatch(/[±\u2212\u00A0\u202F\n]| L\b|HOLD|CONDITIONAL/);
});

test('litres are said, and words that begin with the letter are left alone', () => {
  const text = aloud(withFinding('Store L-1 in Loft lost 3\u00A0±\u00A01\u00A0L.'));
  expect(text).toContain('First: Store L-1 in Loft lost 3 plus minus 1 litres.');
});

test('what does not fit is left out whole, and what comes before it stays', () => {
  const without = aloud(withFinding('A.')).replace(' First: A.', '');
  const long = `${'word '.repeat(90)}end.`;
  expect(aloud(withFinding(long))).toBe(without);
});

test('a stock that may be gone has no day to count on, and how sure the days are is said with the first that there are', () => {
  const [[grade = '', cover], ...others] = Object.entries(normal.cover) as [
    [string, TodaySheet['cover'][string]],
    ...[string, TodaySheet['cover'][string]][],
  ];
  const gone = { ...normal, cover: { [grade]: { ...cover, q05: 0.04 }, ...Object.fromEntries(others) } };
  const text = aloud(gone);
  expect(text).toContain('free, no day to count on.');
  expect(text.match(/in 19 of 20 outcomes/g)).toHaveLength(others.length === 0 ? 0 : 1);
  expect(aloud(normal).match(/in 19 of 20 outcomes/g)).toHaveLength(1);
});
