// English for trends of quality: headings, what lies where, and the sentences about limits, runs, gaps and what stores share.
import type {
  Trend,
  TrendChart,
  TrendLimit,
  TrendMark,
  TrendParameter,
  TrendPlace,
  TrendPoint,
  TrendSignal,
  TrendTold,
} from '../../sheets/quality-trend.ts';
import { counted, listed, saidValue, saidValueAt } from './said.ts';

const nbsp = '\u00A0';

export const trendLabels = {
  title: 'TREND',
  measured: 'WHAT WAS MEASURED',
  none: 'Nothing has been measured yet. Enter a result: waterwright log result.',
  nothingHere: 'Nothing of it was measured here.',
  parameter: 'PARAMETER',
  results: 'RESULTS',
  where: 'WHERE',
  last: 'LAST',
  day: 'DAY',
  against: 'LIMIT',
  sample: 'SAMPLE',
  made: 'BY',
  notes: 'NOTES',
  limit: 'Limit',
  itself: 'By itself',
  done: 'Done',
  gaps: 'Gaps',
  method: 'Method',
  apart: 'Apart',
  stores: 'Stores',
  shared: 'Shared',
  blank: 'A day without a line is one on which nothing was measured; it is not nought.',
  twoKinds:
    'The limit says what the water may be; the control limits say what it has been by itself, and may lie on either side of it.',
} as const;

/** `-` is none: `TOC at product`, `silver at C-05`, `silver of drinking`, `silver everywhere`. */
export function saidPlace({ kind, name }: TrendPlace): string {
  if (kind === 'everywhere') return 'everywhere';
  return kind === 'grade' ? `of ${name}` : `at ${name}`;
}

export function saidMeasure({
  unit,
  basis,
}: {
  readonly unit: string;
  readonly basis: string | null;
}): string {
  return basis === null || basis === 'as itself' ? unit : `${unit}${nbsp}${basis.replaceAll(' ', nbsp)}`;
}

/** `<0.05`, `0.19`, `>300`: as it was told. */
export function saidTold({ value, censored }: Pick<TrendTold, 'value' | 'censored'>): string {
  const sign = { no: '', below: '<', above: '>' }[censored];
  return `${sign}${saidValue(value, '')}`;
}

export function trendTitle({ parameter, place }: Pick<Trend, 'parameter' | 'place'>): string {
  return `${parameter} ${saidPlace(place)}`;
}

/** `TOC at product, mg/L as C: 9 results, Day 23 to Day 54.` */
export function headInWords(trend: Trend): string {
  const { points } = trend;
  const [first, last] = [points[0], points.at(-1)];
  const title = `${trendTitle(trend)}${trend.unit === '' ? '' : `, ${saidMeasure(trend)}`}`;
  if (first === undefined || last === undefined) return `${title}. ${trendLabels.nothingHere}`;
  return `${title}: ${counted(points.length, 'result')}, ${saidDays(whole(first.day), whole(last.day))}.`;
}

export const whole = (day: number): number => Math.floor(day);

export function saidDays(from: number, to: number): string {
  return from === to ? `Day${nbsp}${from}` : `Day${nbsp}${from} to Day${nbsp}${to}`;
}

const against: Readonly<Record<TrendPoint['against'], string>> = {
  within: 'within',
  above: 'ABOVE',
  below: 'BELOW',
  unclear: 'unclear',
  'no limit': 'none set',
};
export const saidAgainst = (point: Pick<TrendPoint, 'against'>): string => against[point.against];

export function saidMade({ method, madeAt }: Pick<TrendPoint, 'method' | 'madeAt'>): string {
  return [madeAt, method].filter((word) => word !== null).join(', ');
}

export function saidPlaces({ places }: Pick<TrendParameter, 'places'>): string {
  return places.map(({ name, results }) => `${name}${nbsp}(${results})`).join(', ');
}

/** What stands beside a point: what it broke, when its result came, how it was drawn. */
export function pointNotes(point: TrendPoint, signals: readonly TrendSignal[]): readonly string[] {
  const { duplicate, knownDay, day, drawnFrom, id } = point;
  const broken = signals.filter(({ ids }) => ids.at(-1) === id).map(saidRule);
  return [
    ...broken,
    ...(duplicate ? ['second figure, not counted'] : []),
    ...(knownDay === whole(day) ? [] : [`result on Day${nbsp}${knownDay}`]),
    ...(drawnFrom === null ? [] : [`drawn from: ${drawnFrom}`]),
  ];
}

function saidRule({ rule, side, ids }: TrendSignal): string {
  if (rule === 'beyond the limits')
    return side === 'high' ? 'above its control limit' : 'below its control limit';
  return rule === 'on one side' ? `${ids.length} on the ${side} side` : `${ids.length} ${rule}`;
}

/** Three digits of the largest figure there is: more would say nothing, and fewer would hide a limit behind a result. */
export function placeOfTrend({ points, chart }: Pick<Trend, 'points' | 'chart'>): number {
  const values = points.map(({ figure }) => figure.value);
  let top = Math.max(chart.limits?.high.value ?? 0, ...values);
  if (!(top > 0)) return -1;
  let place = -2;
  for (; top >= 10; top /= 10) place += 1;
  for (; top < 1; top *= 10) place -= 1;
  return place;
}

export function reckoned(value: number, trend: Trend): string {
  return saidValueAt(value, placeOfTrend(trend), trend.unit);
}

/** The same without noughts at its end: `3`, `2.57`. */
export function shortly(value: number, trend: Trend): string {
  const digits = saidValueAt(value, placeOfTrend(trend), '');
  return digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits;
}

/** With room for the decimals that another one of the column has, so that the points stand under each other. */
export function saidInColumn({ told, figure }: TrendPoint, { points }: Pick<Trend, 'points'>): string {
  const texts = points.map((point) => saidValue(point.figure.value, ''));
  const after = (text: string) => (text.includes('.') ? text.length - text.indexOf('.') : 0);
  const own = saidTold({ ...told, value: figure.value });
  return `${own}${nbsp.repeat(Math.max(0, ...texts.map(after)) - after(own))}`;
}

/** `at most 3 mg/L (TOC most)`. */
export function saidLimit({ side, value, row, isOff }: TrendLimit, unit: string): string {
  if (isOff) return `${row}: off until somebody types its value from their own copy`;
  if (value === null) return `${row}: told in a unit that this one cannot be told in`;
  return `${side} ${saidValue(value, unit)} (${row})`;
}

export function limitsInWords(trend: Trend): readonly string[] {
  const { limits, points, unit } = trend;
  if (limits.length === 0)
    return ['No limit is set for it: what is measured here releases no water and holds none.'];
  const bad = points.filter((point) => point.against === 'above' || point.against === 'below');
  const unclear = points.filter((point) => point.against === 'unclear');
  const isJudged = limits.some(({ isOff }) => !isOff);
  const found =
    points.length === 0 || !isJudged
      ? ''
      : bad.length === 0
        ? ` None of ${counted(points.length, 'result')} is beyond it.`
        : ` Beyond it: ${bad.length} of ${counted(points.length, 'result')}, ${worstInWords(bad, unit)}.`;
  const doubt = unclear.length === 0 ? '' : ` On neither side for sure: ${unclear.length}.`;
  const acts = [...new Set(limits.map(({ firstAct }) => firstAct).filter((act) => act !== ''))];
  const first = bad.length === 0 || acts.length === 0 ? '' : ` First act: ${listed(acts, 'or')}.`;
  return [`${limits.map((limit) => saidLimit(limit, unit)).join('; ')}.${found}${doubt}${first}`];
}

function worstInWords(bad: readonly TrendPoint[], unit: string): string {
  return bad
    .slice(-3)
    .map(({ told, day, place }) => {
      const where = place === null ? '' : ` at ${place.name}`;
      return `${saidTold(told)}${nbsp}${unit}${where} (Day${nbsp}${whole(day)})`;
    })
    .join(', ');
}

export function chartInWords(trend: Trend): readonly string[] {
  const { chart } = trend;
  if (chart.limits === null) return [whyNoLimits(chart)];
  const { limits, by, results, seen, isProvisional, full, sinceDay } = chart;
  const { centre, low, high } = limits;
  const range =
    low === null
      ? `up to ${reckoned(high.value, trend)}`
      : `${saidValueAt(low.value, placeOfTrend(trend), '')} to ${reckoned(high.value, trend)}`;
  const how =
    by === 'moving ranges'
      ? `from ${counted(results, 'result')} by the ranges between neighbours`
      : `fitted to ${counted(results, 'result')}, ${seen} of them seen and the others only known to lie below or above`;
  const since =
    trend.methodChanges.length === 0 ? '' : `, since Day${nbsp}${sinceDay} when the method changed`;
  const few = isProvisional ? ` Provisional: fewer than ${full}.` : '';
  return [
    `Control limits ${range}, centre ${reckoned(centre.value, trend)}, ${how}${since}.${few}${mixedInWords(trend, sinceDay)}`,
    ...signalsInWords(chart.signals),
  ];
}

function whyNoLimits(chart: Extract<TrendChart, { limits: null }>): string {
  const { why, results, seen, least } = chart;
  switch (why) {
    case 'several waters':
      return `No control limits for several waters together: they tell nothing of each other. ${saidEnough(chart.enough, least)}`;
    case 'few results':
      return `Not enough for control limits: ${counted(results, 'result')}, and they take ${least}.`;
    case 'too few seen':
      return `Not enough for control limits: of ${counted(results, 'result')} only ${seen} were seen, the others are only known to lie below or above.`;
    case 'no spread':
      return `No control limits: all of ${counted(results, 'result')} are alike, so that nothing tells how far chance goes.`;
  }
}

function saidEnough(enough: Extract<TrendChart, { limits: null }>['enough'], least: number): string {
  return enough.length === 0
    ? `No place has the ${counted(least, 'result')} that they take.`
    : `Ask for one place: ${listed(
        enough.map(({ kind, name, results }) => `${kind} ${name}${nbsp}(${results})`),
        'or',
      )}.`;
}

/** What was done between the results that made the limits. */
function mixedInWords({ marks, points }: Trend, sinceDay: number): string {
  const last = points.at(-1)?.day ?? 0;
  const inside = marks
    .filter(({ day }) => day > sinceDay && day < last)
    .map(({ day }) => `Day${nbsp}${whole(day)}`);
  return inside.length === 0 ? '' : ` Results before and after ${listed(inside)} are in it together.`;
}

function signalsInWords(signals: readonly TrendSignal[]): readonly string[] {
  if (signals.length === 0) return ['Nothing in it is more than the play of chance by the three run rules.'];
  return signals.map((signal) => {
    const days = saidDays(signal.fromDay, signal.toDay);
    const { rule, side, ids } = signal;
    if (rule === 'beyond the limits')
      return `${days}: ${side === 'high' ? 'above' : 'below'} its control limit.`;
    if (rule === 'on one side')
      return `${days}: ${ids.length} in a row ${side === 'high' ? 'above' : 'below'} the centre.`;
    return `${days}: ${ids.length} in a row, each ${rule === 'rising' ? 'above' : 'below'} the one before.`;
  });
}

/** `Day 36, lead bed: bed changed. 2.6 mg/L before it (Day 35), 1.4 mg/L after it (Day 37).` */
export function markInWords({ day, what, before, after }: TrendMark, unit: string): string {
  const told = (one: TrendMark['before'], word: string) =>
    one === null
      ? `nothing measured ${word} it`
      : `${saidValue(one.value, unit)} ${word} it (Day${nbsp}${one.day})`;
  return `Day${nbsp}${whole(day)}, ${what}. ${sentence(`${told(before, 'before')}, ${told(after, 'after')}`)}`;
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

export function gapsInWords({ gaps, interval, place }: Trend): readonly string[] {
  if (interval === null)
    return place.kind === 'point'
      ? ['The outpost file does not say how often it is measured here, so that no gap can be told.']
      : [];
  if (gaps.length === 0) return [];
  return gaps.map(
    ({ fromDay, toDay, days, everyDays }) =>
      `${saidDays(fromDay, toDay)}: nothing for ${counted(days, 'day')}, and ${interval.service} is due every ${counted(everyDays, 'day')}. No line and no run goes over it.`,
  );
}

export function methodsInWords({ methodChanges }: Trend): readonly string[] {
  return methodChanges.map(
    ({ day, from, to }) =>
      `Day${nbsp}${whole(day)}: before ${from}; from then on ${to}. Control limits are made of the later ones alone.`,
  );
}

export function apartInWords({ apart, unit }: Trend): readonly string[] {
  if (apart.length === 0) return [];
  const told = apart.map(
    ({ sample, told: { unit: its, basis } }) => `${sample} (${saidMeasure({ unit: its, basis })})`,
  );
  return [`Cannot be told in ${unit} and stands apart: ${listed(told)}.`];
}
