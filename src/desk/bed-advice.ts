// Change a bed now or wait: its date against the next reading, the spares on the shelf and the next visit.
import type { Position } from '../account/index.ts';
import { dayOf } from '../ground/units/index.ts';
import type { Service } from '../outpost/index.ts';
import {
  adviceInWords,
  type BedAdvice,
  type BedDates,
  type BedDecision,
  type BedVerdict,
} from '../papers/index.ts';
import { datesOf } from './bed-parameter.ts';
import type { DatedTrend } from './beds.ts';

/** The quantity whose limit is met first: of those that rise if one does, else of all. */
export function soonest(trends: readonly DatedTrend[]): DatedTrend | null {
  const dated = trends.filter(({ date }) => date !== null);
  const rising = dated.filter(({ trend }) => trend.moves === 'rising');
  const middle = ({ date }: DatedTrend): number => date?.ms.q50 ?? Number.POSITIVE_INFINITY;
  const [first] = [...(rising.length > 0 ? rising : dated)].sort((a, b) => middle(a) - middle(b));
  return first ?? null;
}

interface Weighed {
  readonly trends: readonly DatedTrend[];
  readonly spares: BedDecision['spares'];
}

export function adviceOf(position: Position, of: Weighed): BedAdvice {
  const decision = decisionOf(position, of);
  return { ...decision, texts: adviceInWords(decision) };
}

function decisionOf(position: Position, of: Weighed): BedDecision {
  const { trends, spares } = of;
  const first = soonest(trends);
  const visit = nextVisit(position);
  if (first === null)
    return { verdict: 'no dates', parameter: null, dates: null, nextReadingDay: null, spares, visit };
  const dates = datesOf(first.date, position.dayRule);
  const nextReadingDay = nextReading(position, first);
  const verdict =
    first.trend.moves === 'rising'
      ? verdictOf(dates, nextReadingDay, dayOf(position.atMs, position.dayRule))
      : 'no trend';
  return { verdict, parameter: first.trend.parameter, dates, nextReadingDay, spares, visit };
}

/** A bed is not left to a date that is likelier past than not before anybody looks again. */
function verdictOf(dates: BedDates | null, nextReadingDay: number | null, today: number): BedVerdict {
  const next = nextReadingDay ?? today;
  if (dates?.q50 != null && Math.floor(dates.q50.day) <= next) return 'change now';
  return dates?.q10 != null && Math.floor(dates.q10.day) <= next ? 'read sooner' : 'wait';
}

/** By the service of the outpost file: oftener once the reading is raised. Null where the file has none for it. */
function nextReading({ index, dayRule }: Position, { trend }: DatedTrend): number | null {
  const last = trend.readings.at(-1);
  if (last === undefined) return null;
  const named = index.outpost.service.filter(({ id }) =>
    id.toLowerCase().includes(trend.parameter.toLowerCase()),
  );
  const isRaised = ({ whenAboveMgPerL }: Service): boolean =>
    whenAboveMgPerL !== undefined && last.value > whenAboveMgPerL;
  const chosen = named.find(isRaised) ?? named.find(({ whenAboveMgPerL }) => whenAboveMgPerL === undefined);
  return chosen === undefined ? null : dayOf(last.atMs, dayRule) + Math.round(chosen.everyDays);
}

/** The next one that arrives from today on. */
function nextVisit({ visits, atMs, dayRule }: Position): BedDecision['visit'] {
  const today = dayOf(atMs, dayRule);
  const [next] = visits
    .filter(({ aboard, berthDay }) => !aboard && berthDay >= today)
    .sort((a, b) => a.berthDay - b.berthDay);
  return next === undefined ? null : { visit: next.visit, day: next.berthDay };
}
