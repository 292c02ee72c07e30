// English for what a calculator cannot or will not answer, each with the way out.
import { type FindingData, unitSign } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Sentences, Words } from '../shape.ts';
import { listOf, maybeNumber, numberOf, textOf } from './data.ts';
import { inputLabel } from './reckon.ts';
import { listed, saidValue } from './said.ts';
import { say } from './say.ts';

type ReckonCode = Extract<DeskFindingCode, `reckon-${string}`>;

const nothing = 'Nothing was reckoned.';

const flags = (names: readonly string[]): string => listed(names.map((name) => `--${name}`));
const named = (name: string): string => `${inputLabel(name)} (--${name})`;
const kPa = (data: FindingData, key: string): string =>
  saidValue(Math.round(10 * numberOf(data, key)) / 10, 'kPa');

const refusals: Readonly<Record<string, (data: FindingData) => Sentences>> = {
  'over-rating': (data) =>
    say(
      `Refused: ${kPa(data, 'wouldKPa')} over the cabin is above the lowest rating of ${textOf(data, 'what')}, ${kPa(data, 'ratingKPa')}. ${nothing}`,
      `at most ${kPa(data, 'ratingKPa')} over the cabin`,
      kPa(data, 'wouldKPa'),
      `Take a pressure of at most ${kPa(data, 'ratingKPa')}.`,
    ),
  'rating-missing': (data) =>
    say(
      `Refused: the rating of ${textOf(data, 'what')} is missing, and without it nobody may put pressure on it. ${nothing}`,
      'the maker’s rating over the cabin',
      'none',
      'Read it on its plate and give it: --rating 100kPa. Best is to write it into the outpost file.',
    ),
  'charge-too-high': (data) =>
    say(
      `Refused: the tank would end at ${kPa(data, 'endKPa')} absolute, and its lowest rating is ${kPa(data, 'ratingKPa')} absolute. ${nothing}`,
      `an end pressure of at most ${kPa(data, 'ratingKPa')} absolute`,
      kPa(data, 'endKPa'),
      maybeNumber(data, 'safeBottleKPa') === null
        ? 'The tank stands at its rating already: let in no gas.'
        : `Charge the bottle to at most ${kPa(data, 'safeBottleKPa')} absolute first. Or open it only until it has fallen by ${kPa(data, 'fallKPa')}, with the tank at ${kPa(data, 'ratingKPa')} absolute at the most.`,
    ),
  'ullage-missing': () =>
    say(
      `How much gas is in the tank is not told. ${nothing}`,
      'the gas in the tank, or the water that is in it',
      'neither',
      'Give --ullage 6.4L, or --store so that the book tells it. What nobody knows cannot be held against a rating.',
    ),
  'power-not-told': () =>
    say(
      `Ice thaws by a heater, and its power is not told. ${nothing}`,
      'the power of the heater',
      'none',
      'Give it: --power 500W.',
    ),
  'loss-not-told': () =>
    say(
      `How soon water freezes hangs on what it loses to the cold, and that is not told. ${nothing}`,
      'the loss for a degree',
      'none',
      'Give it: --loss 2W/K.',
    ),
  'would-boil': (data) =>
    say(
      `Refused: at ${kPa(data, 'cabinKPa')} water boils at ${saidValue(Math.round(10 * numberOf(data, 'boilsAtC')) / 10, '°C')}, and ${saidValue(numberOf(data, 'endC'), '°C')} is asked for. ${nothing}`,
      'a temperature below boiling in this cabin',
      saidValue(numberOf(data, 'endC'), '°C'),
      'Take a lower temperature, and keep a margin.',
    ),
  'above-maximum': (data) =>
    say(
      `Refused: ${saidValue(numberOf(data, 'wantedMgPerL'), 'mg/L')} is above the maximum of this outpost, ${saidValue(numberOf(data, 'maximumMgPerL'), 'mg/L')}. ${nothing}`,
      `at most ${saidValue(numberOf(data, 'maximumMgPerL'), 'mg/L')}`,
      saidValue(numberOf(data, 'wantedMgPerL'), 'mg/L'),
      'Look at the point of the figure: a dose ten times too large is the common slip. A higher one is for the medical officer to decide.',
    ),
  'coil-not-told': (data) =>
    say(
      `What the coil is like is not told. ${nothing}`,
      'the bypass factor, or the flow of the coolant with the conductances of both sides',
      `missing: ${flags(listOf(data, 'missing'))}`,
      'Give --bypass 0.1, or --coolant-flow, --air-side and --coolant-side.',
    ),
  'unequal-lists': (data) =>
    say(
      `There are ${saidValue(numberOf(data, 'volumes'), '')} volumes and ${saidValue(numberOf(data, 'count'), '')} values of ${named(textOf(data, 'list'))}. ${nothing}`,
      'one value for each volume',
      saidValue(numberOf(data, 'count'), ''),
      'Give as many, commas between, in the order of the volumes.',
    ),
};

function refusalOf(data: FindingData): Sentences {
  const words = refusals[textOf(data, 'rule')];
  if (words === undefined) throw new Error(`nothing is written for ${textOf(data, 'rule')}`);
  return words(data);
}

function rangeOf(data: FindingData): string {
  const sign = unitSign(textOf(data, 'unit'));
  const high = maybeNumber(data, 'high');
  const low = saidValue(numberOf(data, 'low'), high === null ? sign : '');
  return high === null ? `from ${low} on` : `${low} to ${saidValue(high, sign)}`;
}

export const reckonFindingWords: Pick<Words<DeskFindingCode>, ReckonCode> = {
  'reckon-unknown': (data) => {
    const near = listOf(data, 'nearest');
    return say(
      `No calculator is called ${textOf(data, 'what')}.`,
      listed(listOf(data, 'all'), 'or'),
      textOf(data, 'what'),
      near.length > 0 ? `Did you mean ${near[0]}?` : 'Take one of those: waterwright help reckon.',
    );
  },
  'reckon-input-missing': (data) => {
    const inputs = listOf(data, 'inputs');
    return say(
      `The calculator lacks ${listed(inputs.map(named))}. ${nothing}`,
      `${listed(inputs.map(inputLabel))}, each with its unit`,
      'nothing',
      `Give it: ${flags(inputs)}. An example: waterwright help reckon.${data['hasBook'] === true ? '' : ' A book would fill in what its outpost file knows.'}`,
    );
  },
  'reckon-field-unknown': (data) => {
    const near = listOf(data, 'nearest');
    return say(
      `${textOf(data, 'calculator')} takes no --${textOf(data, 'field')}. ${nothing}`,
      flags(listOf(data, 'known')),
      `--${textOf(data, 'field')}`,
      near.length > 0 ? `Did you mean ${flags(near)}?` : 'Leave it out.',
    );
  },
  'reckon-not-positive': (data) =>
    say(
      `${named(textOf(data, 'input'))} cannot be ${textOf(data, 'received')}. ${nothing}`,
      textOf(data, 'wanted') === 'above' ? 'a value above 0' : 'a value from 0 on',
      textOf(data, 'received'),
      'Check the figure and its sign.',
    ),
  'reckon-too-large': (data) => {
    const most = saidValue(numberOf(data, 'most'), unitSign(textOf(data, 'unit')));
    return say(
      `${named(textOf(data, 'input'))} cannot be ${textOf(data, 'received')}. ${nothing}`,
      `at most ${most}`,
      textOf(data, 'received'),
      'Check the figure and its unit.',
    );
  },
  'reckon-choice': (data) =>
    say(
      `${named(textOf(data, 'field'))} is one of a few words. ${nothing}`,
      listed(listOf(data, 'choices'), 'or'),
      textOf(data, 'received'),
      'Take one of those words.',
    ),
  'reckon-needs-book': (data) =>
    say(
      `${named(textOf(data, 'field'))} is looked up in a book, and there is none here. ${nothing}`,
      'a book',
      'none',
      'Name it: --book PATH. Or give the figures themselves instead.',
    ),
  'reckon-outside-range': (data) => {
    const sign = unitSign(textOf(data, 'unit'));
    const value = saidValue(numberOf(data, 'value'), sign);
    return say(
      `${textOf(data, 'quantity')}: ${value} is outside the range of the source of the formula (${textOf(data, 'source')}). ${nothing}`,
      rangeOf(data),
      value,
      'Check the figure and its unit. Beyond the range there is no formula here, and nothing is carried on.',
    );
  },
  'reckon-refused': refusalOf,
};
