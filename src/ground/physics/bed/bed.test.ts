// Beds: balances, identities of the three names, inverses, limits and what is refused; published values are in tests/published.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import {
  bedVolumes,
  emptyBedContactS,
  exchangerThroughputM3,
  firstToEnd,
  sorbentThroughputM3,
  stoichiometricTimeS,
} from './capacity.ts';
import { patternBreakthrough, patternThroughput, type Resistance } from './constant-pattern.ts';
import { freundlichKgPerKg, langmuirKgPerKg, separationFactor } from './isotherm.ts';
import {
  bohartAdams,
  bohartAdamsTimeS,
  logisticBreakthrough,
  logisticOfBohartAdams,
  logisticOfThomas,
  logisticTimeS,
  thomasOfLogistic,
} from './logistic.ts';
import { breakTimeOfLengthS, takenUpKgPerKg, unusedBed, unusedLengthM } from './unused-bed.ts';

const share = fc.double({ min: 1e-4, max: 1 - 1e-4, noNaN: true });
const positive = (max: number) => fc.double({ min: max / 1000, max, noNaN: true });

describe('capacity', () => {
  const bed = { capacityKgPerKg: 0.05, sorbentKg: 2, feedKgPerM3: 0.03 };

  it('throughput over flow is the stoichiometric time, without the water that stands in the bed', () => {
    fc.assert(
      fc.property(positive(1e-4), (flowM3PerS) => {
        const throughput = sorbentThroughputM3({ ...bed, usedShare: 1 });
        const time = stoichiometricTimeS({ ...bed, flowM3PerS, bedM3: 0.004, voidShare: 0 });
        expect((time * flowM3PerS) / throughput).toBeCloseTo(1, 12);
        const filled = stoichiometricTimeS({ ...bed, flowM3PerS, bedM3: 0.004, voidShare: 0.4 });
        expect((filled - time) / emptyBedContactS({ bedM3: 0.004, flowM3PerS })).toBeCloseTo(0.4, 6);
      }),
    );
  });

  it('an exchanger counts charges, and the weakest total ends the bed', () => {
    const one = { capacityEqPerM3: 1900, bedM3: 0.002 };
    const calcium = exchangerThroughputM3({ ...one, ions: [{ molPerM3: 0.5, charge: 2 }] });
    const sodium = exchangerThroughputM3({ ...one, ions: [{ molPerM3: 1, charge: 1 }] });
    expect(calcium).toBe(sodium);
    expect(bedVolumes({ throughputM3: calcium, bedM3: 0.002 })).toBeCloseTo(1900, 9);
    const totals = [
      { name: 'cations', throughputM3: 3.8 },
      { name: 'organics', throughputM3: 0.9 },
      { name: 'anions', throughputM3: 2.1 },
    ];
    expect(firstToEnd(totals).name).toBe('organics');
    expect(() => firstToEnd([])).toThrow(RangeError);
    expect(() => firstToEnd([{ name: 'anions', throughputM3: Number.NaN }])).toThrow(OutsideRange);
  });

  it('refuses what is not above zero', () => {
    for (const change of [{ capacityKgPerKg: 0 }, { sorbentKg: -1 }, { feedKgPerM3: 0 }, { usedShare: 1.1 }])
      expect(() => sorbentThroughputM3({ ...bed, usedShare: 1, ...change })).toThrow(OutsideRange);
    expect(() => exchangerThroughputM3({ capacityEqPerM3: 1, bedM3: 1, ions: [] })).toThrow(OutsideRange);
    expect(() => emptyBedContactS({ bedM3: 1, flowM3PerS: 0 })).toThrow(OutsideRange);
    expect(() => bedVolumes({ throughputM3: Number.NaN, bedM3: 1 })).toThrow(OutsideRange);
    const run = { ...bed, flowM3PerS: 1e-6, bedM3: 0.004 };
    expect(() => stoichiometricTimeS({ ...run, voidShare: 1.2 })).toThrow(OutsideRange);
  });
});

describe('isotherms', () => {
  it('Langmuir starts as a straight line, is half full at 1/b and never more than full', () => {
    const at = (concentrationKgPerM3: number) =>
      langmuirKgPerKg({ mostKgPerKg: 0.2, affinityM3PerKg: 50, concentrationKgPerM3 });
    expect(at(0)).toBe(0);
    expect(at(1e-9) / 1e-9).toBeCloseTo(10, 5);
    expect(at(0.02)).toBeCloseTo(0.1, 14);
    expect(at(1e9)).toBeLessThanOrEqual(0.2);
    expect(at(0.08) / 0.2).toBeCloseTo(1 - separationFactor({ affinityM3PerKg: 50, feedKgPerM3: 0.08 }), 14);
    for (const value of [-1, Number.NaN]) expect(() => at(value)).toThrow(OutsideRange);
  });

  it('Freundlich: a power of ten in the water is a power of ten to 1/n on the sorbent', () => {
    const at = (concentrationKgPerM3: number) =>
      freundlichKgPerKg({ atOneKgPerKg: 0.4, exponent: 0.4, concentrationKgPerM3 });
    expect(at(1)).toBe(0.4);
    expect(at(0)).toBe(0);
    expect(at(0.1) / at(0.01)).toBeCloseTo(10 ** 0.4, 12);
    expect(() => freundlichKgPerKg({ atOneKgPerKg: 0, exponent: 1, concentrationKgPerM3: 1 })).toThrow(
      OutsideRange,
    );
  });
});

const logistic = fc.record({
  ratePerS: positive(0.05),
  halfTimeS: fc.double({ min: 500, max: 1e5, noNaN: true }),
});

describe('the logistic curve', () => {
  it('is half at τ, symmetric about it, and rises', () => {
    fc.assert(
      fc.property(logistic, fc.double({ min: 0, max: 1, noNaN: true }), (bed, part) => {
        const step = part * bed.halfTimeS;
        const before = logisticBreakthrough(bed, bed.halfTimeS - step);
        const after = logisticBreakthrough(bed, bed.halfTimeS + step);
        expect(before + after).toBeCloseTo(1, 12);
        expect(before).toBeLessThanOrEqual(after);
        expect(logisticBreakthrough(bed, bed.halfTimeS)).toBe(0.5);
      }),
    );
  });

  it('time to a share and share at a time are inverses, in both forms', () => {
    fc.assert(
      fc.property(logistic, share, (bed, wanted) => {
        const plain = logisticTimeS(bed, wanted);
        if (plain >= 0) expect(logisticBreakthrough(bed, plain)).toBeCloseTo(wanted, 9);
        const full = bohartAdamsTimeS(bed, wanted);
        if (full > 0) expect(bohartAdams(bed, full)).toBeCloseTo(wanted, 9);
        else expect(bohartAdams(bed, 0)).toBeGreaterThanOrEqual(wanted * (1 - 1e-9));
      }),
    );
  });

  it('its three names are one model', () => {
    const thomas = {
      thomasM3PerKgS: 1e-5,
      capacityKgPerKg: 0.05,
      sorbentKg: 2,
      feedKgPerM3: 0.03,
      flowM3PerS: 1e-6,
    };
    const bed = logisticOfThomas(thomas);
    const back = thomasOfLogistic({ ...thomas, bed });
    expect(back.thomasM3PerKgS).toBeCloseTo(1e-5, 18);
    expect(back.capacityKgPerKg).toBeCloseTo(0.05, 14);
    // The same sorbent in a column of 100 cm² and 40 cm.
    const adams = logisticOfBohartAdams({
      rateM3PerKgS: 1e-5,
      capacityKgPerM3: (0.05 * 2) / 0.004,
      lengthM: 0.4,
      speedMPerS: 1e-6 / 0.01,
      feedKgPerM3: 0.03,
    });
    expect(adams.ratePerS / bed.ratePerS).toBeCloseTo(1, 14);
    expect(adams.halfTimeS / bed.halfTimeS).toBeCloseTo(1, 12);
  });

  it('the full form starts at e^(−B), ends at 1 and becomes the logistic one in a long bed', () => {
    const short = { ratePerS: 0.001, halfTimeS: 2000 };
    expect(bohartAdams(short, 0)).toBeCloseTo(Math.exp(-2), 14);
    expect(bohartAdams(short, 1e6)).toBe(1);
    const long = { ratePerS: 0.02, halfTimeS: 2000 };
    for (const timeS of [1500, 1900, 2000, 2300])
      expect(bohartAdams(long, timeS)).toBeCloseTo(logisticBreakthrough(long, timeS), 12);
    expect(bohartAdams({ ratePerS: 1, halfTimeS: 5000 }, 0)).toBe(0);
  });

  it.each([0, 1, -0.1, Number.NaN])('refuses a share of %d', (wanted) => {
    const bed = { ratePerS: 0.01, halfTimeS: 1000 };
    expect(() => logisticTimeS(bed, wanted)).toThrow(OutsideRange);
    expect(() => bohartAdamsTimeS(bed, wanted)).toThrow(OutsideRange);
  });

  it('refuses beds that are none', () => {
    expect(() => logisticBreakthrough({ ratePerS: 0, halfTimeS: 1 }, 1)).toThrow(OutsideRange);
    expect(() => bohartAdams({ ratePerS: 1, halfTimeS: Number.NaN }, 1)).toThrow(OutsideRange);
    expect(() => logisticBreakthrough({ ratePerS: 1, halfTimeS: 1 }, -1)).toThrow(OutsideRange);
    const bed = { rateM3PerKgS: 1, capacityKgPerM3: 1, lengthM: 0, speedMPerS: 1, feedKgPerM3: 1 };
    expect(() => logisticOfBohartAdams(bed)).toThrow('lengthM');
  });
});

describe('constant pattern', () => {
  const kinds: readonly Resistance[] = ['film', 'solid', 'reaction'];

  it('what comes through and what is held balance: the mean throughput is 1, whatever slows the uptake', () => {
    for (const resistance of kinds)
      for (const separation of [0, 0.1, 0.3, 0.5]) {
        const bed = { resistance, separation, transferUnits: 60 };
        // ∫T dX over all shares, by the middle of ten thousand strips.
        const strips = 10_000;
        let sum = 0;
        for (let at = 0; at < strips; at += 1) sum += patternThroughput(bed, (at + 0.5) / strips);
        expect(sum / strips).toBeCloseTo(1, 5);
      }
  });

  it('throughput and share are inverses, and the share rises', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        share,
        (resistance, separation, x) => {
          const bed = { resistance, separation, transferUnits: 60 };
          const throughput = patternThroughput(bed, x);
          expect(patternBreakthrough(bed, throughput)).toBeCloseTo(x, 7);
          expect(patternThroughput(bed, x / 2)).toBeLessThan(throughput);
        },
      ),
    );
  });

  it('without a resistance everything comes at once, and a reaction is logistic', () => {
    const sharp = { resistance: 'film', separation: 0.2, transferUnits: 1e9 } as const;
    expect(patternBreakthrough(sharp, 0.99)).toBe(0);
    expect(patternBreakthrough(sharp, 1.01)).toBe(1);
    const reaction = { resistance: 'reaction', separation: 0.2, transferUnits: 50 } as const;
    const curve = { ratePerS: 0.8 * 50, halfTimeS: 1 };
    expect(patternBreakthrough(reaction, 1.03)).toBeCloseTo(logisticBreakthrough(curve, 1.03), 9);
  });

  it('refuses what has no constant pattern', () => {
    const bed = { resistance: 'film', separation: 0.2, transferUnits: 40 } as const;
    expect(() => patternThroughput({ ...bed, separation: 0.51 }, 0.5)).toThrow(OutsideRange);
    expect(() => patternThroughput({ ...bed, transferUnits: 0 }, 0.5)).toThrow(OutsideRange);
    expect(() => patternThroughput({ ...bed, transferUnits: 3 }, 0.01)).toThrow(OutsideRange);
    expect(() => patternThroughput(bed, 1)).toThrow(OutsideRange);
    expect(() => patternBreakthrough(bed, Number.NaN)).toThrow(OutsideRange);
  });
});

describe('unused bed', () => {
  const curve = [
    { timeS: 0, share: 0 },
    { timeS: 100, share: 0 },
    { timeS: 200, share: 1 },
  ];

  it('of a front that comes through in a straight line', () => {
    const found = unusedBed({ curve, limitShare: 0.1, lengthM: 0.3 });
    expect(found.stoichiometricS).toBeCloseTo(150, 12);
    expect(found.breakS).toBeCloseTo(110, 12);
    expect(found.usedS).toBeCloseTo(109.5, 12);
    expect(found.unusedM).toBeCloseTo(0.3 * (1 - 109.5 / 150), 12);
  });

  it('a logistic curve gives back its τ, and a longer bed loses the same length', () => {
    const bed = { ratePerS: 0.02, halfTimeS: 1500 };
    const points = Array.from({ length: 3001 }, (_, timeS) => ({
      timeS,
      share: logisticBreakthrough(bed, timeS),
    }));
    const found = unusedBed({ curve: points, limitShare: 0.05, lengthM: 0.2 });
    expect(found.stoichiometricS).toBeCloseTo(1500, 3);
    expect(found.breakS).toBeCloseTo(logisticTimeS(bed, 0.05), 2);
    const same = { stoichiometricS: found.stoichiometricS, lengthM: 0.2, unusedM: found.unusedM };
    expect(breakTimeOfLengthS({ ...same, newLengthM: 0.2 })).toBeCloseTo(found.usedS, 6);
    const twice = breakTimeOfLengthS({ ...same, newLengthM: 0.4 });
    expect(twice - found.usedS).toBeCloseTo(found.stoichiometricS, 6);
  });

  it('refuses a curve that is out of order, does not pass the limit or is no number', () => {
    const run = { curve, limitShare: 0.1, lengthM: 0.3 };
    const bent = [curve[1], curve[0]].filter((point) => point !== undefined);
    expect(() => unusedBed({ ...run, curve: bent })).toThrow(OutsideRange);
    expect(() => unusedBed({ ...run, curve: curve.slice(0, 2) })).toThrow(OutsideRange);
    expect(() => unusedBed({ ...run, curve: [] })).toThrow(OutsideRange);
    expect(() => unusedBed({ ...run, curve: [{ timeS: 0, share: Number.NaN }] })).toThrow(OutsideRange);
    expect(() => unusedBed({ ...run, lengthM: 0 })).toThrow(OutsideRange);
    expect(() => unusedLengthM({ lengthM: 1, usedS: 2, stoichiometricS: 1 })).toThrow(OutsideRange);
    const bed = { stoichiometricS: 1, lengthM: 1, unusedM: 0.4, newLengthM: 0.4 };
    expect(() => breakTimeOfLengthS(bed)).toThrow(OutsideRange);
    const fed = { fedKgPerM2S: 1, heldS: 1, lengthM: 1, bulkKgPerM3: 0 };
    expect(() => takenUpKgPerKg(fed)).toThrow(OutsideRange);
  });
});
