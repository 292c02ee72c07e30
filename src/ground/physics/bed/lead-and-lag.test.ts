// Two beds in a row: mass is kept at every step, steps of any size are one, limits are found, and a change saves capacity.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { OutsideRange } from '../outside-range.ts';
import { type BedChain, chainAfter, swappedChain, volumeToLimitM3 } from './lead-and-lag.ts';
import { bohartAdams } from './logistic.ts';

const bed = (fedKg: number) => ({ capacityKg: 0.03, steepness: 20, fedKg });
const fresh: BedChain = { lead: bed(0), lag: bed(0) };
const FEED = 0.03;

const chains = fc.record({
  lead: fc.record({
    capacityKg: fc.double({ min: 0.001, max: 1, noNaN: true }),
    steepness: fc.double({ min: 2, max: 400, noNaN: true }),
    fedKg: fc.double({ min: 0, max: 2, noNaN: true }),
  }),
  lag: fc.record({
    capacityKg: fc.double({ min: 0.001, max: 1, noNaN: true }),
    steepness: fc.double({ min: 2, max: 400, noNaN: true }),
    fedKg: fc.double({ min: 0, max: 2, noNaN: true }),
  }),
});

it('keeps mass: what is fed is held by one of the beds or has passed both', () => {
  fc.assert(
    fc.property(chains, fc.double({ min: 0, max: 40, noNaN: true }), (chain, volumeM3) => {
      const before = chainAfter(chain, { volumeM3: 0, feedKgPerM3: FEED });
      const after = chainAfter(chain, { volumeM3, feedKgPerM3: FEED });
      const more = after.leadHoldsKg + after.lagHoldsKg - before.leadHoldsKg - before.lagHoldsKg;
      expect(more + after.passedKg).toBeCloseTo(volumeM3 * FEED, 10);
      expect(before.passedKg).toBe(0);
      expect(after.lagKgPerM3).toBeLessThanOrEqual(after.leadKgPerM3);
      expect(after.leadKgPerM3).toBeLessThanOrEqual(FEED);
      expect(after.leadHoldsKg).toBeLessThanOrEqual(chain.lead.capacityKg * (1 + 1e-12));
    }),
  );
});

it('a hundred small steps are one great one', () => {
  let chain = fresh;
  let passedKg = 0;
  for (let step = 0; step < 100; step += 1) {
    const after = chainAfter(chain, { volumeM3: 0.018, feedKgPerM3: FEED });
    chain = after.chain;
    passedKg += after.passedKg;
  }
  const once = chainAfter(fresh, { volumeM3: 1.8, feedKgPerM3: FEED });
  expect(chain.lead.fedKg).toBeCloseTo(once.chain.lead.fedKg, 12);
  expect(chain.lag.fedKg).toBeCloseTo(once.chain.lag.fedKg, 12);
  expect(passedKg).toBeCloseTo(once.passedKg, 12);
});

it('the lead alone is the bed of Bohart and Adams', () => {
  for (const volumeM3 of [0.2, 0.7, 0.95, 1, 1.1]) {
    const { leadKgPerM3 } = chainAfter(fresh, { volumeM3, feedKgPerM3: FEED });
    expect(leadKgPerM3 / FEED).toBeCloseTo(bohartAdams({ ratePerS: 20, halfTimeS: 1 }, volumeM3), 12);
  }
});

it('what passes the lead is the area under its curve', () => {
  const strips = 20_000;
  let passed = 0;
  for (let at = 0; at < strips; at += 1) {
    const volumeM3 = ((at + 0.5) / strips) * 1.2;
    passed += (chainAfter(fresh, { volumeM3, feedKgPerM3: FEED }).leadKgPerM3 * 1.2) / strips;
  }
  expect(chainAfter(fresh, { volumeM3: 1.2, feedKgPerM3: FEED }).chain.lag.fedKg).toBeCloseTo(passed, 9);
});

it('finds the volume at which a limit is passed, behind either bed', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('lead' as const, 'lag' as const),
      fc.double({ min: 0.001, max: 0.99, noNaN: true }),
      (behind, share) => {
        const limitKgPerM3 = share * FEED;
        const volumeM3 = volumeToLimitM3(fresh, { behind, feedKgPerM3: FEED, limitKgPerM3 });
        const there = chainAfter(fresh, { volumeM3, feedKgPerM3: FEED });
        const found = behind === 'lead' ? there.leadKgPerM3 : there.lagKgPerM3;
        expect(found / limitKgPerM3).toBeCloseTo(1, 6);
      },
    ),
  );
  const spent = { lead: bed(0.1), lag: bed(0.1) };
  expect(volumeToLimitM3(spent, { behind: 'lag', feedKgPerM3: FEED, limitKgPerM3: 0.003 })).toBe(0);
});

it('two in a row use more of a bed than two by themselves', () => {
  const limit = { feedKgPerM3: FEED, limitKgPerM3: 0.1 * FEED };
  const alone = volumeToLimitM3(fresh, { ...limit, behind: 'lead' });
  const row = volumeToLimitM3(fresh, { ...limit, behind: 'lag' });
  expect(row).toBeGreaterThan(2 * alone);
  expect(row).toBeLessThan((2 * 0.03) / FEED);
});

it('at a change the lag moves up with what it holds', () => {
  const run = chainAfter(fresh, { volumeM3: 1.1, feedKgPerM3: FEED }).chain;
  const swapped = swappedChain(run, { capacityKg: 0.04, steepness: 25 });
  expect(swapped).toEqual({ lead: run.lag, lag: { capacityKg: 0.04, steepness: 25, fedKg: 0 } });
  expect(swapped.lead.fedKg).toBeGreaterThan(0);
});

it('refuses beds, feeds and limits that are none', () => {
  const limit = { behind: 'lead', feedKgPerM3: FEED, limitKgPerM3: 0.003 } as const;
  for (const change of [
    { capacityKg: 0 },
    { steepness: 0 },
    { steepness: 501 },
    { fedKg: -1 },
    { fedKg: Number.NaN },
  ]) {
    const chain = { ...fresh, lag: { ...bed(0), ...change } };
    expect(() => chainAfter(chain, { volumeM3: 1, feedKgPerM3: FEED })).toThrow(OutsideRange);
    expect(() => volumeToLimitM3(chain, limit)).toThrow(OutsideRange);
  }
  expect(() => swappedChain(fresh, { capacityKg: -1, steepness: 20 })).toThrow(OutsideRange);
  for (const limitKgPerM3 of [0, FEED, 1, Number.NaN])
    expect(() => volumeToLimitM3(fresh, { ...limit, limitKgPerM3 })).toThrow(OutsideRange);
  for (const volumeM3 of [-1, Number.NaN])
    expect(() => chainAfter(fresh, { volumeM3, feedKgPerM3: FEED })).toThrow(OutsideRange);
});
