// Which texts may be codes: held against a list by hand, and against a plainly written second reading over random texts.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { whyUnfit } from './code-rules.ts';

test.each([
  ['4821', null],
  ['739154028613', null],
  ['0012', null],
  ['1235', null],
  ['9012', 'run'],
  ['482', 'length'],
  ['7391540286134', 'length'],
  ['', 'length'],
  ['48a1', 'signs'],
  ['48 21', 'signs'],
  ['-4821', 'signs'],
  ['٤٨٢١', 'signs'],
  ['0000', 'repeat'],
  ['777777', 'repeat'],
  ['1212', 'repeat'],
  ['12121', 'repeat'],
  ['1234', 'run'],
  ['9876', 'run'],
  ['7890', 'run'],
  ['0987', 'run'],
  ['0123456789', 'run'],
] as const)('%s: %s', (code, why) => {
  expect(whyUnfit(code)).toBe(why);
});

const digits = fc
  .array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 14 })
  .map((each) => each.join(''));

test('over random digits: what is fit has a length, three digits, and no single step', () => {
  let fit = 0;
  fc.assert(
    fc.property(digits, (code) => {
      const steps = new Set(
        [...code].slice(1).map((digit, k) => (Number(digit) - Number(code[k]) + 10) % 10),
      );
      const isEven = steps.size === 1 && [0, 1, 9].some((step) => steps.has(step));
      const pair = code.slice(0, 2);
      const isPair = pair.repeat(7).startsWith(code);
      const isFit = code.length >= 4 && code.length <= 12 && !isEven && !isPair;
      if (isFit) fit += 1;
      return (whyUnfit(code) === null) === isFit;
    }),
    { numRuns: 2000, seed: 6 },
  );
  expect(fit).toBeGreaterThan(500);
});

test('a run or a repetition of any length and beginning is refused', () => {
  const made = fc.record({
    first: fc.integer({ min: 0, max: 9 }),
    step: fc.constantFrom(0, 1, 9),
    length: fc.integer({ min: 4, max: 12 }),
  });
  fc.assert(
    fc.property(made, ({ first, step, length }) => {
      const code = Array.from({ length }, (_, k) => (first + k * step) % 10).join('');
      return whyUnfit(code) === (step === 0 ? 'repeat' : 'run');
    }),
    { seed: 6 },
  );
});

test('whatever is no digit is refused, and is told as such', () => {
  const texts = fc.string({ unit: 'grapheme', minLength: 1 }).filter((text) => /[^0-9]/.test(text));
  fc.assert(
    fc.property(texts, (text) => whyUnfit(text) === 'signs'),
    { seed: 6 },
  );
});

test('of the 10,000 codes of four digits all but 120 may be taken', () => {
  const all = Array.from({ length: 10_000 }, (_, k) => `${k}`.padStart(4, '0'));
  expect(all.filter((code) => whyUnfit(code) !== null)).toHaveLength(120);
});
