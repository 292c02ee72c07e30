// Expected condensate and its shortfall: the practice outpost against its marking key, no look-ahead, and honest doubts.
import { beforeAll, describe, expect, test } from 'vitest';
import { bookOf } from '../../tests/journeys/checks.ts';
import { HOLM } from '../../tests/journeys/holm.ts';
import { AIRY_HOLM, airyLine, VAPOUR_L_A_DAY } from '../../tests/journeys/holm-air.ts';
import { draftOf, emptyBook, keep } from '../../tests/journeys/kept.ts';
import { at, holmOpening, litres } from '../../tests/journeys/told.ts';
import { practiceEntries } from '../../tests/metamorphic/practice.ts';
import type { AnyDraft, AnyEntry, MemoryStore } from '../book/index.ts';
import { seededChance } from '../ground/maths/index.ts';
import { CondensateRate } from './condensate-rate.ts';
import { type Condensate, type CondensateDay, condensateOf } from './index.ts';

type Options = Parameters<typeof condensateOf>[1];

async function condensateIn(port: MemoryStore, options: Options = {}): Promise<Condensate> {
  const outcome = await condensateOf(port, options);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome));
  return outcome.condensate;
}

describe('the practice outpost', () => {
  const MG_PER_L = 997_800;
  /** Litres that went to the bag of the standby condenser: its marking key, `tests/reference` knows no more of it. */
  const TRUE_SHORTFALL_L = new Map([
    [18, 1.7],
    [19, 3.4],
    [20, 4.1],
    [21, 1.0],
  ]);
  /** An inside leak that nobody knew of. */
  const LEAKING = [27, 28, 29, 30, 31, 32, 33, 34];

  let entries: readonly AnyEntry[] = [];
  let port: MemoryStore;
  let days: readonly CondensateDay[] = [];
  let condensate: Condensate;
  beforeAll(async () => {
    entries = await practiceEntries();
    port = await bookOf([...entries].sort((a, b) => a.number - b.number));
    condensate = await condensateIn(port);
    days = condensate.days;
  });
  const litresOf = (mg: number) => mg / MG_PER_L;
  const u95L = ({ shortfallUMg }: CondensateDay) => litresOf(2 * shortfallUMg);

  test('has every day judged', () => {
    expect(days.map(({ day }) => day)).toEqual(Array.from({ length: 60 }, (_, k) => k + 1));
    expect(days.every(({ days: span }) => span === 1)).toBe(true);
  });

  test.each([...TRUE_SHORTFALL_L])(
    'Day %d: the shortfall is within its ± of the truth, %d L, and stands out',
    (day, truthL) => {
      const found = days[day - 1];
      if (found === undefined) throw new Error(`no Day ${day}`);
      expect(Math.abs(litresOf(found.shortfallMg) - truthL)).toBeLessThanOrEqual(u95L(found));
      expect(found.holdsZero).toBe(false);
    },
  );

  test('the ± is not blown up: below 0.6 L for four people once a fortnight has taught, and it is what days scatter by', () => {
    const quiet = days.filter(
      ({ day, personDays }) => personDays === 4 && day > 14 && !TRUE_SHORTFALL_L.has(day),
    );
    for (const day of quiet) expect(u95L(day)).toBeLessThan(0.6);
    const undisturbed = quiet.filter(({ day }) => !LEAKING.includes(day));
    const square = undisturbed.reduce(
      (sum, { shortfallMg, shortfallUMg }) => sum + (shortfallMg / shortfallUMg) ** 2,
      0,
    );
    const scatter = Math.sqrt(square / undisturbed.length);
    expect(scatter).toBeGreaterThan(0.7);
    expect(scatter).toBeLessThan(1.3);
  });

  test('on quiet days 19 in 20 hold 0', () => {
    const quiet = days.filter(({ day }) => !TRUE_SHORTFALL_L.has(day) && !LEAKING.includes(day));
    const held = quiet.filter(({ holdsZero }) => holdsZero).length;
    expect(quiet.length).toBe(48);
    expect(held).toBeGreaterThanOrEqual(44);
    expect(held).toBeLessThan(48);
  });

  test('visitors bring more doubt at first, and less as days teach', () => {
    const visited = days.filter(({ personDays }) => personDays > 6);
    expect(visited.length).toBe(7);
    expect(u95L(visited[0] as CondensateDay)).toBeGreaterThan(1.2);
    expect(u95L(visited.at(-1) as CondensateDay)).toBeLessThan(1.1);
  });

  test('the fault teaches nothing, and what the bag gave is found', () => {
    expect(
      condensate.found.map(({ store, massMg }) => [store, Math.round(litresOf(massMg) * 10) / 10]),
    ).toEqual([
      ['K-2', 6],
      ['K-2', 4.2],
    ]);
    expect(litresOf(condensate.rate.massMg)).toBeGreaterThan(1.69);
    expect(litresOf(condensate.rate.massMg)).toBeLessThan(1.76);
    expect(condensate.taughtBy).toBeGreaterThanOrEqual(53);
    expect(condensate.spreadFactor).toBeGreaterThan(0.8);
    expect(condensate.spreadFactor).toBeLessThan(1.2);
  });

  test('the leak is in the expectation of the day on which it was found, and of no day before', () => {
    const withLeak = days.filter(({ parts }) => parts.some(({ name }) => name === 'known leak'));
    expect(withLeak.map(({ day }) => day)).toEqual([34]);
  });

  test('no day looks ahead: each is the same where nothing later is known', async () => {
    let looked = 0;
    for (const day of days) {
      const line = entries.find(({ id }) => id === day.entry);
      if (line === undefined) throw new Error('a day without its line');
      const view = { asOfMs: line.happenedAtMs, knownAtMs: line.enteredAtMs };
      expect((await condensateIn(port, { view })).days.at(-1)).toEqual(day);
      looked += 1;
    }
    expect(looked).toBe(60);
  });

  test('taking entries in another order changes nothing', async () => {
    const again = await condensateIn(await bookOf([...entries].sort((a, b) => a.number - b.number)));
    expect(again).toEqual(condensate);
  });
});

/** Holm with an opening and lines that the condenser fills evenly. */
async function holm(
  lines: readonly {
    readonly day: number;
    readonly condensateL: number | null;
    readonly percent?: number | null;
    readonly enteredDay?: number;
  }[],
  more: readonly AnyDraft[] = [],
  outpost = AIRY_HOLM,
): Promise<Condensate> {
  const port = emptyBook();
  const atMs = at(0, 21);
  const drafts = [
    draftOf('outpost', { text: outpost }, { atMs, count: 1 }),
    draftOf('opening', holmOpening(), { atMs, count: 2 }),
    ...lines.map(({ day, condensateL, percent = 50, enteredDay = day }) =>
      draftOf('day-line', condensateL === null ? skipped(day) : airyLine(day, { condensateL, percent }), {
        atMs: at(day, 21),
        enteredAtMs: at(enteredDay, 21),
        count: 10 + day,
      }),
    ),
    ...more,
  ];
  await keep(
    port,
    [...drafts].sort((a, b) => a.enteredAtMs - b.enteredAtMs),
  );
  return await condensateIn(port);
}

const skipped = (day: number) => {
  const line = airyLine(day, { condensateL: 0, percent: 50 });
  return {
    ...line,
    readings: line.readings.map((each) =>
      each.instrument === 'condensate' ? { ...each, value: null } : each,
    ),
  };
};

/** The totaliser stood at 990 at the opening and rolls over at 1000. */
const total = (day: number, aDay = VAPOUR_L_A_DAY) => aDay * day;
const daysOf = (count: number) =>
  Array.from({ length: count }, (_, k) => ({ day: k + 1, condensateL: total(k + 1) }));

describe('an interval', () => {
  test('spans a day on which the condenser was not read, with the doubt of two', async () => {
    const [, second, two] = (
      await holm([...daysOf(2), { day: 3, condensateL: null }, { day: 4, condensateL: total(4) }])
    ).days;
    expect(two).toMatchObject({ day: 4, days: 2, personDays: 4 });
    expect(two?.collectedMg).toBeGreaterThan(1.9 * (second?.collectedMg ?? 0));
    expect(two?.shortfallUMg).toBeGreaterThan(second?.shortfallUMg ?? 0);
  });

  test('in which the counter fell is not judged', async () => {
    const { days } = await holm([
      ...daysOf(2),
      { day: 3, condensateL: total(2) - 2 },
      { day: 4, condensateL: total(2) - 2 + VAPOUR_L_A_DAY },
    ]);
    expect(days.map(({ day }) => day)).toEqual([1, 2, 4]);
  });

  test('takes what the air gave back or took up', async () => {
    const { days } = await holm([
      { day: 1, condensateL: total(1), percent: 50 },
      { day: 2, condensateL: total(2), percent: 40 },
      { day: 3, condensateL: total(3), percent: null },
    ]);
    const airOf = (day: number) => days[day - 1]?.parts.find(({ name }) => name === 'change of the air');
    // Ten points of humidity in 60 m³ at 20 °C are 0.104 kg.
    expect((airOf(2)?.massMg ?? 0) / 1e6).toBeCloseTo(0.104, 3);
    expect(airOf(3)?.massMg).toBe(0);
    expect(airOf(3)?.uMg).toBeGreaterThan(airOf(2)?.uMg ?? 0);
  });

  test('whose line was entered late teaches only from then on', async () => {
    const lines = daysOf(4).map((line) => ({ ...line, condensateL: total(line.day, 1.3 * VAPOUR_L_A_DAY) }));
    const inTime = await holm(lines);
    const late = await holm(lines.map((line) => (line.day === 1 ? { ...line, enteredDay: 3 } : line)));
    expect(late.days[1]?.expectedMg).toBeLessThan(inTime.days[1]?.expectedMg ?? 0);
    expect((late.days[3]?.expectedMg ?? 0) / (inTime.days[3]?.expectedMg ?? 1)).toBeCloseTo(1, 3);
  });
});

describe('water that people let into the cabin', () => {
  const movement = (to: string, use?: 'hygiene') =>
    draftOf(
      'movement',
      { from: 'C-04', to, amount: litres(2, 0.05), ...(use !== undefined && { use }) },
      { atMs: at(2, 10), count: 90 },
    );
  const partOn = ({ days }: Condensate, name: string) =>
    days.flatMap(({ day, parts }) =>
      parts.filter((part) => part.name === name).map(({ massMg }) => [day, massMg / 1e6]),
    );

  test('is expected to be collected', async () => {
    expect(partOn(await holm(daysOf(3), [movement('cabin air')]), 'water let into the cabin')).toEqual([
      [2, 2],
    ]);
  });

  test('for washing, past the dispenser, evaporates for the most part', async () => {
    expect(
      partOn(await holm(daysOf(3), [movement('people', 'hygiene')]), 'washing beside the dispenser'),
    ).toEqual([[2, 1.6]]);
  });

  test('by a leak that was told runs until it was found, or until the day on which it is looked at again', async () => {
    const explanation = (expiresDay?: number) =>
      draftOf(
        'explanation',
        {
          where: 'a seal',
          evidence: [],
          rateMgPerDay: 1_000_000,
          ...(expiresDay !== undefined && { expiresDay }),
        },
        { atMs: at(2, 9), count: 91 },
      );
    // 0.8 of it evaporates; from 21:00 to 9:00 is half a day.
    expect(partOn(await holm(daysOf(4), [explanation()]), 'known leak')).toEqual([[2, 0.4]]);
    const running = partOn(await holm(daysOf(4), [explanation(4)]), 'known leak');
    expect(running.map(([day]) => day)).toEqual([2, 3, 4]);
    expect(running[1]?.[1]).toBeCloseTo(0.8, 6);
    expect(running[2]?.[1]).toBeCloseTo(0.1, 6);
  });
});

describe('who is aboard', () => {
  const roster = (change: 'arrive' | 'depart', people: number, day: number, count: number) =>
    draftOf('roster', { change, people }, { atMs: at(day, 9), count });

  test('is counted to the hour where somebody came', async () => {
    const { days } = await holm(daysOf(3), [roster('arrive', 2, 2, 80)]);
    expect(days.map(({ personDays }) => personDays)).toEqual([2, 3, expect.closeTo(2, 6)]);
  });

  test('others than before are not known as well as those before', async () => {
    const stay = await holm(daysOf(12));
    const swap = await holm(daysOf(12), [roster('arrive', 2, 10, 80), roster('depart', 2, 10, 81)]);
    expect(swap.days[9]?.shortfallUMg).toBeGreaterThan(2 * (stay.days[9]?.shortfallUMg ?? 0));
    // Two days later they are known again.
    expect(swap.days[11]?.shortfallUMg).toBeLessThan(1.2 * (stay.days[11]?.shortfallUMg ?? 0));
  });
});

test.each([
  ['norm of vapour', HOLM.replace(/ {2}vapourCollectedLPerPersonDay: .*\n/, '')],
  ['counter of a condenser', HOLM.replace(/ {2}- \{ id: condensate,[^\n]*\n[^\n]*\n/, '')],
])('without a %s there is no expectation', async (missing, outpost) => {
  const port = emptyBook();
  await keep(port, [draftOf('outpost', { text: outpost }, { atMs: at(0, 21), count: 1 })]);
  expect(await condensateOf(port)).toEqual({ ok: false, missing });
});

test('a book without an outpost file has none either', async () => {
  expect(await condensateOf(emptyBook())).toEqual({ ok: false, findings: null });
});

describe('the doubt of what people give', () => {
  const norms = { rateKg: 1.7, rateU: 0.17, betweenDays: 0.04, restLessKg: 0.35, restLessU: 0.2 };

  /** Of many invented crews, each with rates of its own: how often the truth lay within ± 2 u, by parts of the doubt. */
  function heldShare(shrink: number): number {
    const chance = seededChance({ seed: 2147 });
    let [held, looked] = [0, 0];
    for (let crew = 0; crew < 60; crew += 1) {
      const rate = new CondensateRate(norms);
      const trueRate = norms.rateKg + norms.rateU * chance.normal();
      const trueLess = norms.restLessKg + norms.restLessU * chance.normal();
      for (let day = 1; day <= 60; day += 1) {
        const crewDays = { days: 1, personDays: 4, newcomerDays: 0, restDays: day % 7 === 0 ? 1 : 0 };
        rate.walk(1);
        const { kg, sharedU, ownU } = rate.expect(crewDays);
        const came =
          4 * trueRate -
          crewDays.restDays * trueLess +
          norms.betweenDays * norms.rateKg * 4 * chance.normal();
        if (Math.abs(came - kg) <= 2 * shrink * Math.sqrt(sharedU * sharedU + ownU * ownU)) held += 1;
        looked += 1;
        rate.teach(crewDays, { kg: came, u: 0 });
      }
    }
    expect(looked).toBe(3600);
    return held / looked;
  }

  test('holds the truth on 95 days of a hundred', () => {
    expect(heldShare(1)).toBeGreaterThan(0.94);
    expect(heldShare(1)).toBeLessThan(0.97);
  });

  test('a doubt of half the size would not', () => {
    expect(heldShare(0.5)).toBeLessThan(0.75);
  });

  const crew = { days: 1, personDays: 4, newcomerDays: 0, restDays: 0 };

  test('a day that is far off teaches nothing', () => {
    const rate = new CondensateRate(norms);
    for (let day = 0; day < 3; day += 1) expect(rate.teach(crew, { kg: 6.8, u: 0.1 })).toBe(true);
    const before = rate.rate;
    expect(rate.teach(crew, { kg: 2, u: 0.1 })).toBe(false);
    expect(rate.rate).toEqual(before);
    expect(rate.taught).toBe(3);
  });

  test('a norm that is far from this crew is mended by its first days', () => {
    const rate = new CondensateRate(norms);
    for (let day = 0; day < 10; day += 1) expect(rate.teach(crew, { kg: 4 * 2.6, u: 0.1 })).toBe(true);
    expect(rate.rate.kg).toBeCloseTo(2.6, 1);
  });
});
