// Bars of readings: where the signs stand, and that nothing leaves the bar.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BAR_SIGNS, gaugeBar } from './gauge-bar.ts';
import { signed, unbound } from './signs.ts';

const drawn = (difference: number, readU95: number, believedU95: number) =>
  unbound(gaugeBar({ difference, readU95, believedU95, span: 6 }, 13));

test('the middle is what was believed, and what is read lies beside it', () => {
  expect(drawn(-4, 1, 3)).toBe(' ├●┤░░│░░░   ');
  expect(drawn(3, 2, 1)).toBe('     ░│├─●─┤ ');
  expect(drawn(0, 0, 0)).toBe('      ●      ');
  expect(signed(drawn(3, 2, 1), 'ascii')).toBe('     .|[-o-] ');
});

test('a bar has its columns and one reading, whatever it is told', () => {
  const any = fc.double({ min: -1e3, max: 1e3, noNaN: true });
  const doubt = fc.double({ min: 0, max: 1e3, noNaN: true });
  fc.assert(
    fc.property(
      any,
      doubt,
      doubt,
      fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
      (difference, readU95, believedU95, span) => {
        const bar = gaugeBar({ difference, readU95, believedU95, span }, 25);
        expect([...bar]).toHaveLength(25);
        expect(bar.split(BAR_SIGNS.read)).toHaveLength(2);
      },
    ),
    { seed: 21470417, numRuns: 300 },
  );
});

test('a larger difference never stands further to the left', () => {
  const at = (difference: number) => drawn(difference, 1, 1).indexOf(BAR_SIGNS.read);
  for (let k = -80; k < 80; k++) expect(at(k / 10)).toBeLessThanOrEqual(at((k + 1) / 10));
  expect([at(-9), at(9)]).toEqual([0, 12]);
});
