// English for what a calculator says beside its figures.
import { type FindingData, roundToDigits, styled } from '../../../../ground/units/index.ts';
import { numberOf, textOf } from '../data.ts';
import { inputLabels } from './labels.ts';

type Saying = (data: FindingData) => string;

const percent = (data: FindingData, key: string): string => `${Math.round(100 * numberOf(data, key))}\u00A0%`;
const litres = (data: FindingData, key: string): string => within(numberOf(data, key), 'L');
const kilograms = (data: FindingData, key: string): string => within(numberOf(data, key), 'kg');
const kelvins = (data: FindingData): string =>
  `${Math.abs(Math.round(10 * numberOf(data, 'byK')) / 10)}\u00A0K`;

/** Two digits: it is a doubt, or a difference of two figures. */
function within(value: number, unit: string): string {
  return `${styled(roundToDigits(value, 2), 'screen')}\u00A0${unit}`;
}

/** Several inputs that are one cause. */
const causes: Readonly<Record<string, string>> = {
  'the-tank-itself': 'volume of the tank itself, shell and bladder',
};

export const sayings: Readonly<Record<string, Saying>> = {
  'flow-laminar': () => 'The flow is laminar.',
  'flow-turbulent': () => 'The flow is turbulent.',
  'flow-transitional': () =>
    'The flow is transitional: between 2000 and 4000 no law is known, and a smooth joint stands in for one.',
  'couplings-rule': (data) =>
    `The couplings take ${percent(data, 'share')} of the pressure: they set the time, not the hose.`,
  'rating-not-given': () => 'No rating was given: this is no permission to use that pressure.',
  'hose-learned': (data) =>
    `From its own runs this hose takes ${numberOf(data, 'factor').toFixed(2)} times what the formulas say; the ± is that of its next run.`,
  'out-of-reach': () =>
    'The gas comes to rest before that: the volume is never pushed out without a compressor.',
  'out-of-reach-cold': () => 'If the gas stays cold, it comes to rest before that.',
  'wall-sweats': (data) => `The wall is ${kelvins(data)} colder than the dew point: it sweats.`,
  'wall-near': (data) => `The wall is within ${kelvins(data)} of the dew point: too near to be called dry.`,
  'wall-dry': (data) => `The wall is ${kelvins(data)} above the dew point: it stays dry.`,
  'coil-dry': () => 'The coil is not colder than the dew point: nothing condenses.',
  'humidity-rises': () => 'That is less than the crew gives off: the humidity rises until the two are equal.',
  'humidity-falls': () => 'That is more than the crew gives off: the humidity falls until the two are equal.',
  'stack-cools': () => 'Below 1.48 V a cell takes heat from around it.',
  'stress-is-no-permission': () => 'A stress is no permission: the rating of the maker is.',
  'no-maximum': () =>
    'No maximum of this outpost was given: have the medical officer confirm the resulting concentration first.',
  'useless-no-better-than-known': (data) =>
    `Useless: it would know the content to ± ${litres(data, 'u95L')}, and ± ${litres(data, 'presentU95L')} is known already.`,
  'useless-larger-than-content': (data) =>
    `Useless: it would know the content to ± ${litres(data, 'u95L')}, more than the ${litres(data, 'contentL')} that are in it.`,
  'stop-at-rating': (data) =>
    `If there is less gas in the tank than is believed, its pressure rises faster: close the bottle before the tank reads ${roundToDigits(numberOf(data, 'limitKPa'), 4)}\u00A0kPa absolute, whatever the bottle reads.`,
  'gauging-useful': (data) =>
    `Together with what is known now, the content would be known to ± ${litres(data, 'afterU95L')}.`,
  'frame-fixed': () =>
    'The frame is taken to be fixed. Where it floats, the mass is larger: give the mass of the frame.',
  'frame-floats': (data) =>
    `The floating frame makes ${kilograms(data, 'moreKg')} more than a fixed one would.`,
  'less-than-empty': () =>
    'That is less than the chair and the empty container: look at their masses and at the spring.',
  'never-that-hot': (data) =>
    `The heater never gets there: it would stop at ${Math.round(10 * numberOf(data, 'highestC')) / 10}\u00A0°C.`,
  'never-thaws': () => 'The loss eats the whole power: it never thaws.',
  'never-freezes': () => 'Around it is not below 0\u00A0°C: it never freezes.',
  'only-liquid-counts': () => 'Only what is liquid can be drawn.',
  'ruled-by': (data) =>
    `${percent(data, 'share')} of the ± of the answer comes from the ${causes[textOf(data, 'cause')] ?? inputLabels[textOf(data, 'cause')]}.`,
  'grade-of-mix': () =>
    'The mixture has the worst grade of its parts, and a hold on one part holds all of it.',
};

export function sayingText(key: string, data: FindingData): string {
  const say = sayings[key];
  if (say === undefined) throw new Error(`nothing is written for ${key}`);
  return say(data);
}
