// Pieces of sentences: lists, spans, clock differences, amounts.
import { describe, expect, it, test } from 'vitest';
import {
  counted,
  listed,
  saidClockDifference,
  saidDoubt,
  saidMass,
  saidMassWithin,
  saidSpan,
  saidTime,
  saidValue,
  saidValueAt,
} from './said.ts';

const bare = (text: string): string => text.replaceAll('\u00A0', ' ');

test.each([
  [[], ''],
  [['C-01'], 'C-01'],
  [['C-01', 'C-02'], 'C-01 and C-02'],
  [['C-01', 'C-02', 'C-03'], 'C-01, C-02 and C-03'],
])('%j is listed as %s', (names, text) => {
  expect(listed(names)).toBe(text);
  expect(listed(names, 'or')).toBe(text.replace(' and ', ' or '));
});

test.each([
  [0, '0 min'],
  [45, '45 min'],
  [330, '5 h 30 min'],
  [-330, '5 h 30 min'],
  [60, '1 h'],
  [1440, '1 d'],
  [3061, '2 d 3 h'],
])('%d minutes are %s', (minutes, text) => {
  expect(bare(saidSpan(minutes))).toBe(text);
});

test.each([
  [330, '+5:30'],
  [-180, '\u22123:00'],
  [15, '+0:15'],
])('clocks %d minutes apart differ by %s', (minutes, text) => {
  expect(saidClockDifference(minutes)).toBe(text);
});

test('a count has its noun', () => {
  expect(bare(counted(1, 'entry', 'entries'))).toBe('1 entry');
  expect(bare(counted(0, 'store'))).toBe('0 stores');
});

test('a time is told by the days of the outpost where they are counted', () => {
  const dayRule = { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 };
  expect(saidTime(Date.UTC(2147, 3, 15, 21), dayRule)).toBe('Day 46 21:00 UTC');
  expect(saidTime(Date.UTC(2147, 3, 15, 21), null)).toBe('2147-04-15T21:00:00Z');
});

describe('amounts', () => {
  const mgPerL = 997_800;

  it('are litres where the density is known, and else kilograms: nothing is assumed', () => {
    expect(bare(saidMass(20_454_900, mgPerL))).toBe('20.5 L');
    expect(bare(saidMass(20_454_900, null))).toBe('20.5 kg');
    expect(bare(saidMassWithin({ massMg: -1_197_360, u95Mg: 598_680 }, mgPerL))).toBe('\u22121.2 ± 0.6 L');
    expect(bare(saidMassWithin({ massMg: 1_200_000, u95Mg: 600_000 }, null))).toBe('1.2 ± 0.6 kg');
    expect(bare(saidDoubt(4_989_000, mgPerL))).toBe('± 5 L');
    expect(bare(saidDoubt(5_000_000, null))).toBe('± 5 kg');
  });

  it('hold value and unit together', () => {
    expect(saidValue(0.19, 'mg/L')).toBe('0.19\u00A0mg/L');
    expect(saidValue(455, '')).toBe('455');
    expect(saidValueAt(21.4471838, -2, 'L')).toBe('21.45\u00A0L');
  });
});
