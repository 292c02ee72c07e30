// The tail of the hypergeometric distribution: counted out in whole numbers, symmetric, falling, and refused where it has no meaning.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atLeastDrawn } from './counting-tail.ts';

function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let ways = 1n;
  for (let step = 1; step <= k; step += 1) ways = (ways * BigInt(n - step + 1)) / BigInt(step);
  return ways;
}

/** By whole numbers alone; the last division is one of two doubles. */
function counted(
  { total, marked, drawn }: { total: number; marked: number; drawn: number },
  atLeast: number,
): number {
  let ways = 0n;
  for (let x = atLeast; x <= Math.min(drawn, marked); x += 1)
    ways += choose(marked, x) * choose(total - marked, drawn - x);
  const scale = 10n ** 25n;
  return Number((ways * scale) / choose(total, drawn)) / 1e25;
}

const draws = fc
  .tuple(fc.integer({ min: 1, max: 60 }), fc.nat(60), fc.nat(60), fc.nat(60))
  .map(([total, a, b, c]) => ({
    total,
    marked: a % (total + 1),
    drawn: b % (total + 1),
    atLeast: c % (total + 1),
  }));

describe('at least so many marked ones drawn', () => {
  it('is what counting gives', () => {
    let counts = 0;
    fc.assert(
      fc.property(draws, ({ atLeast, ...draw }) => {
        const wanted = counted(draw, atLeast);
        counts += 1;
        expect(Math.abs(atLeastDrawn(draw, atLeast) - wanted)).toBeLessThanOrEqual(1e-12 * wanted + 1e-24);
      }),
      { numRuns: 500, seed: 7 },
    );
    expect(counts).toBe(500);
  });

  it('does not ask which of the two is drawn and which is marked', () => {
    fc.assert(
      fc.property(draws, ({ atLeast, total, marked, drawn }) => {
        const turned = atLeastDrawn({ total, marked: drawn, drawn: marked }, atLeast);
        expect(Math.abs(atLeastDrawn({ total, marked, drawn }, atLeast) - turned)).toBeLessThan(1e-12);
      }),
      { numRuns: 200, seed: 8 },
    );
  });

  it('falls with what is asked for, from 1 to 0', () => {
    const draw = { total: 30, marked: 12, drawn: 13 };
    const tails = Array.from({ length: 15 }, (_, k) => atLeastDrawn(draw, k));
    expect([tails[0], tails[13], tails[14]]).toEqual([1, 0, 0]);
    for (const [k, tail] of tails.entries()) expect(tail).toBeLessThanOrEqual(tails[k - 1] ?? 1);
  });

  it('holds for many things, where the terms themselves would leave the numbers', () => {
    const half = atLeastDrawn({ total: 100_001, marked: 50_000, drawn: 50_001 }, 25_001);
    expect(half).toBeGreaterThan(0.45);
    expect(half).toBeLessThan(0.55);
  });

  it.each([
    [{ total: 4, marked: 5, drawn: 1 }, 1],
    [{ total: 4, marked: 1, drawn: 5 }, 1],
    [{ total: 4, marked: 1.5, drawn: 1 }, 1],
    [{ total: 4, marked: 1, drawn: 1 }, -1],
    [{ total: Number.NaN, marked: 1, drawn: 1 }, 1],
  ])('refuses %j', (draw, atLeast) => {
    expect(() => atLeastDrawn(draw, atLeast)).toThrow(RangeError);
  });
});
