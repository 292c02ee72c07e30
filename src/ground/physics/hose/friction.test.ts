// Friction: the law of Colebrook to its last digits, the joint, the coil, and ranges; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { coilCriticalReynolds, laminarCoilFactor, turbulentCoilFactor } from './coil.ts';
import { colebrookFriction, haalandFriction, laminarFriction, serghidesFriction } from './friction.ts';
import { FrictionLaw, frictionFactor } from './friction-law.ts';

const turbulent = fc.double({ min: 4000, max: 1e8, noNaN: true });
const rough = fc.double({ min: 0, max: 0.05, noNaN: true });
const ratio = fc.double({ min: 0, max: 0.14, noNaN: true });

describe('turbulent flow', () => {
  it('solves its own law to the last digits', () => {
    fc.assert(
      fc.property(turbulent, rough, (reynolds, relative) => {
        const x = 1 / Math.sqrt(colebrookFriction(reynolds, relative));
        const right = -2 * Math.log10(relative / 3.7 + (2.51 * x) / reynolds);
        expect(Math.abs(x - right)).toBeLessThanOrEqual(2e-15 * x);
      }),
      { numRuns: 1000, seed: 41 },
    );
  });

  it('has explicit forms that keep their promises: 0.004 % and 1.5 %', () => {
    let [serghides, haaland] = [0, 0];
    fc.assert(
      fc.property(fc.double({ min: 8.3, max: 18.4, noNaN: true }), rough, (logarithm, relative) => {
        const reynolds = Math.exp(logarithm);
        const law = colebrookFriction(reynolds, relative);
        serghides = Math.max(serghides, Math.abs(serghidesFriction(reynolds, relative) / law - 1));
        haaland = Math.max(haaland, Math.abs(haalandFriction(reynolds, relative) / law - 1));
      }),
      { numRuns: 2000, seed: 42 },
    );
    expect(serghides).toBeLessThan(4e-5);
    expect(haaland).toBeLessThan(0.0155);
    // A form that is only as good as this is seen.
    expect(haaland).toBeGreaterThan(0.005);
  });

  it('falls with the flow and grows with the roughness', () => {
    fc.assert(
      fc.property(turbulent, rough, (reynolds, relative) => {
        if (reynolds < 9e7)
          expect(colebrookFriction(reynolds * 1.1, relative)).toBeLessThan(
            colebrookFriction(reynolds, relative),
          );
        if (relative < 0.045)
          expect(colebrookFriction(reynolds, relative + 0.005)).toBeGreaterThan(
            colebrookFriction(reynolds, relative),
          );
      }),
      { seed: 43 },
    );
  });
});

describe('the joint between laminar and turbulent flow', () => {
  const at = (law: FrictionLaw, reynolds: number): readonly [number, number] => {
    const into = new Float64Array(2);
    law.at(reynolds, into);
    return [into[0] as number, into[1] as number];
  };

  it('has value and slope of both laws at its ends', () => {
    fc.assert(
      fc.property(rough, ratio, (relativeRoughness, coilRatio) => {
        const law = new FrictionLaw({ relativeRoughness, coilRatio });
        for (const end of [law.laminarTo, law.turbulentFrom]) {
          const [below, slopeBelow] = at(law, end * (1 - 1e-10));
          const [above, slopeAbove] = at(law, end * (1 + 1e-10));
          expect(Math.abs(above / below - 1)).toBeLessThan(1e-9);
          expect(Math.abs(slopeAbove - slopeBelow)).toBeLessThan(1e-6);
        }
      }),
      { seed: 44 },
    );
  });

  it('tells its slope rightly everywhere', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 11.8, noNaN: true }),
        rough,
        ratio,
        (logarithm, relative, coil) => {
          const law = new FrictionLaw({ relativeRoughness: relative, coilRatio: coil });
          const reynolds = Math.exp(logarithm);
          // Schmidt's turbulent form has a step at 22 000.
          if (Math.abs(reynolds - 22_000) < 1) return;
          const [, slope] = at(law, reynolds);
          const h = 1e-5;
          const [low, high] = [at(law, reynolds * (1 - h))[0], at(law, reynolds * (1 + h))[0]];
          const seen = (Math.log(high) - Math.log(low)) / (Math.log(1 + h) - Math.log(1 - h));
          expect(Math.abs(slope - seen)).toBeLessThan(3e-4);
        },
      ),
      { numRuns: 500, seed: 45 },
    );
  });

  it('never lets a greater flow take less pressure, in any hose', () => {
    fc.assert(
      fc.property(rough, ratio, (relativeRoughness, coilRatio) => {
        const law = new FrictionLaw({ relativeRoughness, coilRatio });
        let before = 0;
        for (let reynolds = 1500; reynolds < 45_000; reynolds *= 1.01) {
          const pressure = at(law, reynolds)[0] * reynolds * reynolds;
          expect(pressure).toBeGreaterThan(before);
          before = pressure;
        }
      }),
      { numRuns: 60, seed: 46 },
    );
  });

  it('has a name of its own, from 2000 to 4000', () => {
    const regime = (reynolds: number) => frictionFactor(reynolds, { relativeRoughness: 1e-4 }).regime;
    expect([1, 2000, 2000.001, 3999.999, 4000, 1e7].map(regime)).toEqual([
      'laminar',
      'laminar',
      'transitional',
      'transitional',
      'turbulent',
      'turbulent',
    ]);
  });
});

describe('a coil', () => {
  it('adds friction, more the tighter it is, and nothing when it is as wide as a straight line', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 1.4e5, noNaN: true }), ratio, (reynolds, coilRatio) => {
        expect(laminarCoilFactor(reynolds, coilRatio)).toBeGreaterThanOrEqual(1);
        expect(turbulentCoilFactor(reynolds, coilRatio)).toBeGreaterThanOrEqual(1);
        if (coilRatio < 0.13)
          expect(coilCriticalReynolds(coilRatio + 0.01)).toBeGreaterThan(coilCriticalReynolds(coilRatio));
      }),
      { seed: 47 },
    );
    expect(coilCriticalReynolds(0)).toBe(2300);
    for (const reynolds of [500, 3000, 1e5]) {
      const straight = frictionFactor(reynolds, { relativeRoughness: 1e-3 });
      const wide = frictionFactor(reynolds, { relativeRoughness: 1e-3, coilRatio: 1e-9 });
      expect(wide.factor / straight.factor).toBeCloseTo(1, 2);
    }
  });

  it('as the source says: a fifth more in turbulent flow, twice and more in laminar flow', () => {
    expect(turbulentCoilFactor(2e4, 0.04)).toBeCloseTo(1.196, 3);
    expect(laminarCoilFactor(1000, 0.04)).toBeCloseTo(2.209, 3);
  });
});

it.each<[string, () => unknown]>([
  ['laminar flow at rest', () => laminarFriction(0)],
  ['laminar flow too fast', () => laminarFriction(2001)],
  ['laminar flow without a number', () => laminarFriction(Number.NaN)],
  ['turbulent flow too slow', () => colebrookFriction(3999, 0)],
  ['turbulent flow too fast', () => haalandFriction(1.1e8, 0)],
  ['turbulent flow without a number', () => serghidesFriction(Number.NaN, 0)],
  ['a wall rougher than the chart', () => colebrookFriction(1e5, 0.051)],
  ['a wall below 0', () => colebrookFriction(1e5, -1e-9)],
  ['a wall without a number', () => frictionFactor(1000, { relativeRoughness: Number.NaN })],
  ['a coil too tight', () => frictionFactor(1000, { relativeRoughness: 0, coilRatio: 0.15 })],
  ['a coil without a number', () => laminarCoilFactor(1000, Number.NaN)],
  ['a turbulent coil too tight', () => turbulentCoilFactor(2e4, 0.2)],
])('%s is outside the range of its source', (_name, run) => {
  expect(run).toThrow(OutsideRange);
});

it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('friction at Re %d is refused', (reynolds) => {
  expect(() => frictionFactor(reynolds, { relativeRoughness: 0 })).toThrow(RangeError);
});
