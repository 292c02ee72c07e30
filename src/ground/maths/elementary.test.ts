// Edges, symmetries and relations of the elementary functions; their values are held against tables in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cos, sin } from './circle.ts';
import { erf, erfc } from './error-function.ts';
import { exp, expm1 } from './exponential.ts';
import { tanh } from './hyperbolic.ts';
import { acos, asin, atan } from './inverse-circle.ts';
import { log, log1p, log10 } from './logarithm.ts';
import { normalCdf, normalQuantile } from './normal-distribution.ts';
import { cbrt, pow } from './power.ts';

const inf = Number.POSITIVE_INFINITY;
const tiny = Number.MIN_VALUE;

const everyFunction = [
  exp,
  expm1,
  log,
  log1p,
  log10,
  sin,
  cos,
  asin,
  acos,
  atan,
  tanh,
  erf,
  erfc,
  normalCdf,
  cbrt,
];

describe('edges', () => {
  it.each<[string, (x: number) => number, readonly (readonly [number, number])[]]>([
    [
      'exp',
      exp,
      [
        [0, 1],
        [-0, 1],
        [inf, inf],
        [-inf, 0],
        [710, inf],
        [-746, 0],
        [1e308, inf],
        [-1e308, 0],
        [tiny, 1],
      ],
    ],
    [
      'expm1',
      expm1,
      [
        [0, 0],
        [-0, -0],
        [inf, inf],
        [-inf, -1],
        [710, inf],
        [-745, -1],
        [tiny, tiny],
        [-tiny, -tiny],
      ],
    ],
    [
      'log',
      log,
      [
        [0, -inf],
        [-0, -inf],
        [1, 0],
        [inf, inf],
        [-1, Number.NaN],
        [-inf, Number.NaN],
        [-tiny, Number.NaN],
      ],
    ],
    [
      'log1p',
      log1p,
      [
        [0, 0],
        [-0, -0],
        [-1, -inf],
        [inf, inf],
        [-1.1, Number.NaN],
        [-inf, Number.NaN],
        [tiny, tiny],
      ],
    ],
    [
      'log10',
      log10,
      [
        [0, -inf],
        [1, 0],
        [10, 1],
        [1e22, 22],
        [0.001, -3],
        [inf, inf],
        [-1, Number.NaN],
      ],
    ],
    [
      'sin',
      sin,
      [
        [0, 0],
        [-0, -0],
        [inf, Number.NaN],
        [-inf, Number.NaN],
        [tiny, tiny],
        [-tiny, -tiny],
      ],
    ],
    [
      'cos',
      cos,
      [
        [0, 1],
        [-0, 1],
        [inf, Number.NaN],
        [-inf, Number.NaN],
        [tiny, 1],
      ],
    ],
    [
      'atan',
      atan,
      [
        [0, 0],
        [-0, -0],
        [1, Math.PI / 4],
        [-1, -Math.PI / 4],
        [inf, Math.PI / 2],
        [-inf, -Math.PI / 2],
        [tiny, tiny],
      ],
    ],
    [
      'asin',
      asin,
      [
        [0, 0],
        [-0, -0],
        [1, Math.PI / 2],
        [-1, -Math.PI / 2],
        [1.0000000000000002, Number.NaN],
        [-inf, Number.NaN],
        [-tiny, -tiny],
      ],
    ],
    [
      'acos',
      acos,
      [
        [0, Math.PI / 2],
        [1, 0],
        [-1, Math.PI],
        [tiny, Math.PI / 2],
        [-1.0000000000000002, Number.NaN],
        [inf, Number.NaN],
      ],
    ],
    [
      'tanh',
      tanh,
      [
        [0, 0],
        [-0, -0],
        [inf, 1],
        [-inf, -1],
        [30, 1],
        [tiny, tiny],
      ],
    ],
    [
      'erf',
      erf,
      [
        [0, 0],
        [-0, -0],
        [inf, 1],
        [-inf, -1],
        [7, 1],
        [-7, -1],
      ],
    ],
    [
      'erfc',
      erfc,
      [
        [0, 1],
        [-0, 1],
        [inf, 0],
        [-inf, 2],
        [30, 0],
        [-7, 2],
      ],
    ],
    [
      'normalCdf',
      normalCdf,
      [
        [0, 0.5],
        [-0, 0.5],
        [inf, 1],
        [-inf, 0],
        [10, 1],
        [-40, 0],
      ],
    ],
    [
      'normalQuantile',
      normalQuantile,
      [
        [0, -inf],
        [1, inf],
        [0.5, 0],
      ],
    ],
    [
      'cbrt',
      cbrt,
      [
        [0, 0],
        [-0, -0],
        [inf, inf],
        [-inf, -inf],
        [8, 2],
        [-27, -3],
        [1e300, 1e100],
        [1e-300, 1e-100],
      ],
    ],
  ])('%s', (_name, run, pairs) => {
    for (const [x, y] of pairs) expect(run(x), String(x)).toBe(y);
  });

  it('give NaN for NaN', () => {
    for (const run of everyFunction) {
      expect(run(Number.NaN)).toBeNaN();
    }
  });

  it('a probability outside 0 to 1, or none at all, has no quantile', () => {
    for (const p of [-tiny, 1.0000000000000002, Number.NaN, inf])
      expect(() => normalQuantile(p)).toThrow(RangeError);
  });
});

describe('pow at the edges of IEEE 754', () => {
  it.each([
    [Number.NaN, 0, 1],
    [1, Number.NaN, 1],
    [1, inf, 1],
    [-1, inf, 1],
    [-1, -inf, 1],
    [Number.NaN, 1, Number.NaN],
    [2, Number.NaN, Number.NaN],
    [0, 3, 0],
    [-0, 3, -0],
    [-0, 2, 0],
    [0, -2, inf],
    [-0, -3, -inf],
    [-0, -2, inf],
    [-0, 0.5, 0],
    [inf, 2, inf],
    [inf, -2, 0],
    [-inf, 3, -inf],
    [-inf, 2, inf],
    [-inf, -3, -0],
    [2, inf, inf],
    [0.5, inf, 0],
    [2, -inf, 0],
    [0.5, -inf, inf],
    [-2, 3, -8],
    [-2, 2, 4],
    [-2, 0.5, Number.NaN],
    [-8, 1 / 3, Number.NaN],
    [2, 1024, inf],
    [-2, 1025, -inf],
    [2, -1074, tiny],
    [2, -1080, 0],
    [-2, -1081, -0],
    [-1, 9007199254740992, 1],
    [-1, 9007199254740991, -1],
    [1.5, 1e308, inf],
    [0.5, 1e308, 0],
    [1.0000000000000002, 1e308, inf],
  ])('%d to the power %d is %d', (x, y, expected) => {
    expect(pow(x, y)).toBe(expected);
  });
});

describe('relations', () => {
  const anyNumber = fc.double({ noNaN: true, min: -700, max: 700 });
  const positive = fc.double({ noNaN: true, noDefaultInfinity: true, min: tiny });

  function near(a: number, b: number, ulps: number): boolean {
    return Math.abs(a - b) <= ulps * 2.3e-16 * Math.max(Math.abs(a), Math.abs(b)) + tiny;
  }

  it('odd and even', () => {
    fc.assert(
      fc.property(anyNumber, (x) => {
        for (const odd of [sin, tanh, erf, cbrt, atan]) expect(odd(-x)).toBe(-odd(x));
        expect(cos(-x)).toBe(cos(x));
      }),
    );
  });

  it('inverse of each other', () => {
    fc.assert(fc.property(positive, (x) => near(pow(cbrt(x), 3), x, 4)));
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: 1e-3, max: 700 }), (x) => near(log(exp(x)), x, 2 + 1 / x)),
    );
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -0.9, max: 30 }), (x) => near(log1p(expm1(x)), x, 20)),
    );
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: 1e-300, max: 0.5 }), (p) =>
        near(normalCdf(normalQuantile(p)), p, 2000),
      ),
    );
  });

  it('an arc undoes its function, and the arcs of sine and cosine make a right angle together', () => {
    const share = fc.double({ noNaN: true, min: -1, max: 1 });
    fc.assert(fc.property(share, (x) => near(sin(asin(x)), x, 3)));
    fc.assert(fc.property(share, (x) => Math.abs(cos(acos(x)) - x) < 4e-16));
    fc.assert(fc.property(share, (x) => Math.abs(asin(x) + acos(x) - Math.PI / 2) < 5e-16));
    fc.assert(fc.property(anyNumber, (x) => near(sin(atan(x)) * Math.sqrt(1 + x * x), x, 4)));
    fc.assert(fc.property(positive, (x) => near(atan(x) + atan(1 / x), Math.PI / 2, 3)));
  });

  it('sin² + cos² = 1, erf + erfc = 1, the two tails of the normal together 1', () => {
    fc.assert(fc.property(anyNumber, (x) => near(sin(x) * sin(x) + cos(x) * cos(x), 1, 3)));
    fc.assert(fc.property(anyNumber, (x) => near(erf(x) + erfc(x), 1, 2)));
    fc.assert(fc.property(anyNumber, (x) => near(normalCdf(x) + normalCdf(-x), 1, 2)));
  });

  it('whole powers are exact where the result is a whole number that a double holds', () => {
    let looked = 0;
    for (let base = 2; base <= 30; base += 1) {
      let product = base;
      for (let power = 1; product * base <= Number.MAX_SAFE_INTEGER; power += 1) {
        expect(pow(base, power)).toBe(product);
        product *= base;
        looked += 1;
      }
    }
    expect(looked).toBeGreaterThan(300);
  });

  it.each<[string, (x: number) => number, number, number, 1 | -1]>([
    ['exp', exp, -745, 709, 1],
    ['log', log, 1e-6, 4, 1],
    ['erf', erf, -6, 6, 1],
    ['erfc', erfc, -6, 27, -1],
    ['normalCdf', normalCdf, -38, 8, 1],
    ['normalQuantile', normalQuantile, 1e-9, 1 - 1e-9, 1],
    ['tanh', tanh, -20, 20, 1],
    ['atan', atan, -40, 40, 1],
    ['asin', asin, -1, 1, 1],
    ['acos', acos, -1, 1, -1],
    ['cbrt', cbrt, -100, 100, 1],
  ])('%s never turns back, also where one piece of it meets the next', (_name, run, from, to, way) => {
    const steps = 20_000;
    let before = run(from);
    for (let step = 1; step <= steps; step += 1) {
      const next = run(from + ((to - from) * step) / steps);
      if (!((next - before) * way >= 0)) expect(`${step}: ${next}`).toBe(`not past ${before}`);
      before = next;
    }
  });
});
