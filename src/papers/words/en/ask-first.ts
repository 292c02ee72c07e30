// English for what is asked before it is kept, and for figures that say nothing.
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Words } from '../shape.ts';
import { maybeNumber, numberOf, textOf } from './data.ts';
import { saidValue } from './said.ts';
import { bareMassOf, massOf, say, timeOf } from './say.ts';

const nothing = 'Nothing was written.';
const sure = 'If it is right as it stands: add --yes; it is kept, with its finding.';

export const askFirstWords = {
  'source-unsaid': (data) =>
    say(
      `Nobody said where the water comes from that goes into ${textOf(data, 'to')}: it would be on nobody's word, and ${textOf(data, 'to')} would not be counted on. ${nothing}`,
      'the store, port or unit that it comes from',
      'nothing',
      `Say it: add --from PLACE; from outside of the outpost: --from outside. If nobody knows: add --yes; it is kept as from nowhere.`,
    ),
  'more-than-there': (data, _where, context) => {
    const has = massOf(data, 'hasMg', context);
    return say(
      `${bareMassOf(data, 'massMg', context)} from ${textOf(data, 'from')} is more than there is: by the book ${has}. ${nothing}`,
      `at most ${has}`,
      bareMassOf(data, 'massMg', context),
      `Check the amount and its unit. ${sure}`,
    );
  },
  'drink-large': (data, _where, context) =>
    say(
      `A drink of ${bareMassOf(data, 'massMg', context)} is more than one person takes in a day here, ${bareMassOf(data, 'mostMg', context)}. ${nothing}`,
      `at most ${bareMassOf(data, 'mostMg', context)} for one drink`,
      bareMassOf(data, 'massMg', context),
      `Check the amount and its unit: a bare number is in strokes. ${sure}`,
    ),
  'reading-unusual': (data) => {
    const unit = textOf(data, 'unit');
    const said = (key: string) => saidValue(digits(numberOf(data, key)), unit);
    const fits = maybeNumber(data, 'fits');
    const range = `${saidValue(digits(numberOf(data, 'low')), '')} to ${said('high')}`;
    return say(
      `${textOf(data, 'of')}: ${said('value')} is far from what is expected here, ${range}. ${nothing}`,
      range,
      said('value'),
      `${fits === null ? 'Read it again.' : `Read it again; ${said('fits')} would fit.`} ${sure}`,
    );
  },
  'counter-below-last': (data) => {
    const [value, last] = [saidValue(numberOf(data, 'value'), ''), saidValue(numberOf(data, 'last'), '')];
    return say(
      `${textOf(data, 'instrument')} reads ${value}, below the ${last} before it, and it counts upwards only. ${nothing}`,
      `${last} or more`,
      value,
      `Read it again. If it was replaced, enter that first: waterwright log instrument-replaced. ${sure}`,
    );
  },
  'time-ahead': (data, _where, context) =>
    say(
      `${timeOf(data, 'happenedAtMs', context)} is days after the last entry of this practice book, ${timeOf(data, 'presentMs', context)}; the book would go on from there. ${nothing}`,
      `a time before ${timeOf(data, 'endMs', context)}`,
      timeOf(data, 'happenedAtMs', context),
      `Check the day. ${sure}`,
    ),
  'amount-nothing': (data) =>
    say(
      `${textOf(data, 'received')} is no water that moved. ${nothing}`,
      'an amount above 0',
      textOf(data, 'received'),
      'Give what moved, with its unit. What was entered and did not happen is undone: waterwright log undo NUMBER.',
    ),
  'figure-not-whole': (data) =>
    say(
      `${textOf(data, 'received')} is no count. ${nothing}`,
      `whole ${textOf(data, 'unit')}, from 0 on`,
      textOf(data, 'received'),
      `Give whole ${textOf(data, 'unit')}, or an amount with its unit, as 200mL.`,
    ),
} satisfies Partial<Words<DeskFindingCode>>;

/** Four digits: enough to see the slip. */
function digits(value: number): number {
  const size = Math.abs(value);
  const steps = size >= 1000 ? 1 : size >= 10 ? 10 : size >= 1 ? 100 : 1000;
  return Number.isInteger(value) ? value : Math.round(value * steps) / steps;
}
