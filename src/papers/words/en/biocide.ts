// English for what the sheet of a store tells of its biocide and of its own life.
import type {
  BiocideAge,
  BiocideDays,
  BiocideResult,
  BiocideSheet,
  LifeSheet,
  RedoseSheet,
  StandingLine,
} from '../../sheets/biocide.ts';
import { counted, saidValue } from './said.ts';

export const biocideLabels = {
  title: (biocide: string): string => `Biocide: ${biocide}`,
  life: 'Life',
  results: 'results of this water',
  level: { now: 'now', 'as read': 'as read last', 'not known': 'now' },
  rate: 'goes down by',
  ends: 'falls below the least',
  age: 'age',
  until: 'counts until',
  redose: 'to dose it again',
  line: 'line',
  fills: 'fillings',
  inUse: 'in use',
} as const;

const NOT_KNOWN = 'not known';

export function saidResults(results: readonly BiocideResult[]): string {
  if (results.length === 0) return 'none';
  return results
    .map(
      ({ ref, stamp, valueMgPerL, below }) =>
        `${below ? '<' : ''}${saidValue(valueMgPerL, 'mg/L')}, drawn ${stamp} (${ref})`,
    )
    .join('; ');
}

/** What stands behind the level: the limits of the outpost. */
export function saidLimits({ leastMgPerL, mostMgPerL }: BiocideSheet): string {
  const parts = [
    ...(leastMgPerL === null ? [] : [`least ${saidValue(leastMgPerL, 'mg/L')}`]),
    ...(mostMgPerL === null ? [] : [`most ${saidValue(mostMgPerL, 'mg/L')}`]),
  ];
  return parts.length === 0 ? 'no limit set: hold' : parts.join(', ');
}

const WHY_NO_RATE: Readonly<Record<Exclude<BiocideSheet['noRate'], null>, string>> = {
  'no results': 'no result of this water',
  'one result':
    'one result of this water; it takes two, some weeks apart, without a fill or a dose between them',
  'limits alone': 'all results lie below the limit of detection',
  'no instrument': 'the outpost file tells no instrument for it, so the ± of a result is not known',
  undetermined: 'the results do not determine it',
};

const SINCE_WHAT: Readonly<Record<BiocideAge['by'], string>> = {
  dose: 'since it was dosed',
  fill: 'since the water came in',
  opening: 'since the book began, or longer',
  delivery: 'since it was delivered, or longer',
};

/** Behind the figure: what it rests on. */
export function saidRateBasis({ ratedBy, ratedResults, ratedStores }: BiocideSheet): string {
  const own = `${counted(ratedResults, 'result')} of this store`;
  const kind = `${counted(ratedStores, 'store')} of its kind`;
  if (ratedBy === 'own') return `from ${own}`;
  return ratedBy === 'kind' ? `from ${kind}` : `from ${own} and ${kind}`;
}

export function saidNoRate({ noRate }: BiocideSheet): string {
  return `${NOT_KNOWN}: ${noRate === null ? 'nothing tells it' : WHY_NO_RATE[noRate]}`;
}

export function saidNoLevel({ results }: BiocideSheet): string {
  const last = results.at(-1);
  if (last === undefined) return `${NOT_KNOWN}: no result of this water`;
  return last.below ? `below ${saidValue(last.valueMgPerL, 'mg/L')} as read last` : NOT_KNOWN;
}

export function saidEnds({ q05, q50, q95 }: BiocideDays): string {
  return [
    `${dayWord(q05)} in 1 of 20 outcomes`,
    `${dayWord(q50)} in half of them`,
    `${dayWord(q95)} in 19 of 20`,
  ].join(', ');
}

function dayWord(day: number | null): string {
  return day === null ? 'by no day within a hundred years' : `by Day ${day}`;
}

export function saidAge({ days, since, by, mostDays, untilDay, isOver }: BiocideAge): string {
  const head = `${counted(Math.floor(days), 'day')}, ${SINCE_WHAT[by]} (${since})`;
  if (mostDays === null || untilDay === null) return `${head}; the outpost file names no age: hold`;
  const allowed = `it counts for ${counted(mostDays, 'day')}`;
  return isOver
    ? `${head}; ${allowed}, and that is over since Day ${untilDay}`
    : `${head}; ${allowed}, to Day ${untilDay}`;
}

export function saidUntil({ untilBy, untilDay, biocide }: BiocideSheet): string {
  if (untilBy === 'below least')
    return `no more: the ${biocide} is below the least. Hold it, dose it, sample it`;
  if (untilBy === 'not known' || untilDay === null)
    return 'nobody knows: neither a rate nor an age says it. That is for a hold, until a result speaks';
  return untilBy === 'forecast' ? `Day ${untilDay}, by its results` : `Day ${untilDay}, by its age alone`;
}

const WHY_NO_DOSE: Readonly<Record<Exclude<BiocideSheet['noRedose'], null>, string>> = {
  'no concentrate told': 'the outpost file does not tell how strong the concentrate is',
  'no target': 'its grade names no concentration',
  'not needed': 'nothing: it is at what its grade is dosed to, or above',
  'nothing inside': 'nothing usable is inside',
  refused: 'refused: what the grade is dosed to lies above the maximum of this outpost',
};

export function saidNoRedose({ noRedose }: BiocideSheet, store: string): string {
  if (noRedose === null) return '';
  const hint =
    noRedose === 'no concentrate told'
      ? `. Reckon it: waterwright reckon dose --store ${store} --stock 400mg/L`
      : '';
  return `${WHY_NO_DOSE[noRedose]}${hint}`;
}

/** `9.9 mL of concentrate, which makes 0.20 mg/L`: the volume never stands without what comes of it. */
export function saidRedose(
  { mostMgPerL, assumesNothingLeft }: RedoseSheet,
  figures: { readonly volume: string; readonly resulting: string },
): string {
  const most =
    mostMgPerL === null
      ? 'the outpost file names no maximum: ask the medical officer'
      : `at most ${saidValue(mostMgPerL, 'mg/L')}`;
  const left = assumesNothingLeft ? '; if nothing is left in it: sample it first' : '';
  return `${figures.volume} of concentrate, which makes ${figures.resulting} (${most})${left}`;
}

export function saidLine({ line, lastFlow, days, untilDay, isOver }: StandingLine): string {
  const flow =
    lastFlow === null
      ? 'no flow since the book began'
      : `last flow ${lastFlow}, ${counted(Math.floor(days), 'day')} ago`;
  if (untilDay === null) return `${line}: ${flow}`;
  return isOver
    ? `${line}: ${flow}; it stood too long, flush it`
    : `${line}: ${flow}; good to Day ${untilDay}`;
}

export function saidFills({ fills, empties, lifeCycles }: LifeSheet): string {
  const allowed = lifeCycles === null ? '' : ` of ${lifeCycles}`;
  return `${fills}${allowed} by the book, declared empty ${counted(empties, 'time')}`;
}

export function saidUse({ days, since, sinceWhat, lifeDays, verdict }: LifeSheet): string {
  const from = sinceWhat === 'disinfected' ? `disinfected ${since}` : `first in the book ${since}`;
  const allowed = lifeDays === null ? '' : ` of ${lifeDays}`;
  const whole = Math.floor(days);
  const head = `${whole}${allowed} ${whole === 1 && lifeDays === null ? 'day' : 'days'}, ${from}`;
  const notes: Readonly<Record<LifeSheet['verdict'], readonly string[]>> = {
    within: [],
    near: ['near its end'],
    over: ['past its end'],
    'no life told': ['the outpost file tells no life'],
  };
  return [head, ...notes[verdict]].join('; ');
}
