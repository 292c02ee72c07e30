// A finding keeps what it is and gains its words; a code without words is refused.
import { expect, test } from 'vitest';
import { wordFinding } from './word-finding.ts';

const dayRule = { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 };

test('code, severity, place and entries stay, and the days of the outpost are counted', () => {
  const finding = {
    code: 'no-reading',
    severity: 'act-today' as const,
    where: {},
    data: { lastMs: Date.UTC(2147, 3, 13, 21), days: 2 },
    entries: ['a'],
  };
  expect(wordFinding(finding, { dayRule })).toEqual({
    code: 'no-reading',
    severity: 'act-today',
    where: {},
    entries: ['a'],
    text: 'No day line since Day 44 21:00 UTC: the figures are 2\u00A0days old.',
    expected: 'a day line each day',
    received: 'none since Day 44 21:00 UTC',
    remedy: 'Read the meters and enter the line: waterwright log day.',
  });
  expect(wordFinding(finding).text).toContain('since 2147-04-13T21:00:00Z');
});

test.each(['moon', 'constructor', '__proto__', 'toString'])('there are no words for %s', (code) => {
  const finding = { code, severity: 'know' as const, where: {}, data: {}, entries: [] };
  expect(() => wordFinding(finding)).toThrow(`there are no words for the finding ${code}`);
});
