// English for figures that are far from what an outpost does: what was said, what it is held against, which reading would fit.
import type { AccountFindingCode } from '../../../../account/index.ts';
import type { FindingData, Where } from '../../../../ground/units/index.ts';
import type { Sentences, Words } from '../../shape.ts';
import { maybeNumber, maybeText, numberOf, textOf } from '../data.ts';
import { saidValue } from '../said.ts';
import { entryNo, entryOf, say } from '../say.ts';

export const figureQuestionWords = {
  'amount-implausible': askFigure,
  'reading-implausible': askFigure,
  'counter-replaced': (data) => {
    const unit = textOf(data, 'unit');
    const [value, last] = [saidValue(numberOf(data, 'value'), unit), saidValue(numberOf(data, 'last'), unit)];
    return say(
      `${textOf(data, 'instrument')} reads ${value} after ${last} (${textOf(data, 'ref')}), which is no roll-over: it stands where a new counter would. The water of that interval is not counted.`,
      `${last} or more`,
      value,
      `If the counter was replaced, say so, with the time: waterwright log instrument-replaced --at TIME. If the entry has a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    );
  },
} satisfies Partial<Words<AccountFindingCode>>;

function askFigure(data: FindingData, where: Where): Sentences {
  const unit = textOf(data, 'unit');
  const value = shown(numberOf(data, 'value'), unit);
  const fits = maybeNumber(data, 'fits');
  const wouldFit = fits === null ? '' : ` ${shown(fits, unit)} would fit${saidSlip(data)}.`;
  return say(
    `${entryOf(data)} says ${value}${saidOf(data, where)}; ${saidAgainst(data)}.${wouldFit} It counts as it was entered.`,
    saidRange(data, unit),
    value,
    `If it is a slip: waterwright log undo ${entryNo(data)}, and enter it again. If it is right, nothing is to be done.`,
  );
}

/** A figure in three digits: finer than that no question needs. */
function digits(value: number): number {
  const size = Math.abs(value);
  const steps = size >= 100 ? 1 : size >= 10 ? 10 : size >= 1 ? 100 : 1000;
  return Number.isInteger(value) ? value : Math.round(value * steps) / steps;
}

function shown(value: number, unit: string): string {
  return saidValue(digits(value), unit);
}

function saidOf(data: FindingData, where: Where): string {
  const of = textOf(data, 'of');
  if (of === 'content') return ` for the content of ${where.store ?? 'a store'}`;
  if (of === 'rest') return ` for the rest in ${where.store ?? 'a store'}`;
  if (of === 'sample' || of === 'dose') return ` for a ${of}`;
  // `2160 strokes`: the unit is the name already.
  if (of.endsWith(textOf(data, 'unit'))) return '';
  return of.startsWith('water') ? ` of ${of}` : ` by the ${of}`;
}

function saidRange(data: FindingData, unit: string): string {
  const [low, high] = [numberOf(data, 'low'), numberOf(data, 'high')];
  if (low === high) return 'readings that fit each other';
  if (low === 0) return `at most ${shown(high, unit)}`;
  return saidBetween(low, high, unit);
}

/** `166 to 281 strokes` */
function saidBetween(low: number, high: number, unit: string): string {
  return `${shown(low, '')} to ${shown(high, unit)}`;
}

function saidAgainst(data: FindingData): string {
  const unit = textOf(data, 'unit');
  const name = maybeText(data, 'name') ?? '';
  const high = shown(numberOf(data, 'high'), unit);
  const between = saidBetween(numberOf(data, 'low'), numberOf(data, 'high'), unit);
  switch (textOf(data, 'against')) {
    case 'source':
      return `${name} has ${high} at most, by the book`;
    case 'hose':
      return `in the minutes that were told ${name} passes ${between}`;
    case 'other legs':
      return `the other figures of that push say ${between}`;
    case 'counter':
      return `in that time ${name} counts ${high} at most`;
    case 'other counter':
      return `the same water passes the ${name}, which says ${between}`;
    case 'time of day':
      return `at that time of day it stands at ${between} here`;
    case 'capacity':
      return `${name} holds ${high} at most`;
    case 'loaded mass':
      return `by its loaded mass it would be ${between}`;
    case 'usual fill':
      return `a full one holds ${between}`;
    case 'raw readings':
      return numberOf(data, 'low') === numberOf(data, 'high')
        ? 'its pressures and temperatures do not fit each other'
        : `worked out from its pressures and temperatures it is ${between}`;
    case 'store':
      return `by the book it would be ${between}`;
    default:
      return `here it is ${between}`;
  }
}

function saidSlip(data: FindingData): string {
  switch (maybeText(data, 'slip')) {
    case 'point':
      return ', with the point elsewhere';
    case 'sign':
      return ', with the other sign';
    case 'mL':
      return ', if millilitres were meant';
    case 'lb':
      return ', if pounds were meant';
    case 'gal':
      return ', if gallons were meant';
    case 'counts in litres':
      return ', if litres were written for counts';
    case 'counts in millilitres':
      return ', if millilitres were written for counts';
    default:
      return '';
  }
}
