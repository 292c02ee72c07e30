// English for what a reading would be worth, and for days at the rates of policy.
import type { CoverAtRateFigure, ReadingWay, ReadingWorth } from '../../sheets/worth.ts';

const acts: Readonly<Record<ReadingWay, (store: string) => string>> = {
  weighing: (store) => `weigh ${store}`,
  'gas injection': (store) => `gauge ${store}`,
  'sight glass': (store) => `look at the glass of ${store}`,
  'dip stick': (store) => `dip ${store}`,
  'level gauge': (store) => `read the level of ${store}`,
};

export const worthLabels = {
  best: 'BEST NEXT READING',
  /** In the facts of one store. */
  now: 'a reading now',
  noMinutes: 'minutes not in the outpost file',
  noCover: 'no cover hangs on it',
  noEnd: 'no late end, so no ±',
  asBefore: 'as before',
} as const;

/** `weigh C-07`. */
export function actOf({ way, store }: Pick<ReadingWorth, 'way' | 'store'>): string {
  return acts[way](store).replaceAll(' ', '\u00A0');
}

/** `14 min`, `10 min for 2 people`. */
export function minutesOf(task: ReadingWorth['task']): string {
  if (task === null) return worthLabels.noMinutes;
  const minutes = `${task.minutes}\u00A0min`;
  return task.people === 1 ? minutes : `${minutes} for ${task.people}\u00A0people`;
}

export function coverOfWorth({ grade, reach }: NonNullable<ReadingWorth['cover']>): string {
  return reach === 'free' ? `cover of ${grade} water` : `days of ${grade} water to the floor of the reserve`;
}

/** What the rates of policy take as given. */
export function ratesHead(people: number): string {
  return `With nothing made, ${people === 1 ? '1\u00A0person' : `${people}\u00A0people`} as now:`;
}

/** Free water, then the reserve besides, then, where water is only to live on, the reserve alone. */
export function rateText(
  { rate, litresPerPersonDay }: Pick<CoverAtRateFigure, 'rate' | 'litresPerPersonDay'>,
  days: { readonly free: string; readonly toFloor: string; readonly reserve: string },
): string {
  const each = `${litresPerPersonDay}\u00A0L`;
  return rate === 'planning'
    ? `at ${each} each a day (planning) ${days.free}, with the reserve to its floor ${days.toFloor}`
    : `at ${each} (survival) ${days.free}, to the floor ${days.toFloor}, the reserve alone ${days.reserve}`;
}
