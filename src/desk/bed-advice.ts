// Change a bed now or wait: its date against the next reading, the spares on the shelf and the next visit.
import type { Position } from '../account/index.ts';
import { dayOf, msPerDay } from '../ground/units/index.ts';
import type { Service } from '../outpost/index.ts';
import { adviceInWords, type BedAdvice, type BedDecision, type BedVerdict } from '../papers/index.ts';
import { datesOf } from './bed-parameter.ts';
import type { DatedTrend } from './dated-trend.ts';

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
  const nextMs = nextReadingMs(position, first);
  return {
    verdict: first.trend.moves === 'rising' ? verdictOf(first, nextMs ?? position.atMs) : 'no trend',
    parameter: first.trend.parameter,
    dates: datesOf(first.date, position.dayRule),
    nextReadingDay: nextMs === null ? null : dayOf(nextMs, position.dayRule),
    spares,
    visit,
  };
}

/** A bed is not left to a date that is likelier past than not before anybody looks again. */
function verdictOf({ date }: DatedTrend, nextMs: number): BedVerdict {
  const { q10, q50 } = date?.ms ?? { q10: null, q50: null };
  if (q50 !== null && q50 <= nextMs) return 'change now';
  return q10 !== null && q10 <= nextMs ? 'read sooner' : 'wait';
}

/** By the service of the outpost file: oftener once the reading is raised. Null where the file has none for it. */
function nextReadingMs({ index }: Position, { trend }: DatedTrend): number | null {
  const last = trend.readings.at(-1);
  if (last === undefined) return null;
  const named = index.outpost.service.filter(({ id }) =>
    id.toLowerCase().includes(trend.parameter.toLowerCase()),
  );
  const isRaised = ({ whenAboveMgPerL }: Service): boolean =>
    whenAboveMgPerL !== undefined && last.value > whenAboveMgPerL;
  const chosen = named.find(isRaised) ?? named.find(({ whenAboveMgPerL }) => whenAboveMgPerL === undefined);
  return chosen === undefined ? null : last.atMs + chosen.everyDays * msPerDay;
}

/** The next one that arrives from today on. */
function nextVisit({ visits, atMs, dayRule }: Position): BedDecision['visit'] {
  const today = dayOf(atMs, dayRule);
  const [next] = visits
    .filter(({ aboard, berthDay }) => !aboard && berthDay >= today)
    .sort((a, b) => a.berthDay - b.berthDay);
  return next === undefined ? null : { visit: next.visit, day: next.berthDay };
}
