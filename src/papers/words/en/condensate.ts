// English for the sheet of condensate.
import type {
  CondensateFound,
  CondensateRun,
  CondensateSheet,
  CondensateVerdict,
} from '../../sheets/condensate.ts';
import { counted, listed } from './said.ts';

export const condensateLabels = {
  title:
    'CONDENSATE: what each day should have brought by what was known then, and what it brought; missing is the difference, below 0 more came.',
  day: 'Day',
  people: 'people',
  expected: 'expected',
  collected: 'collected',
  shortfall: 'missing',
  verdict: 'beyond ±',
  none: 'No day has been closed by a reading of the condensers yet.',
  /** Of one kind of run, once. */
  'less came':
    'The air hardly holds any of it (its humidity is reckoned in): it went to another condenser or to a cold surface, or people gave off less, or the counter is wrong.',
  'more came':
    'A leak inside the cabin, exercise, or people who are on no roster bring more; so does water that dries.',
} as const;

export const saidVerdict = (verdict: CondensateVerdict): string => (verdict === 'as expected' ? '' : verdict);

/** `4`, or `6.98` in a day on which somebody came or went. */
export function saidPeople({
  personDays,
  days,
}: {
  readonly personDays: number;
  readonly days: number;
}): string {
  const people = personDays / days;
  return Number.isInteger(Math.round(people * 100) / 100) ? `${Math.round(people)}` : people.toFixed(2);
}

export function saidDays({ firstDay, lastDay }: Pick<CondensateRun, 'firstDay' | 'lastDay'>): string {
  return firstDay === lastDay ? `Day ${firstDay}` : `Days ${firstDay} to ${lastDay}`;
}

export function runInWords(run: CondensateRun, total: string): string {
  const amount = run.verdict === 'less came' ? 'less came than expected' : 'more came than expected';
  return `${saidDays(run)}: ${total} ${amount}.`;
}

export function foundInWords(found: readonly CondensateFound[], total: string): string {
  const stores = [...new Set(found.map(({ store }) => store))];
  const days = [...new Set(found.map(({ day }) => `Day ${day}`))];
  return `Found since, collected without a meter: ${total} in ${listed(stores)} (${listed(days)}).`;
}

export function rateInWords({ taughtBy }: CondensateSheet, said: { rate: string; norm: string }): string {
  return taughtBy === 0
    ? `A person and day: ${said.norm} by the outpost file; no day has taught otherwise yet.`
    : `A person and day: ${said.rate}, learned from ${counted(taughtBy, 'day')}; by the outpost file ${said.norm}.`;
}

export function judgedInWords({ judged }: CondensateSheet): string {
  return `Of ${counted(judged.days, 'day')} in this book, nothing is missing or too much within the ± on ${judged.held}; by chance alone 1 in 20 lies beyond it.`;
}
