// A charge before it is let in: refused above the lowest rating with a safer one, blocked where a rating is missing.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import {
  type Charge,
  type ChargeAsked,
  chargeVerdict,
  endPressurePa,
  type Rating,
  tankAfterFallPa,
} from './charge.ts';

const tank: Rating = { what: 'tank', id: 'R2', overCabinPa: 100e3 };
const hose: Rating = { what: 'hose', id: 'H-1', overCabinPa: 400e3 };
const bottle: Rating = { what: 'bottle', id: 'gauging bottle', absolutePa: 1000e3 };

const intoR2: ChargeAsked = {
  ...{
    bottleM3: 0.01,
    bottlePa: 600e3,
    ullageM3: { value: 0.0064, u: 0 },
    tankPa: 101.3e3,
    cabinPa: 101.2e3,
  },
  ...{ ratings: [hose, tank], bottleRating: bottle },
};

function refused(charge: Charge) {
  if (charge.verdict !== 'refused') throw new Error(`the charge is ${charge.verdict}`);
  return charge;
}

describe('a full 10 L bottle at 600 kPa into Corrie’s R2', () => {
  const charge = refused(chargeVerdict(intoR2));

  it('is refused with its end pressure and the rating that it would pass', () => {
    expect(charge.endPa / 1000).toBeCloseTo(405.4, 1);
    expect(charge.limitPa).toBeCloseTo(201.2e3, 6);
    expect(charge.limitedBy).toBe(tank);
  });

  it('comes with charges that the tank bears', () => {
    expect(charge.largestBottlePa! / 1000).toBeCloseTo(265.1, 1);
    expect(charge.partCharge!.stopTankAtPa).toBe(charge.limitPa);
    expect(charge.partCharge!.bottleFallPa / 1000).toBeCloseTo(63.9, 1);
    // 15 kPa off the same bottle is enough.
    const at = { bottleM3: 0.01, bottleFallPa: 15e3, ullageM3: 0.0064, tankPa: 101.3e3 };
    expect(tankAfterFallPa(at) / 1000).toBeCloseTo(124.7, 1);
  });
});

describe('what is proposed', () => {
  it('ends at the limit, opened for good or in part', () => {
    let looked = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.1, noNaN: true }),
        fc.double({ min: 300e3, max: 900e3, noNaN: true }),
        (ullageM3, bottlePa) => {
          const charge = chargeVerdict({ ...intoR2, bottlePa, ullageM3: { value: ullageM3, u: 0 } });
          if (charge.verdict !== 'refused') return;
          const vessels = { bottleM3: 0.01, ullageM3, tankPa: 101.3e3 };
          const largest = charge.largestBottlePa!;
          expect(endPressurePa({ ...vessels, bottlePa: largest })).toBeCloseTo(charge.limitPa, 5);
          expect(largest).toBeLessThan(bottlePa);
          const { bottleFallPa } = charge.partCharge!;
          expect(tankAfterFallPa({ ...vessels, bottleFallPa })).toBeCloseTo(charge.limitPa, 5);
          expect(
            chargeVerdict({ ...intoR2, bottlePa: largest * (1 - 1e-9), ullageM3: { value: ullageM3, u: 0 } })
              .verdict,
          ).toBe('allowed');
          looked += 1;
        },
      ),
    );
    expect(looked).toBeGreaterThan(50);
  });

  it('is held against the least ullage that there may be', () => {
    const wide = { ...intoR2, bottlePa: 240e3 };
    expect(chargeVerdict({ ...wide, ullageM3: { value: 0.0064, u: 0 } }).verdict).toBe('allowed');
    const charge = refused(chargeVerdict({ ...wide, ullageM3: { value: 0.0064, u: 0.003 } }));
    expect(charge.endPa).toBeLessThan(charge.limitPa);
    expect(charge.highestEndPa).toBeGreaterThan(charge.limitPa);
    // Two u below there is no gas at all: the tank would take the bottle's pressure.
    const none = refused(chargeVerdict({ ...wide, ullageM3: { value: 0.0064, u: 0.004 } }));
    expect(none.highestEndPa).toBe(240e3);
    expect(none.largestBottlePa).toBeCloseTo(none.limitPa, 6);
  });

  it('a part charge is held against the rating where it would end', () => {
    const part = (bottleFallPa: number, u = 0) =>
      chargeVerdict({ ...intoR2, bottleFallPa, ullageM3: { value: 0.0064, u } });
    const enough = part(15e3);
    if (enough.verdict !== 'allowed') throw new Error(enough.verdict);
    expect(enough.endPa / 1000).toBeCloseTo(124.7, 1);
    expect(part(70e3).verdict).toBe('refused');
    // The same fall into less room ends higher.
    expect(part(60e3).verdict).toBe('allowed');
    expect(part(60e3, 0.001).verdict).toBe('refused');
    expect(part(refused(part(60e3, 0.001)).partCharge!.bottleFallPa * 0.999, 0.001).verdict).toBe('allowed');
    // However far it is let fall, it does not fall below where the two meet.
    expect(refused(part(590e3)).endPa / 1000).toBeCloseTo(405.4, 1);
    expect(() => part(-1)).toThrow(OutsideRange);
  });

  it('is nothing where the tank stands at its limit already', () => {
    const charge = refused(chargeVerdict({ ...intoR2, tankPa: 201.2e3 }));
    expect([charge.largestBottlePa, charge.partCharge]).toEqual([null, null]);
  });

  it('is not asked for where it is allowed: the margin is told', () => {
    const charge = chargeVerdict({ ...intoR2, ullageM3: { value: 0.16, u: 0 } });
    if (charge.verdict !== 'allowed') throw new Error(charge.verdict);
    expect(charge.endPa / 1000).toBeCloseTo(130.6, 1);
    expect(charge.marginPa / 1000).toBeCloseTo(70.6, 1);
  });
});

describe('ratings', () => {
  it.each<[string, Rating]>([
    ['nobody told', { what: 'bladder', id: 'R2' }],
    ['told as none', { what: 'bladder', id: 'R2', overCabinPa: null }],
    ['no number', { what: 'bladder', id: 'R2', overCabinPa: Number.NaN }],
    ['no pressure', { what: 'bladder', id: 'R2', absolutePa: 0 }],
  ])('one that is %s blocks, and is named', (_what, rating) => {
    const charge = chargeVerdict({ ...intoR2, ratings: [tank, rating] });
    expect(charge).toEqual({ verdict: 'blocked', missing: [rating] });
  });

  it('none at all block too', () => {
    expect(chargeVerdict({ ...intoR2, ratings: [] })).toEqual({ verdict: 'blocked', missing: [] });
  });

  it('that of the bottle is its own, and missing it blocks as well', () => {
    const over = { ...intoR2, bottlePa: 1100e3 };
    expect(chargeVerdict(over)).toEqual({
      verdict: 'bottle above its rating',
      limitPa: 1000e3,
      limitedBy: bottle,
    });
    const untold: Rating = { what: 'bottle', id: 'gauging bottle', absolutePa: null };
    expect(chargeVerdict({ ...intoR2, bottleRating: untold })).toEqual({
      verdict: 'blocked',
      missing: [untold],
    });
  });

  it('against the cabin and absolute are brought together: the lower one counts', () => {
    const both: Rating = { what: 'tank', id: 'R2', overCabinPa: 100e3, absolutePa: 150e3 };
    expect(refused(chargeVerdict({ ...intoR2, ratings: [both] })).limitPa).toBe(150e3);
    // In a cabin of lower pressure the same rating over the cabin ends sooner.
    expect(refused(chargeVerdict({ ...intoR2, cabinPa: 70e3 })).limitPa).toBe(170e3);
  });
});

it('the end lies between the two pressures, nearer to the larger volume', () => {
  let looked = 0;
  const volume = fc.double({ min: 0.001, max: 0.3, noNaN: true });
  fc.assert(
    fc.property(volume, volume, (bottleM3, ullageM3) => {
      const end = endPressurePa({ bottleM3, bottlePa: 600e3, ullageM3, tankPa: 101e3 });
      expect(end).toBeGreaterThan(101e3);
      expect(end).toBeLessThan(600e3);
      const nearer = (end - (600e3 + 101e3) / 2) * (bottleM3 - ullageM3);
      expect(nearer).toBeGreaterThanOrEqual(-1e-12);
      looked += 1;
    }),
  );
  expect(looked).toBe(100);
});

it.each([
  { bottleM3: 0 },
  { bottlePa: -1 },
  { tankPa: Number.NaN },
  { cabinPa: 0 },
  { ullageM3: { value: -0.001, u: 0 } },
])('refuses %o', (odd) => {
  expect(() => chargeVerdict({ ...intoR2, ...odd })).toThrow(OutsideRange);
});
