// The time of day at which an outpost does a thing: an act at an hour at which it was never done here is asked about.
import type { AnyEntry } from '../../book/index.ts';
import { type DayRule, dayOf, dayStartUtcMs, msPerMinute } from '../../ground/units/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';
import { learn } from './habits.ts';
import { storeOfBody } from './times.ts';

/** Fewer acts than this make no habit. Ours, no source. */
const LEAST_ACTS = 3;
/** A habit keeps to a stretch of the day that is no longer than this, else it is none. Ours, no source. */
const LONGEST_HABIT_MIN = 360;
/** So far outside of that stretch is asked about. Ours, no source: half of the smallest slip of a clock that we look for. */
const OUTSIDE_MIN = 165;
const DAY_MIN = 1440;

/** Asks about the hour of an act that people plan; what a store or a counter calls for comes at any hour. */
export function askHour(fold: Fold, entry: AnyEntry): void {
  const act = actOf(fold, entry);
  if (act === null) return;
  const minute = minuteOfDay(entry.happenedAtMs, fold.dayRule);
  const known = fold.habits.minutes.get(act) ?? [];
  const habit = habitOf(known, minute);
  if (habit !== null) {
    const data = {
      why: 'unusual hour',
      minute,
      fromMinute: habit.from,
      toMinute: habit.to,
      count: known.length,
    };
    noteEntry(fold, entry, {
      code: 'time-implausible',
      severity: 'act-today',
      store: storeOfBody(entry),
      data,
    });
    // Done there twice, it is a habit as well.
    if (!fold.habits.oddHours.has(act)) {
      fold.habits.oddHours.set(act, minute);
      return;
    }
  }
  fold.habits.oddHours.delete(act);
  learn(fold.habits.minutes, act, minute);
}

/** Kinds of acts that have an hour; flows by the kinds of the two stores, results by where the water was drawn. */
function actOf(fold: Fold, { kind, body }: AnyEntry): string | null {
  switch (kind) {
    case 'movement':
    case 'run-pause':
    case 'run-finish': {
      const from = fold.stores.get(body.from ?? '')?.facts.kind;
      const to = fold.stores.get(body.to ?? '')?.facts.kind;
      return from === undefined || to === undefined ? null : `${from} into ${to}`;
    }
    case 'push':
      return 'push';
    case 'result':
      return body.point === undefined
        ? 'results of stores'
        : `results of ${body.point} ${body.values.length}`;
    case 'sample':
    case 'pvt':
      return kind;
    default:
      return null;
  }
}

/** Where the habit lies, if the minute is far outside of it; null if it is not, or if there is no habit. */
function habitOf(known: readonly number[], minute: number): { from: number; to: number } | null {
  if (known.length < LEAST_ACTS) return null;
  // Around the clock from the first one, so that a habit may lie across midnight.
  const [origin = 0] = known;
  const around = (value: number) => {
    const apart = (((value - origin) % DAY_MIN) + DAY_MIN) % DAY_MIN;
    return apart > DAY_MIN / 2 ? apart - DAY_MIN : apart;
  };
  const places = known.map(around);
  const [from, to] = [Math.min(...places), Math.max(...places)];
  if (to - from > LONGEST_HABIT_MIN) return null;
  const at = around(minute);
  const outside = Math.max(from - at, at - to, 0);
  const inDay = (value: number) => (((value + origin) % DAY_MIN) + DAY_MIN) % DAY_MIN;
  return outside > OUTSIDE_MIN ? { from: inDay(from), to: inDay(to) } : null;
}

function minuteOfDay(utcMs: number, rule: DayRule): number {
  const midnight = { ...rule, lineMinuteOfDay: 0 };
  return Math.floor((utcMs - dayStartUtcMs(dayOf(utcMs, midnight), midnight)) / msPerMinute);
}
