// No text makes a parser throw, and what a parser takes is finite and can be printed and read again.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { formatFigure } from './format-figure.ts';
import { formatIso, parseInstantIso } from './instant.ts';
import { parseNumber } from './parse-number.ts';
import { parseQuantity } from './parse-quantity.ts';
import { parseWhen } from './parse-when.ts';
import { UNITS } from './unit-table.ts';

const rule = { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 };
const asked = { nowUtcMs: Date.UTC(2147, 3, 15, 14), offsetMin: 330, rule };
/** Texts made of the pieces that mean something to a parser, so that many come close to being right. */
const piece = fc.constantFrom(
  ...'0 1 9 12 234 . , - \u2212 + +- ± e e3 kg mL L l ML ° % : T Z D 2147-04-15 60 24 +05:30'.split(' '),
  ' ',
  '\u202F',
);
const text = fc.oneof(
  fc.string(),
  fc.string({ unit: 'binary' }),
  fc.array(piece, { maxLength: 9 }).map((all) => all.join('')),
);

it('any text at all', () => {
  let taken = 0;
  fc.assert(
    fc.property(text, (typed) => {
      const number = parseNumber(typed);
      if (number.ok) expect(Number.isFinite(number.value)).toBe(true);
      const quantity = parseQuantity(typed, { units: UNITS.map((unit) => unit.name), defaultUnit: 'L' });
      if (quantity.ok) {
        taken += 1;
        expect(formatFigure(quantity.quantity, { style: 'screen' })).toContain('\u00A0');
      }
      for (const when of [parseInstantIso(typed), parseWhen(typed, asked)]) {
        if (when.ok) expect(parseInstantIso(formatIso(when.instant))).toEqual(when);
      }
    }),
    { numRuns: 5_000, seed: 46 },
  );
  expect(taken).toBeGreaterThan(100);
});

it('a number printed by the tool, in either style, is read as the same number', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.constantFrom(1, 0.5, 0.01, 0.003), (whole, u95) => {
      const value = whole / 1000;
      const printed = formatFigure({ value, u95, unit: 'kg' }, { style: 'plain' });
      const shown = formatFigure({ value, u95, unit: 'kg' }, { style: 'screen' });
      const mass = { dimension: 'mass', mayBeNegative: true } as const;
      expect(parseQuantity(printed, mass)).toEqual(parseQuantity(shown, mass));
      expect(parseQuantity(printed, mass).ok).toBe(true);
    }),
  );
});
