// Gaugings beside each other: combined with what they share, held against each other, judged, and ranked by the minute.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chiSquareQuantile, seededChance } from '../../maths/index.ts';
import { OutsideRange } from '../outside-range.ts';
import { combineGaugings } from './combine-gaugings.ts';
import { foreseenInjection } from './foreseen-injection.ts';
import { doubtAfterGauging, judgeGauging, worthOfGaugings } from './gauging-worth.ts';

describe('combined', () => {
  it('two of one doubt: their middle, and u/√2', () => {
    const { value, u, chiSquare, degrees, verdict, gaugings } = combineGaugings([
      { of: 'gas injection', value: 40, u: 1 },
      { of: 'strokes', value: 42, u: 1 },
    ]);
    expect(value).toBeCloseTo(41, 12);
    expect(u).toBeCloseTo(Math.SQRT1_2, 12);
    expect([chiSquare, degrees]).toEqual([expect.closeTo(2, 12), 1]);
    expect(verdict).toBe('agree');
    expect(gaugings.map(({ weight, offInU }) => [weight, offInU])).toEqual([
      [expect.closeTo(0.5, 12), expect.closeTo(-Math.SQRT2, 12)],
      [expect.closeTo(0.5, 12), expect.closeTo(Math.SQRT2, 12)],
    ]);
  });

  it('an error that both share stays, however many there are', () => {
    const shell = { shell: 0.9 };
    const many = (count: number): number =>
      combineGaugings(
        Array.from({ length: count }, (_, at) => ({
          of: `gauging ${at}`,
          value: 170,
          u: 1.3,
          shared: shell,
        })),
      ).u;
    expect(many(1)).toBeCloseTo(Math.hypot(1.3, 0.9), 12);
    expect(many(2)).toBeCloseTo(Math.sqrt((1.3 * 1.3) / 2 + 0.81), 12);
    expect(many(200)).toBeCloseTo(Math.sqrt((1.3 * 1.3) / 200 + 0.81), 10);
  });

  it('is never worse than its best part, and its weights make 1', () => {
    let looked = 0;
    const doubt = fc.double({ min: 0.1, max: 5, noNaN: true });
    const reach = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(doubt, reach, reach), { minLength: 1, maxLength: 6 }), (told) => {
        const gaugings = told.map(([u, one, other], at) => ({
          ...{ of: String(at), value: at, u },
          shared: at % 2 === 0 ? { one, other } : { one },
        }));
        const { u, gaugings: parts } = combineGaugings(gaugings);
        const best = Math.min(
          ...told.map(([own, one, other], at) => Math.hypot(own, one, at % 2 === 0 ? other : 0)),
        );
        expect(u).toBeLessThanOrEqual(best * (1 + 1e-9));
        expect(parts.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 8);
        looked += 1;
      }),
    );
    expect(looked).toBe(100);
  });

  it('disagrees as often as the level says where the doubts are right, and nearly always where one is off by 6 u', () => {
    const chance = seededChance({ seed: 2147 });
    const run = (bias: number): number => {
      let said = 0;
      for (let round = 0; round < 2000; round += 1) {
        const shell = 0.9 * chance.normal();
        const gaugings = [1.3, 0.6, 0.8].map((u, at) => ({
          ...{
            of: String(at),
            u,
            value: 100 + u * chance.normal() + (at < 2 ? shell : 0) + (at === 0 ? bias : 0),
          },
          shared: at < 2 ? { shell: 0.9 } : {},
        }));
        if (combineGaugings(gaugings).verdict === 'disagree') said += 1;
      }
      return said;
    };
    // 20 expected; chance keeps it within these in all but 1 of 1000 seeds.
    expect(run(0)).toBeGreaterThan(7);
    expect(run(0)).toBeLessThan(37);
    expect(run(8)).toBeGreaterThan(1900);
  });

  it('says which is the odd one', () => {
    const { gaugings, verdict, chiSquare } = combineGaugings([
      { of: 'gas injection', value: 40, u: 0.5 },
      { of: 'strokes', value: 40.4, u: 0.4 },
      { of: 'weighing', value: 43, u: 0.3 },
    ]);
    expect(verdict).toBe('disagree');
    expect(chiSquare).toBeGreaterThan(chiSquareQuantile({ probability: 0.99, degrees: 2 }));
    const furthest = [...gaugings].sort((a, b) => Math.abs(b.offInU) - Math.abs(a.offInU))[0]!;
    expect(furthest.of).toBe('weighing');
  });

  it('one alone is itself', () => {
    const { value, u, probability, gaugings } = combineGaugings([{ of: 'weighing', value: 20, u: 0.2 }]);
    expect([value, u, probability, gaugings[0]!.offInU]).toEqual([20, expect.closeTo(0.2, 14), 1, 0]);
  });

  it('refuses none, NaN, a doubt below 0, and two of which one tells no more than the other', () => {
    expect(() => combineGaugings([])).toThrow(RangeError);
    expect(() => combineGaugings([{ of: 'a', value: Number.NaN, u: 1 }])).toThrow(RangeError);
    expect(() => combineGaugings([{ of: 'a', value: 1, u: -1 }])).toThrow(RangeError);
    expect(() => combineGaugings([{ of: 'a', value: 1, u: 1 }], 0)).toThrow(OutsideRange);
    const same = { value: 1, u: 0, shared: { shell: 1 } };
    expect(() =>
      combineGaugings([
        { of: 'a', ...same },
        { of: 'b', ...same },
      ]),
    ).toThrow(RangeError);
  });
});

describe('judged', () => {
  const emptyTank = foreseenInjection({
    ...{ tankM3: { value: 0.18, u: 0 }, bottleM3: { value: 0.005, u: 0 }, ullageM3: 0.16 },
    ...{ bottlePa: 400e3, tankPa: 101.3e3, gasK: 295, u: { bottlePa: 500, tankPa: 500, gasK: 0.5 } },
  });

  it('a 5 L bottle at 400 kPa near empty is useless, with the figure', () => {
    const u = emptyTank.waterM3.u;
    const { verdict, because } = judgeGauging({ u }, { presentU: 0.003, content: emptyTank.waterM3.value });
    expect(verdict).toBe('useless');
    expect(because).toEqual([
      { code: 'no-better-than-known', u, presentU: 0.003 },
      { code: 'larger-than-content', u95: 2 * u, content: expect.closeTo(0.02, 12) },
    ]);
    expect((u * 1000).toFixed(0)).toBe('13');
  });

  it('the same bottle near full is of use', () => {
    const full = foreseenInjection({
      ...{ tankM3: { value: 0.18, u: 0.0016 }, bottleM3: { value: 0.005, u: 0 }, ullageM3: 0.02 },
      ...{ bottlePa: 400e3, tankPa: 101.3e3, gasK: 295, u: { bottlePa: 500, tankPa: 500, gasK: 0.5 } },
    });
    const judged = judgeGauging({ u: full.waterM3.u }, { presentU: 0.006, content: 0.16 });
    expect(judged.verdict).toBe('useful');
    expect(judged.afterU).toBeLessThan(full.waterM3.u);
  });

  it('where nothing is known only the content can make it useless', () => {
    expect(judgeGauging({ u: 13 }, { presentU: null }).verdict).toBe('useful');
    expect(judgeGauging({ u: 13 }, { presentU: null, content: 20 }).because).toMatchObject([
      { code: 'larger-than-content' },
    ]);
  });
});

describe('what is known after it', () => {
  it('is 1/u² + 1/u² for errors that are apart', () => {
    expect(doubtAfterGauging({ u: 1.6 }, 6)).toBeCloseTo(1 / Math.sqrt(1 / 2.56 + 1 / 36), 12);
    expect(doubtAfterGauging({ u: 1.6 }, null)).toBe(1.6);
    expect(doubtAfterGauging({ u: 1.6 }, 0)).toBe(0);
  });

  it('is what both share at least, what is known at most, and that of a combination', () => {
    let looked = 0;
    const doubt = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(doubt, doubt, doubt, (own, known, sharedU) => {
        const [u, presentU] = [Math.hypot(own, sharedU), Math.hypot(known, sharedU)];
        const after = doubtAfterGauging({ u, sharedU }, presentU);
        expect(after).toBeLessThanOrEqual(presentU * (1 + 1e-12));
        expect(after).toBeGreaterThanOrEqual(sharedU * (1 - 1e-9));
        const shared = { shell: sharedU };
        const both = combineGaugings([
          { of: 'known', value: 0, u: known, shared },
          { of: 'gauging', value: 0, u: own, shared },
        ]);
        expect(after / both.u).toBeCloseTo(1, 8);
        looked += 1;
      }),
    );
    expect(looked).toBe(100);
  });

  it.each([
    [{ u: 0 }, 1],
    [{ u: 1, sharedU: 2 }, 3],
    [{ u: 3, sharedU: 2 }, 1],
    [{ u: Number.NaN }, 1],
    [{ u: 1 }, -1],
  ] as const)('refuses %o beside %d', (gauging, presentU) => {
    expect(() => doubtAfterGauging(gauging, presentU)).toThrow(OutsideRange);
  });
});

describe('worth by the crew minute', () => {
  const ways = [
    { way: 'gas injection', u: 1.6, minutes: 50 },
    { way: 'strokes from here to empty', u: 0.4, minutes: 400 },
    { way: 'weighing', u: 0.2, minutes: 14, people: 2 },
  ];
  it('ranks what brings the most for a minute first', () => {
    const worth = worthOfGaugings({ presentU: 2.5, content: 20 }, ways);
    expect(worth.map(({ way }) => way)).toEqual(['weighing', 'gas injection', 'strokes from here to empty']);
    expect(worth[0]!.drop).toBeCloseTo(2.5 - 0.1994, 3);
    expect(worth[0]!.crewMinutes).toBe(28);
    expect(worth[0]!.dropPerMinute).toBeCloseTo((2.5 - 0.1994) / 28, 5);
  });

  it('has no drop where nothing is known, and then looks at doubt and minutes', () => {
    const worth = worthOfGaugings({ presentU: null }, ways);
    expect(worth[0]!.way).toBe('weighing');
    expect(worth.map(({ drop, dropPerMinute }) => [drop, dropPerMinute])).toEqual([
      [null, null],
      [null, null],
      [null, null],
    ]);
  });

  it('keeps a useless way in the list, with its verdict', () => {
    const worth = worthOfGaugings({ presentU: 0.3 }, ways);
    const useless = worth.filter(({ verdict }) => verdict === 'useless').map(({ way }) => way);
    expect(useless.sort()).toEqual(['gas injection', 'strokes from here to empty']);
    expect(worth).toHaveLength(3);
  });

  it('refuses a way that takes no time', () => {
    expect(() => worthOfGaugings({ presentU: 1 }, [{ way: 'wish', u: 1, minutes: 0 }])).toThrow(OutsideRange);
  });
});
