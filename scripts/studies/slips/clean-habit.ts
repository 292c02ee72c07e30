// What differs from one simulated outpost to the next: crew, rates, meters, hours, visits, what is left out on a day.
import type { Chance } from '../../../src/ground/maths/index.ts';

export interface Habit {
  readonly people: number;
  readonly guests: number;
  readonly visitFrom: number;
  readonly visitTo: number;
  readonly totaliserFrom: number;
  readonly tapL: number;
  readonly tapSd: number;
  readonly vapourL: number;
  readonly feedL: number;
  readonly flushes: number;
  readonly urineL: number;
  readonly strokeL: number;
  readonly productBias: number;
  readonly fillBias: number;
  readonly hoseLPerMin: number;
  readonly lineJitterMin: number;
  readonly swapMin: number;
  readonly fillHour: number;
  readonly pushHour: number;
  /** Days with a quarter more at the tap. */
  readonly spikes: readonly number[];
  readonly weighDays: readonly number[];
  /** A line without a stroke count; 0: none. */
  readonly missedDay: number;
  /** First day of a cabin pressure that was lowered for two days; 0: none. */
  readonly windowFrom: number;
  readonly fullAtL: (chance: Chance) => number;
  /** From some day on people flush half as often. */
  readonly flushFactor: (day: number) => number;
  /** Part of a day's use that falls into a stretch of it: evenly, and at three meals. */
  readonly useShare: (minuteOfDay: number, lengthMin: number) => number;
  readonly awakeShare: (minuteOfDay: number, lengthMin: number) => number;
}

const WAKE_MIN = 360;
const SLEEP_MIN = 1260;
const AWAKE_MIN = SLEEP_MIN - WAKE_MIN;
/** 07:30, 12:30 and 19:00, an hour each. */
const MEALS = [450, 750, 1140];
const MEAL_MIN = 60;

export function habitOf(chance: Chance): Habit {
  const between = (low: number, high: number) => low + (high - low) * chance.uniform();
  const day = (low: number, high: number) => low + chance.integerBelow(high - low + 1);
  const maybe = (value: number) => (chance.uniform() < 0.5 ? value : 0);
  const mealShare = between(0, 0.5);
  const halvedFrom = maybe(day(12, 22));
  const visitFrom = maybe(day(14, 20));
  const awakeShare = (minute: number, length: number) =>
    minute >= WAKE_MIN && minute < SLEEP_MIN ? length / AWAKE_MIN : 0;
  return {
    people: day(2, 4),
    guests: day(1, 3),
    visitFrom,
    visitTo: visitFrom === 0 ? 0 : visitFrom + day(4, 8),
    totaliserFrom: between(0, 999),
    tapL: between(2.4, 3),
    tapSd: between(0.02, 0.07),
    vapourL: between(1.62, 1.78),
    feedL: between(2.6, 3.1),
    flushes: between(5, 7),
    urineL: between(1.35, 1.5),
    strokeL: between(0.0244, 0.0254),
    productBias: between(0.993, 1.007),
    fillBias: between(0.985, 1.01),
    hoseLPerMin: between(1.2, 1.38),
    lineJitterMin: between(0, 25),
    swapMin: day(1, 15),
    fillHour: between(8.5, 13),
    pushHour: between(13, 18),
    spikes: [day(4, 12), day(13, 22), day(23, 27)],
    weighDays: [day(3, 10), day(11, 17), day(18, 27)],
    missedDay: maybe(day(10, 25)),
    windowFrom: maybe(day(12, 24)),
    fullAtL: (each) => 20.3 + 0.2 * each.normal(),
    flushFactor: (at) => (halvedFrom > 0 && at >= halvedFrom ? 0.5 : 1),
    awakeShare,
    useShare: (minute, length) => {
      const isMeal = MEALS.some((from) => minute >= from && minute < from + MEAL_MIN);
      return (
        (1 - mealShare) * awakeShare(minute, length) +
        (isMeal ? (mealShare * length) / (MEALS.length * MEAL_MIN) : 0)
      );
    },
  };
}
