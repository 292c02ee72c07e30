// The live band: what it says before and after readings, by simulated flows; the limit time; what the runs of a hose teach.
import { describe, expect, test } from 'vitest';
import { recordCounts } from '../../../tests/verification/record.ts';
import { exp, log, seededChance } from '../../ground/maths/index.ts';
import { learnedHose } from './learned-hose.ts';
import { LitresFilter } from './litres-filter.ts';
import { type FlowPlan, type LitresRead, type LiveReading, live } from './live.ts';
import { cabinStop, flowStop } from './stop-rules.ts';

const MIN = 60_000;
/** The worked fill of Corrie: 20.5 L in 15.9 min through a hose nobody has timed. */
const PLAN: FlowPlan = {
  planned: { value: 20.5, u: 0.1 },
  minutes: { value: 15.9, u: 15.9 * 0.3 },
  danger: 'over-fill',
  pushKPa: 50,
};
const METER = { randomL: 0.12, relative: 0.01, offsetL: 0 };
const SCALE = { randomL: 0.17, relative: 0, offsetL: 0.1 };
const open = (fromMs = 0) => [{ fromMs, toMs: null }];

const meter = (atMs: number, litres: number): LitresRead => ({
  is: 'litres',
  atMs,
  means: 'meter',
  litres,
  doubt: METER,
});

const normals = (seed: number): (() => number) => seededChance({ seed }).normal;

describe('before anything is read', () => {
  test('it is the prediction, with the doubt of the hose', () => {
    const said = live({ plan: PLAN, stretches: open(), readings: [], nowMs: MIN });
    expect(said.soFarL.value).toBeCloseTo(20.5 / 15.9, 9);
    expect(said.wholeMs.middle / MIN).toBeCloseTo(15.9, 6);
    expect(said.elapsedMs).toBe(MIN);
    expect(said.rateLPerMin.value).toBeCloseTo(1.289, 3);
  });

  test('the limit is the early end, and the late one only where a store is to be emptied', () => {
    for (const danger of ['over-fill', 'over-pressure', 'run-dry', 'left behind'] as const) {
      const said = live({ plan: { ...PLAN, danger }, stretches: open(), readings: [], nowMs: MIN });
      const band = said.fullAtMs;
      expect(said.limitAtMs).toBe(danger === 'left behind' ? band?.late : band?.early);
    }
  });
});

describe('as it is read', () => {
  const truth = (minutes: number): number => 1.03 * minutes;
  const readings = [2, 5, 9].map((minutes) => meter(minutes * MIN, truth(minutes)));

  test('the band narrows with every reading and closes in on the truth', () => {
    const widths = [0, 1, 2, 3].map((count) => {
      const nowMs = (readings[count - 1]?.atMs ?? 0) + 1;
      const { wholeMs } = live({ plan: PLAN, stretches: open(), readings: readings.slice(0, count), nowMs });
      return (wholeMs.late - wholeMs.early) / MIN;
    });
    for (let k = 1; k < widths.length; k += 1) expect(widths[k]).toBeLessThan(widths[k - 1] as number);
    const last = live({ plan: PLAN, stretches: open(), readings, nowMs: 9 * MIN });
    expect(last.wholeMs.middle / MIN).toBeCloseTo(20.5 / 1.03, 0);
    expect(last.rateLPerMin.value).toBeCloseTo(1.03, 1);
  });

  test('the order of arrival does not matter, and what was read outside the flow is left out', () => {
    const asked = { plan: PLAN, stretches: [{ fromMs: MIN, toMs: null }], nowMs: 10 * MIN };
    const said = live({ ...asked, readings });
    expect(live({ ...asked, readings: [...readings].reverse() })).toEqual(said);
    expect(live({ ...asked, readings: [meter(0, 5), ...readings, meter(60 * MIN, 1)] })).toEqual(said);
  });

  test('a break stops the time, a lower push slows the flow', () => {
    const stretches = [
      { fromMs: 0, toMs: 8 * MIN },
      { fromMs: 3000 * MIN, toMs: null },
    ];
    const said = live({ plan: PLAN, stretches, readings: [], nowMs: 3001 * MIN });
    expect(said.elapsedMs).toBe(9 * MIN);
    const between = live({ plan: PLAN, stretches, readings: [], nowMs: 2000 * MIN });
    expect(between).toMatchObject({ elapsedMs: 8 * MIN, fullAtMs: null, limitAtMs: null });
    const slow = live({
      plan: PLAN,
      stretches: open(),
      readings: [{ is: 'push', atMs: 0, overCabinKPa: 12.5 }],
      nowMs: 2 * MIN,
    });
    expect(slow.soFarL.value).toBeCloseTo(20.5 / 15.9, 6);
  });

  test('past its limit it says by how much, however long nobody looked', () => {
    const late = live({ plan: PLAN, stretches: open(), readings: [], nowMs: 60 * MIN });
    // 15.9 min by the plan, the early end of its band at 8.7: more than fifty minutes ago.
    expect((late.untilLimitMs ?? 0) / MIN).toBeLessThan(-50);
    expect((late.fullAtMs?.middle ?? 0) / MIN).toBeCloseTo(15.9, 6);
    expect(late.soFarL.value).toBeGreaterThan(20.5);
  });

  test('a flow that has stopped keeps an end, and nearly full is no matter for ever', () => {
    const stuck = [meter(4 * MIN, 5), meter(8 * MIN, 5), meter(12 * MIN, 5), meter(16 * MIN, 5)];
    const said = live({ plan: PLAN, stretches: open(), readings: stuck, nowMs: 16 * MIN });
    for (const ms of Object.values(said.wholeMs)) expect(Number.isFinite(ms)).toBe(true);
    const nearly = live({
      plan: PLAN,
      stretches: open(),
      readings: [meter(8 * MIN, 10.3), meter(15.8 * MIN, 20.45)],
      nowMs: 15.8 * MIN,
    });
    const { early, late } = nearly.wholeMs;
    expect((late - early) / MIN).toBeLessThan(1.5);
  });

  test('a plan that is no amount is refused', () => {
    const none = { ...PLAN, planned: { value: 0, u: 0 } };
    expect(() => live({ plan: none, stretches: open(), readings: [], nowMs: 1 })).toThrow(RangeError);
    expect(() => new LitresFilter({ value: 1, u: Number.NaN }, 0)).toThrow(RangeError);
  });
});

test('in simulated flows litres so far and the end lie in their bands 19 times in 20', () => {
  const normal = normals(21470305);
  const runs = 1500;
  const held = { soFar: 0, whole: 0, before: 0 };
  let narrower = 0;
  let over = 0;
  for (let run = 0; run < runs; run += 1) {
    let pace = exp(0.3 * normal());
    const planned = 20.5 + 0.1 * normal();
    const [ofMeter, ofScale] = [0.01 * normal(), 0.1 * normal()];
    const readings: LiveReading[] = [];
    let litres = 0;
    let fullMin = 0;
    let atFive = 0;
    for (let tenth = 1; litres < planned && tenth < 2000; tenth += 1) {
      pace *= exp(0.01 * Math.sqrt(0.1) * normal());
      litres += 0.1 * (20.5 / 15.9) * pace;
      fullMin = tenth / 10;
      if (tenth === 50) atFive = litres;
      if (tenth === 20 || tenth === 35 || tenth === 50)
        readings.push(meter(tenth * 6000, litres * (1 + ofMeter) + 0.12 * normal()));
      if (tenth === 45)
        readings.push({
          is: 'litres',
          atMs: tenth * 6000,
          means: 'scale',
          litres: litres + ofScale + 0.17 * normal(),
          doubt: SCALE,
        });
    }
    const first = live({ plan: PLAN, stretches: open(), readings: [], nowMs: 0 });
    if (fullMin * MIN >= first.wholeMs.early && fullMin * MIN <= first.wholeMs.late) held.before += 1;
    if (fullMin <= 6) {
      // Over before the last reading: there is nothing left to foresee.
      over += 1;
      continue;
    }
    const said = live({ plan: PLAN, stretches: open(), readings, nowMs: 5 * MIN });
    if (Math.abs(said.soFarL.value - atFive) <= 2 * said.soFarL.u) held.soFar += 1;
    if (fullMin * MIN >= said.wholeMs.early && fullMin * MIN <= said.wholeMs.late) held.whole += 1;
    const width = said.wholeMs.late - said.wholeMs.early;
    if (width < (first.wholeMs.late - first.wholeMs.early) / 2) narrower += 1;
  }
  const followed = runs - over;
  expect(followed).toBeGreaterThan(1400);
  for (const share of [held.before / runs, held.soFar / followed, held.whole / followed]) {
    expect(share).toBeGreaterThan(0.925);
    expect(share).toBeLessThan(0.985);
  }
  expect(narrower / followed).toBeGreaterThan(0.95);
  const counts = { flows: runs, followed, narrower, ...held };
  recordCounts('live-band', import.meta.filename, { seed: 21470305, counts });
});

describe('what runs teach', () => {
  test('five runs through a hose 25 % tighter than described: within 5 %, and the band is half as wide', () => {
    const none = learnedHose([]);
    const normal = normals(21470306);
    const runs = Array.from({ length: 5 }, () => ({
      predictedSeconds: 950,
      takenSeconds: (950 / 0.75) * exp(0.01 * normal()),
      interrupted: false,
    }));
    const taught = learnedHose(runs);
    expect(Math.abs(taught.factor.value * 0.75 - 1)).toBeLessThan(0.05);
    expect(taught.factor.u / taught.factor.value).toBeLessThan(none.factor.u / none.factor.value / 2);
  });

  test('a broken run and one with a kink or gas teach nothing', () => {
    const run = (takenSeconds: number, interrupted = false) => ({
      predictedSeconds: 950,
      takenSeconds,
      interrupted,
    });
    const clean = [run(960), run(955), run(965)];
    const more = learnedHose([...clean, run(2400), run(600), run(5000, true)]);
    expect(more).toEqual({ ...learnedHose(clean), leftOut: 3 });
  });

  test('the next run lies in its band 19 times in 20, and the band narrows with every run', () => {
    const normal = normals(21470307);
    for (const count of [0, 1, 3, 5]) {
      let held = 0;
      let width = 0;
      for (let hose = 0; hose < 1000; hose += 1) {
        const own = 0.25 * normal();
        const next = () => 950 * exp(own + 0.03 * normal());
        const runs = Array.from({ length: count }, () => ({
          predictedSeconds: 950,
          takenSeconds: next(),
          interrupted: false,
        }));
        const { value, u } = learnedHose(runs).factor;
        const off = log(next() / 950 / value);
        if (Math.abs(off) <= (2 * u) / value) held += 1;
        width += u / value;
      }
      expect(held / 1000, `after ${count} runs`).toBeGreaterThan(0.93);
      expect(width / 1000, `after ${count} runs`).toBeLessThan(count === 0 ? 0.3 : count === 1 ? 0.1 : 0.05);
    }
  });
});

describe('when to stop', () => {
  const began = { atMs: 0, litres: 0 };
  const known = { ...PLAN, minutes: { value: 15.9, u: 0.3 } };
  const at = (minutes: number, pace: number) => meter(minutes * MIN, (pace * minutes * 20.5) / 15.9);
  const verdict = (readings: readonly LitresRead[]) => flowStop({ plan: known, began, readings }).verdict;

  test('a kink, a gas break-through and a clean run are told apart', () => {
    expect(verdict([at(3, 1), at(6, 1.02)])).toBe('as predicted');
    expect(verdict([at(3, 1), meter(6 * MIN, at(3, 1).litres + 1.5)])).toBe('kink or clogged coupling');
    expect(verdict([at(3, 1), meter(6 * MIN, at(3, 1).litres + 6)])).toBe('gas in the line');
    expect(verdict([at(3, 1), meter(6 * MIN, at(3, 1).litres)])).toBe('kink or clogged coupling');
    expect(verdict([meter(3 * MIN, 1.5)])).toBe('kink or clogged coupling');
  });

  test('readings too close together say nothing, and neither does none', () => {
    expect(verdict([at(3, 1), meter(3 * MIN + 2000, at(3, 1).litres)])).toBe('too soon');
    expect(verdict([])).toBe('too soon');
    expect(flowStop({ plan: known, began, readings: [] }).ratio).toBeNull();
  });

  test('of a thousand clean runs fewer than one in a hundred is stopped, and every kink and gas is', () => {
    const normal = normals(21470308);
    const stopped = { clean: 0, kink: 0, gas: 0 };
    for (let run = 0; run < 1000; run += 1) {
      const reading = (minutes: number, litres: number) => meter(minutes * MIN, litres + 0.12 * normal());
      const rate = 20.5 / 15.9;
      const first = reading(4, 4 * rate);
      const pair = (pace: number) => [first, reading(8, 4 * rate + 4 * pace * rate)];
      const isStop = (readings: readonly LitresRead[]) =>
        !['as predicted', 'too soon'].includes(verdict(readings));
      if (isStop(pair(exp(0.03 * normal())))) stopped.clean += 1;
      if (isStop(pair(0.5))) stopped.kink += 1;
      if (isStop(pair(1.5))) stopped.gas += 1;
    }
    expect(stopped.clean).toBeLessThan(10);
    expect(stopped.kink).toBe(1000);
    expect(stopped.gas).toBeGreaterThan(990);
  });

  test('the cabin: a clean push, a leak of pressurant, gas from elsewhere', () => {
    const push = {
      beforeKPa: 101.2,
      readingU: 0.15,
      pushKPa: 50,
      movedL: 20.5,
      cabinM3: 180,
      receiver: 'shell inside',
      gasFrom: 'cabin',
    } as const;
    expect(cabinStop({ ...push, nowKPa: 101.2 })).toMatchObject({ verdict: 'as predicted' });
    expect(cabinStop({ ...push, nowKPa: 101.2 }).predictedKPa).toBeCloseTo(101.2 - (50 * 0.0205) / 180, 4);
    expect(cabinStop({ ...push, nowKPa: 100.2 }).verdict).toBe('lower than predicted');
    expect(cabinStop({ ...push, nowKPa: 102.2 }).verdict).toBe('higher than predicted');
  });
});
