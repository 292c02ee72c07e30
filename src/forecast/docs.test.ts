// The examples of docs/methods/cover.md are run as they stand there.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coverQuantiles } from './cover-quantiles.ts';
import { sureUse } from './use-ahead.ts';

const page = readFileSync(join(import.meta.dirname, '../../docs/methods/cover.md'), 'utf8');
const block = page.split('```examples\n')[1]?.split('```')[0] ?? '';
const lines = block.split('\n').filter((line) => line.startsWith('cover'));

test('the page has examples', () => expect(lines.length).toBeGreaterThanOrEqual(6));

test.each(lines)('%s', (line) => {
  const [asked = '', wanted = ''] = line.split('=>');
  const [massMg = 0, uMg = 0, useMgPerDay = 0, useUMgPerDay = 0, dayUMg = 0] = asked
    .trim()
    .split(/\s+/)
    .slice(1)
    .map(Number);
  const cases = [sureUse({ meanMg: useMgPerDay, uMg: useUMgPerDay, dayUMg })];
  const { q05, q50, q95 } = coverQuantiles({ massMg, uMg }, { people: 1, cases });
  expect([q05, q50, q95].map((days) => days?.toFixed(2) ?? 'never').join(' ')).toBe(wanted.trim());
});
