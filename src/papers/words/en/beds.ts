// English for the purifier beds: labels, the advice, and what speaks for and against a cause.

import type { BedCause, Evidence } from '../../../account/index.ts';
import { formatFigure } from '../../../ground/units/index.ts';
import type {
  BedChangeLine,
  BedDates,
  BedDecision,
  BedFeed,
  BedLine,
  BedParameter,
} from '../../sheets/beds.ts';
import { counted, litresOf, saidValue, saidValueAt } from './said.ts';

const nb = '\u00A0';

export const bedLabels = {
  bed: 'BED',
  used: 'LITRES THROUGH',
  share: 'OF ITS LIFE',
  due: 'LIMIT ABOUT',
  by: 'BY',
  since: 'THERE SINCE',
  quantity: 'BEHIND THE BEDS',
  limit: 'LIMIT',
  count: 'READINGS',
  last: 'LAST',
  moves: 'MOVES',
  perDay: 'A DAY',
  left: 'LITRES LEFT',
  reaches: 'LIMIT REACHED',
  causes: 'WHY IT RISES: the best supported cause first; the order is by evidence and is no probability',
  entry: 'ENTRY',
  taken: 'TAKEN',
  reading: 'READING',
  through: 'LITRES THROUGH',
  of: 'OF',
  day: 'DAY',
  at: 'AT',
  middle: 'EXPECTED',
  band: 'P10 TO P90',
  bands: 'Dates and litres: the middle, and in brackets P10 to P90, between which 80 of 100 come true.',
  ahead: 'DAYS AHEAD',
  for: 'for',
  against: 'against',
  open: 'open',
  lag: 'Nothing is read between the beds: what is read behind them is told with the first bed.',
  noBand: 'No date: fewer than five days of counters, and no norm of vapour in the outpost file.',
} as const;

/** `833 ± 25 L`. */
function figure(value: number, u: number, unit: string): string {
  return formatFigure({ value, u95: 2 * u, unit }, { style: 'screen' });
}

/** `98 % (76 to 137)`. */
export function saidPercent({ value, low, high }: BedLine['usedPercent']): string {
  const at = (percent: number): string => `${Math.round(percent)}`;
  return `${at(value)}${nb}%${nb}(${at(low)}${nb}to${nb}${at(high)})`;
}

/** `Day 35 (34 to 38)`; `reached` where even P90 lies behind. */
export function saidDates({ q10, q50, q90 }: BedDates): string {
  if (q50 === null)
    return q10 === null ? 'not within two years' : `not before Day${nb}${Math.floor(q10.day)}`;
  const low = Math.floor(q10?.day ?? q50.day);
  const high = q90 === null ? 'open' : `${Math.floor(q90.day)}`;
  return `Day${nb}${Math.floor(q50.day)}${nb}(${low}${nb}to${nb}${high})`;
}

/** What is flat has no date but an end before which there is none. */
export function saidDue({ moves, dates }: BedParameter): string {
  if (dates === null) return '';
  if (moves !== 'flat' && moves !== 'falling') return saidDates(dates);
  return dates.q10 === null ? 'not within two years' : `not before Day${nb}${Math.floor(dates.q10.day)}`;
}

export function saidSince({ begun, day }: BedLine['since']): string {
  if (begun === 'change') return `Day${nb}${day}`;
  return begun === 'opening' ? 'before the opening' : 'before Day 1 (outpost file)';
}

export function bedSentence(bed: BedLine): string {
  const [used, life] = [bed.used, bed.life].map((one) => formatFigure(one, { style: 'screen' }));
  const since =
    bed.since.begun === 'change'
      ? `there since the change of Day${nb}${bed.since.day}`
      : `there since ${saidSince(bed.since)}`;
  return `${capital(bed.position)} bed of the ${bed.unit}: ${used} through it, of a life of ${life}; ${saidPercent(bed.usedPercent)} of it used; ${since}.`;
}

export function noSpareWords(spares: BedDecision['spares']): string {
  if (spares === null) return 'Spare beds: the outpost file names no part that is a bed.';
  return `Spare beds: ${counted(spares.count, spares.part)}.`;
}

/** The verdict, then the spares and the next visit. */
export function adviceInWords(advice: BedDecision): readonly string[] {
  return [verdictWords(advice), `${spareWords(advice)} ${visitWords(advice)}`];
}

function verdictWords({ verdict, parameter, dates, nextReadingDay }: BedDecision): string {
  const what = parameter ?? '';
  const when = dates === null ? '' : saidDates(dates);
  const next =
    nextReadingDay === null
      ? 'no next reading is planned'
      : `the next reading is due on Day${nb}${nextReadingDay}`;
  if (verdict === 'no dates') return bedLabels.noBand;
  if (verdict === 'no trend')
    return `WAIT. Nothing rises behind the beds; by the life in the outpost file alone ${what} reaches its limit about ${when}.`;
  if (verdict === 'wait')
    return `WAIT. ${what} reaches its limit about ${when}; ${next}, before that band begins.`;
  const sooner = dates?.q10 == null ? '' : ` by Day${nb}${Math.floor(dates.q10.day)}`;
  if (verdict === 'read sooner')
    return `READ SOONER, OR CHANGE. ${what} reaches its limit about ${when}, and ${next}: read it again${sooner}, or change the lead bed now.`;
  return `CHANGE NOW. ${what} reaches its limit about ${when}, and ${next}: the limit is likely to be passed before.`;
}

function spareWords({ spares, verdict }: BedDecision): string {
  if (spares === null) return noSpareWords(spares);
  if (spares.count === 0) return `No spare ${spares.part} is left.`;
  const left =
    verdict === 'no trend' || verdict === 'no dates' ? '' : `; a change leaves ${spares.count - 1}`;
  return `${counted(spares.count, `spare ${spares.part}`)}${left}.`;
}

function visitWords({ visit, dates, verdict, spares }: BedDecision): string {
  if (visit === null) return 'No visit is on the roster that could bring a bed or take samples.';
  const day = `${visit.visit}, Day${nb}${visit.day}, is the next visit with which samples return and cargo comes`;
  if (dates === null || verdict === 'no dates') return `${day}.`;
  if (dates.q90 !== null && dates.q90.day < visit.day)
    return spares?.count === 0
      ? `${day}: the limit comes before it, and there is no bed to change to; ask for one, and stop the purifier at the limit.`
      : `${day}: the limit comes before it.`;
  if (dates.q10 !== null && dates.q10.day < visit.day) return `${day}: the limit may come before it.`;
  return `${day}: the bed lasts until then.`;
}

export function feedInWords({ perDay, basis, people, load }: BedFeed): string {
  const rate = formatFigure(perDay, { style: 'screen' });
  const [first, ...later] = people;
  const changes = later.map(({ day, people: count }) => `, ${count} from Day${nb}${day}`).join('');
  const from = basis === 'learned' ? 'learned from the counters' : 'by the norm of the outpost file';
  const load_ =
    load === null
      ? 'Its load of organics is not known: no reading of the feed is in the book.'
      : `It brings ${saidValue(load.value, load.unit)} by the last reading of the feed.`;
  return `Feed: ${rate}, ${from}, with ${counted(first?.people ?? 0, 'person', 'people')}${changes}. ${load_}`;
}

export function changeInWords({ day, ref, reckonedL, toldL }: BedChangeLine): string {
  const told = toldL === null ? '' : `, ${saidValue(toldL, 'L')} as written down`;
  return `Changed on Day${nb}${Math.floor(day)} (${ref}) after ${saidValueAt(reckonedL, 0, 'L')} by the counters${told}.`;
}

const causeNames: Readonly<Record<BedCause, string>> = {
  'organic breakthrough': 'organic breakthrough: the bed is full of what it holds least',
  'ionic exhaustion': 'ionic exhaustion: the resin has no more to exchange',
  'stronger feed': 'stronger feed: more, or more in it, comes to the bed',
  'instrument drift': 'instrument drift: the instrument and not the water has changed',
  'sample or cartridge': 'sample or cartridge: a reading that is wrong by itself',
  temperature: 'temperature: warmer water reads higher',
};

export function causeInWords(cause: string): string {
  return causeNames[cause as BedCause];
}

/** @param mgPerL the outpost's density, for amounts that the account has in milligrams */
export function evidenceInWords(evidence: Evidence, mgPerL: number): string {
  return says[evidence.kind](evidence, mgPerL);
}

const movesWords = {
  flat: 'is flat',
  rising: 'rises',
  falling: 'falls',
  'too few readings': 'has too few readings',
} as const;

const says: Readonly<Record<Evidence['kind'], (evidence: Evidence, mgPerL: number) => string>> = {
  moves: ({ parameter, value, u, unit, moves, against }) =>
    `${parameter} ${movesWords[moves ?? 'too few readings']}: ${signedFigure(value, u, unit)}; its limit is ${saidValue(against, unit.replace(' a day', ''))}.`,
  'not read': ({ parameter }) => `${parameter} has been read fewer than three times behind these beds.`,
  'use against life': ({ value, u, against, weight }) =>
    weight > 0
      ? `${figure(value, u, 'L')} went through; a life of ${saidValue(against, 'L')} with its ± may end there.`
      : `${figure(value, u, 'L')} went through; that is below the life of ${saidValue(against, 'L')} and its ±.`,
  'feed read': ({ weight, parameter, value, u, unit }) =>
    weight === 0
      ? `the feed has been read fewer than three times for ${parameter}.`
      : `${parameter} of the feed changes by ${signedFigure(value, u, unit)}.`,
  'litres a day': ({ weight, value, u, against }, mgPerL) => {
    const litres = (mg: number): number => litresOf(mg, mgPerL);
    const now = figure(litres(value), litres(u), 'L');
    if (weight === 0)
      return `${saidValueAt(litres(value), -1, 'L')} a day; no days before to hold it against.`;
    const before = saidValueAt(litres(against), -1, 'L');
    return weight > 0
      ? `${now} a day came in the last five days, ${before} before.`
      : `${now} a day came in the last five days, about as before (${before}).`;
  },
  'rise against calibration': ({ parameter, value, unit, against, weight }) =>
    `${parameter} rose by ${saidValueAt(value, -2, unit)}; the declared calibration can make ${weight > 0 ? 'all of that' : `no more than ${saidValueAt(against, -2, unit)}`}.`,
  'other water': ({ weight, parameter, value, u, unit }) =>
    weight === 0
      ? `the instrument has read ${parameter} of other water fewer than three times in this time.`
      : `${parameter} of other water changes by ${signedFigure(value, u, unit)} on the same instrument.`,
  'last off the line': ({ value, weight }) =>
    weight > 0
      ? `the last reading stands ${saidValueAt(value, -1, '')} of its u off the line through the others.`
      : `the last reading stands on the line through the others (${saidValueAt(value, -1, '')} of its u off).`,
  'one reading': ({ parameter }) => `there are too few readings of ${parameter} to tell whether one is off.`,
  'readings in a row': ({ value, against, weight }) =>
    weight < 0
      ? `${value + 1} of ${against} readings stand each above the one before: as many faults would be needed.`
      : `the last readings do not stand each above the one before.`,
  warmer: ({ weight, value, u, against, unit }) => {
    if (weight === 0) return 'the temperature of the cabin was not read on those days.';
    const explained = u === 0 ? 'which does not bear on it' : `which makes ${saidValueAt(u, -1, unit)}`;
    const than = `${saidValueAt(Math.abs(value), -1, '°C')} ${value < 0 ? 'colder' : 'warmer'}`;
    return `the cabin is ${than} than at the first reading, ${explained}; the rise is ${saidValueAt(against, -2, unit)}.`;
  },
};

function signedFigure(value: number, u: number, unit: string): string {
  return `${value > 0 ? '+' : ''}${figure(value, u, unit)}`;
}

function capital(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

export function olderReadings(count: number): string {
  return `${counted(count, 'reading')} of the beds before the last change ${count === 1 ? 'is' : 'are'} not shown; --plain and --json have them.`;
}
