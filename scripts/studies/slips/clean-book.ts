// Clean logs by chance: a small simulation of the practice outpost under other crews, habits and days, that writes what a careful keeper would.
import { type Chance, seededChance } from '../../../src/ground/maths/index.ts';
import { type Habit, habitOf } from './clean-habit.ts';
import { type Line, PRACTICE, timeOf } from './field-log.ts';

const MINUTE_MS = 60_000;
const DAY_MIN = 1440;
const STEP_MIN = 5;
const DAY_ONE_MS = Date.UTC(2147, 2, 1);
const LINE_MIN = 21 * 60;

interface Vessel {
  volumeL: number;
  grade: string;
  emptied: boolean;
}

/** What a store was said to hold: some lines are held back and written a day's work later. */
interface Draft {
  readonly minute: number;
  readonly kind: string;
  readonly body: Record<string, unknown>;
}

const round = (value: number, digits: number): number => Number(value.toFixed(digits));

class Outpost {
  readonly chance: Chance;
  readonly habit: Habit;
  readonly vessels = new Map<string, Vessel>();
  readonly on = { tap: 'C-04', technical: 'C-10', waste: 'W-01' };
  drafts: Draft[] = [];
  minute = 0;
  people: number;
  total: number;
  /** Amounts since the last line that had a reading, as they truly were. */
  since = { tapL: 0, productL: 0, feedL: 0, flushes: 0 };
  pb = 5;
  kb = 4;
  reserve: { fromMinute: number; volumeL: number } | null = null;

  constructor(seed: number) {
    this.chance = seededChance({ seed });
    this.habit = habitOf(this.chance);
    this.people = this.habit.people;
    this.total = this.habit.totaliserFrom;
  }

  normal(mean: number, sd: number): number {
    return mean + sd * this.chance.normal();
  }

  say(kind: string, body: Record<string, unknown>, minute = this.minute): void {
    this.drafts.push({ minute: Math.round(minute), kind, body });
  }

  vessel(id: string): Vessel {
    const vessel = this.vessels.get(id);
    if (vessel === undefined) throw new Error(`no store ${id}`);
    return vessel;
  }

  /** The next store that is ready for a port, if there is one. */
  ready(prefix: string, fits: (vessel: Vessel) => boolean): string | undefined {
    const taken = new Set(Object.values(this.on));
    return [...this.vessels].find(
      ([id, vessel]) => id.startsWith(prefix) && !taken.has(id) && fits(vessel),
    )?.[0];
  }

  counters(which: 'tap' | 'technical'): Record<string, number> {
    const { strokeL, productBias } = this.habit;
    return which === 'tap'
      ? {
          dispenser_strokes: Math.round(this.since.tapL / strokeL),
          product_meter_L: round(this.since.productL * productBias, 2),
        }
      : { electrolyser_feed_L: round(this.since.feedL, 2), flushes: Math.round(this.since.flushes) };
  }
}

/** A log of so many days, its lines in the order of writing. */
export function cleanBook(seed: number, days: number): Line[] {
  const outpost = new Outpost(seed);
  const lines: Line[] = [];
  const write = (draft: Draft) => {
    const day = Math.floor(draft.minute / DAY_MIN) + 1;
    const t = timeOf(DAY_ONE_MS + draft.minute * MINUTE_MS);
    lines.push({
      id: `E${String(lines.length + 1).padStart(4, '0')}`,
      t,
      day,
      kind: draft.kind,
      ...draft.body,
    } as unknown as Line);
  };
  lines.push(opening(outpost));
  for (let day = 1; day <= days; day++) {
    simulateDay(outpost, day);
    const [line, ...others] = outpost.drafts.sort(
      (a, b) => Number(b.kind === 'daily') - Number(a.kind === 'daily') || a.minute - b.minute,
    );
    if (line !== undefined) write(line);
    for (const draft of others) write(draft);
    outpost.drafts = [];
  }
  return lines;
}

function opening(outpost: Outpost): Line {
  const [first] = PRACTICE;
  if (first === undefined) throw new Error('the practice log is empty');
  const stores = (
    first['stores'] as { id: string; grade: string; litres: number; sd_L: number; fill_L?: number }[]
  ).map((told) => {
    const litres =
      told.litres > 15 && told.fill_L !== undefined ? round(outpost.normal(20.4, 0.15), 1) : told.litres;
    const truth = Math.max(0, outpost.normal(litres, told.litres === 0 ? 0 : Math.min(told.sd_L, 0.3)));
    if (/^[CWFV]/.test(told.id))
      outpost.vessels.set(told.id, { volumeL: truth, grade: told.grade, emptied: litres === 0 });
    return { ...told, litres, ...(told.sd_L > 1 && told.id.startsWith('C') && { sd_L: 0.3 }) };
  });
  outpost.minute = -180;
  return {
    ...first,
    people: outpost.people,
    stores,
    condensate_totaliser_L: round(outpost.total, 1),
  } as Line;
}

function simulateDay(outpost: Outpost, day: number): void {
  const { habit } = outpost;
  const jitterMin = outpost.normal(0, habit.lineJitterMin / STEP_MIN);
  const endMin = (day - 1) * DAY_MIN + LINE_MIN + Math.round(jitterMin) * STEP_MIN;
  const tapADay =
    habit.tapL *
    (1 + habit.tapSd * outpost.chance.normal()) *
    (day % 7 === 0 ? 1.04 : 1) *
    (habit.spikes.includes(day) ? 1.25 : 1);
  const vapourADay = habit.vapourL * (1 + 0.035 * outpost.chance.normal());
  const feedADay = habit.feedL * (1 + 0.01 * outpost.chance.normal());
  const planned = plannedOf(outpost, day);
  for (; outpost.minute < endMin; outpost.minute += STEP_MIN) {
    for (const act of planned)
      if (act.minute >= outpost.minute && act.minute < outpost.minute + STEP_MIN) act.run();
    step(outpost, { tapADay, vapourADay, feedADay });
  }
  writeLine(outpost, day, endMin);
}

interface Rates {
  readonly tapADay: number;
  readonly vapourADay: number;
  readonly feedADay: number;
}

/** Five minutes of an outpost: vapour becomes product, people drink and flush, waste gathers. */
function step(outpost: Outpost, { tapADay, vapourADay, feedADay }: Rates): void {
  const { habit, since, people } = outpost;
  const part = STEP_MIN / DAY_MIN;
  const use = habit.useShare(((outpost.minute % DAY_MIN) + DAY_MIN) % DAY_MIN, STEP_MIN);
  const awake = habit.awakeShare(((outpost.minute % DAY_MIN) + DAY_MIN) % DAY_MIN, STEP_MIN);
  const condensateL = vapourADay * people * part;
  outpost.total += condensateL;
  outpost.kb += condensateL;
  const treatedL = Math.max(0, outpost.kb - 4);
  outpost.kb -= treatedL;
  since.productL += treatedL * 0.965;
  outpost.pb += treatedL * 0.965;
  const flushes = habit.flushes * people * awake * habit.flushFactor(outpost.minute / DAY_MIN);
  const feedL = Math.min(feedADay * Math.min(people / 4, 1.59), 4.6) * awake;
  since.flushes += flushes;
  since.feedL += feedL;
  drawTap(outpost, tapADay * people * use);
  drawTechnical(outpost, feedL + flushes * 0.05);
  outpost.vessel(outpost.on.waste).volumeL +=
    flushes * 0.05 + treatedL * 0.035 + habit.urineL * people * part;
  if (outpost.vessel(outpost.on.waste).volumeL >= habit.fullAtL(outpost.chance)) wasteFull(outpost);
}

function drawTap(outpost: Outpost, volumeL: number): void {
  outpost.since.tapL += volumeL;
  const fromBuffer = Math.min(volumeL, Math.max(0, outpost.pb - 0.3));
  outpost.pb -= fromBuffer;
  const restL = volumeL - fromBuffer;
  if (outpost.on.tap === '') {
    if (restL > 0) {
      outpost.reserve ??= { fromMinute: outpost.minute, volumeL: 0 };
      outpost.reserve.volumeL += restL;
    }
    return;
  }
  const vessel = outpost.vessel(outpost.on.tap);
  vessel.volumeL -= restL;
  if (vessel.volumeL <= 0.6 + 0.1 * outpost.chance.normal()) swap(outpost, 'tap', 'dispenser feed', 'D');
}

function drawTechnical(outpost: Outpost, volumeL: number): void {
  if (outpost.on.technical === '') return;
  const vessel = outpost.vessel(outpost.on.technical);
  vessel.volumeL -= volumeL;
  if (vessel.volumeL <= 0.6 + 0.1 * outpost.chance.normal())
    swap(outpost, 'technical', 'electrolyser/flush feed', 'T');
}

/** Empty, counters first; the next full one takes its place at once or some minutes later. */
function swap(outpost: Outpost, which: 'tap' | 'technical', port: string, grade: string): void {
  const old = outpost.on[which];
  outpost.say('container_empty', {
    store: old,
    port,
    residual_L: 0.6,
    residual_sd_L: 0.2,
    counters: outpost.counters(which),
    crew_min: 12,
  });
  outpost.vessel(old).emptied = true;
  const next = outpost.ready(
    'C-',
    ({ grade: of, emptied, volumeL }) => of === grade && !emptied && volumeL > 5,
  );
  outpost.on[which] = next ?? '';
  if (next !== undefined)
    outpost.say(
      'hookup',
      { store: next, port, crew_min: 8 },
      outpost.minute + outpost.chance.integerBelow(outpost.habit.swapMin),
    );
}

function wasteFull(outpost: Outpost): void {
  outpost.say('waste_full', { store: outpost.on.waste, litres: 20.3, crew_min: 15 });
  const next = outpost.ready('W-', ({ volumeL }) => volumeL < 15);
  if (next === undefined) throw new Error('no waste container is left');
  outpost.on.waste = next;
  outpost.say('hookup', { store: next, port: 'waste receptacle', crew_min: 8 }, outpost.minute + 5);
}

interface Planned {
  readonly minute: number;
  readonly run: () => void;
}

/** What people have planned for a day: fills, pushes, readings of quality, weighings, visits. */
function plannedOf(outpost: Outpost, day: number): Planned[] {
  const { habit, chance } = outpost;
  const at = (hour: number, sd: number) => (day - 1) * DAY_MIN + Math.round(outpost.normal(hour * 60, sd));
  const planned: Planned[] = [];
  const plan = (minute: number, run: () => void) =>
    planned.push({ minute: Math.min(minute, (day - 1) * DAY_MIN + LINE_MIN - 30), run });
  if (day === 6) plan(at(11.5, 30), () => berth(outpost));
  const isFilling = day >= 7 && (day <= 9 || day % 3 === 0);
  if (isFilling) for (let k = 0; k < 3; k++) plan(at(habit.fillHour + k, 6), () => fill(outpost, day));
  if (day === 10) plan(at(9.5, 20), () => relabel(outpost));
  if (day > 10 && day % 3 === 2) plan(at(habit.pushHour, 25), () => push(outpost));
  if (day % 3 === 2)
    plan(at(16, 20), () =>
      outpost.say('sample_result', {
        sample: `TOC-${day}`,
        point: 'product',
        TOC_mg_L: round(outpost.normal(0.8, 0.1), 1),
        conductivity_uS_cm: Math.round(outpost.normal(88, 3)),
        crew_min: 20,
      }),
    );
  if (day % 7 === 0)
    plan(at(17, 25), () =>
      outpost.say('plate_count', { point: 'dispenser cold', cfu_mL: chance.integerBelow(6), crew_min: 30 }),
    );
  if (habit.weighDays.includes(day)) plan(at(10.2, 60), () => weigh(outpost));
  if (day === habit.visitFrom) plan(at(18, 60), () => arrive(outpost));
  if (day === habit.visitTo) plan(at(20, 20), () => depart(outpost));
  if (day === habit.windowFrom)
    plan(at(8, 30), () =>
      outpost.say('cabin_pressure', {
        before_kPa_abs: 101.2,
        after_kPa_abs: 97.3,
        until: timeOf(DAY_ONE_MS + ((day + 1) * DAY_MIN + 330) * MINUTE_MS),
      }),
    );
  return planned;
}

function berth(outpost: Outpost): void {
  const line = PRACTICE.find(({ kind }) => kind === 'berth');
  const stores = (line?.['stores'] ?? []) as { id: string; grade: string; litres: number }[];
  for (const { id, litres, grade } of stores)
    outpost.vessels.set(id, { volumeL: litres, grade, emptied: false });
  outpost.say('berth', { vehicle: 'Pannier 8', planned_undock_day: 51, stores });
}

/** From the drinking tank while it lasts, and from the technical one when a container of either grade stands empty. */
function fill(outpost: Outpost, day: number): void {
  const { habit, chance } = outpost;
  const from = day < 10 ? 'FA' : 'FB';
  const tank = outpost.vessel(from);
  // Water keeps the worse of two grades: drinking water goes only where nothing else was.
  const to = outpost.ready(
    'C-',
    ({ emptied, volumeL, grade }) => emptied && volumeL < 2 && (day >= 10 || grade !== 'T'),
  );
  if (to === undefined || tank.volumeL < 30) return;
  const vessel = outpost.vessel(to);
  const litres = round(20.5 - (chance.uniform() < 0.15 ? 8 * chance.uniform() : 0), 1);
  const minutes = round((litres / habit.hoseLPerMin) * (1 + 0.015 * chance.normal()), 1);
  const start = outpost.minute - Math.ceil(minutes);
  outpost.say('transfer', {
    ...{
      start: timeOf(DAY_ONE_MS + start * MINUTE_MS),
      from,
      to,
      litres,
      grade: tank.grade,
      hose: 'H-1',
      flow_min: minutes,
    },
    ...{ method: 'flow meter', dP_kPa: round(outpost.normal(50, 0.4), 1), crew_min: 24 },
    ...(vessel.grade !== '-' && { was: `${vessel.grade}0` }),
  });
  const trueL = litres * habit.fillBias + 0.12 * chance.normal();
  tank.volumeL -= trueL;
  outpost.vessels.set(to, { volumeL: vessel.volumeL + trueL, grade: tank.grade, emptied: false });
}

function relabel(outpost: Outpost): void {
  outpost.say('relabel', {
    store: 'FA',
    from_label: 'drinking',
    to_label: 'WASTE',
    two_person: true,
    crew_min: 10,
  });
  // What was left in it goes over into containers before, and what cannot be pumped stays.
  outpost.vessel('FA').grade = 'W';
}

/** Everything in the waste containers, but for their rests, into the freighter's waste tank. */
function push(outpost: Outpost): void {
  const { chance } = outpost;
  const full = [...outpost.vessels].filter(([id, { volumeL }]) => id.startsWith('W-') && volumeL > 4);
  const tank = ['FA', 'FB'].find(
    (id) => outpost.vessel(id).grade === 'W' && outpost.vessel(id).volumeL < 130,
  );
  if (full.length === 0 || tank === undefined) return;
  const from = full.slice(0, 3).map(([id, vessel]) => {
    const litres = round(Math.max(0, vessel.volumeL - 0.6 + 0.1 * chance.normal()), 1);
    vessel.volumeL = 0.6;
    return { id, litres };
  });
  const sumL = from.reduce((sum, { litres }) => sum + litres, 0);
  outpost.vessel(tank).volumeL += sumL;
  const litres = round(sumL, 1);
  outpost.say('waste_transfer', {
    from,
    to: [{ id: tank, litres }],
    litres,
    sd_L: 0.3,
    method: 'flow meter',
    hose: 'H-3',
    crew_min: 52,
  });
}

function weigh(outpost: Outpost): void {
  const taken = new Set(Object.values(outpost.on));
  const full = [...outpost.vessels].filter(
    ([id, { emptied }]) => id.startsWith('C-') && !emptied && !taken.has(id),
  );
  const found = full[outpost.chance.integerBelow(Math.max(1, full.length))];
  if (found === undefined) return;
  const litres = round(outpost.normal(found[1].volumeL, 0.17), 1);
  outpost.say('weigh', { store: found[0], litres, sd_L: 0.2, method: 'oscillation balance', crew_min: 14 });
}

function arrive(outpost: Outpost): void {
  const { guests, visitTo } = outpost.habit;
  outpost.people += guests;
  outpost.say('dock', {
    vehicle: 'Coracle 12',
    people_arrive: guests,
    planned_undock_day: visitTo,
    water_bags: [{ id: 'V-1', capacity_L: 10, residual_L: 0.2, grade: 'I', litres: 9.8, sd_L: 0.1 }],
  });
}

function depart(outpost: Outpost): void {
  outpost.people -= outpost.habit.guests;
  outpost.say('undock', { vehicle: 'Coracle 12', people_depart: outpost.habit.guests, took: ['V-1'] });
}

function writeLine(outpost: Outpost, day: number, minute: number): void {
  const { habit } = outpost;
  if (outpost.reserve !== null) {
    const { fromMinute, volumeL } = outpost.reserve;
    const litres = round(volumeL, 1);
    if (litres > 0)
      outpost.say(
        'reserve_draw',
        {
          store: 'R1',
          to: 'dispenser feed',
          since: timeOf(DAY_ONE_MS + fromMinute * MINUTE_MS),
          litres,
          by_counter: 'strokes less product',
        },
        minute - 5,
      );
    outpost.reserve = null;
  }
  const wholeDay =
    day === habit.visitFrom
      ? habit.people
      : day === habit.visitTo
        ? habit.people + habit.guests
        : outpost.people;
  const { dispenser_strokes, product_meter_L } = outpost.counters('tap');
  const isInWindow = habit.windowFrom > 0 && (day === habit.windowFrom || day === habit.windowFrom + 1);
  const isMissed = day === habit.missedDay;
  outpost.say(
    'daily',
    {
      ...{ people: wholeDay, condensate_totaliser_L: round(outpost.total % 1000, 1), product_meter_L },
      ...{ dispenser_strokes: isMissed ? null : dispenser_strokes, ...outpost.counters('technical') },
      ...{ RH_percent: round(outpost.normal(48, 1.5), 1), T_C: round(outpost.normal(22, 0.25), 1) },
      P_kPa_abs: round(outpost.normal(isInWindow ? 97.3 : 101.1, 0.15), 1),
      crew_min: 18,
    },
    minute,
  );
  outpost.since = { tapL: isMissed ? outpost.since.tapL : 0, productL: 0, feedL: 0, flushes: 0 };
}
