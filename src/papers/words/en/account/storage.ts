// What the account says of water that stands: biocide that is too old, lines without flow, containers near their end, tastes.
import type { AccountFindingCode } from '../../../../account/index.ts';
import type { FindingData } from '../../../../ground/units/index.ts';
import type { Words } from '../../shape.ts';
import { maybeNumber, numberOf, textOf } from '../data.ts';
import { saidOverdose } from '../refused-dose.ts';
import { counted } from '../said.ts';
import { entryNo, keptBecause, say, storeOf, timeOf, word } from '../say.ts';

const SINCE_WHAT: ReadonlyMap<string, string> = new Map([
  ['dose', 'since it was dosed'],
  ['fill', 'since the water came in'],
  ['opening', 'since the book began; it may be older'],
  ['delivery', 'since it was delivered; it may be older'],
]);

/** How much of a life is used, in the words of whichever the file allows. */
function lifeUsed(data: FindingData): { readonly used: string; readonly allowed: string } {
  const [cycles, days] = [maybeNumber(data, 'lifeCycles'), maybeNumber(data, 'lifeDays')];
  const parts = [
    ...(cycles === null
      ? []
      : [[counted(numberOf(data, 'fills'), 'filling'), `${cycles} fillings`] as const]),
    ...(days === null ? [] : [[counted(numberOf(data, 'days'), 'day'), `${days} days`] as const]),
  ];
  return {
    used: parts.map(([used]) => used).join(' and '),
    allowed: parts.map(([, allowed]) => allowed).join(' or '),
  };
}

const lifeFrom = (data: FindingData): string =>
  textOf(data, 'since') === 'disinfected'
    ? 'since it was disinfected last'
    : 'as far as the book goes back; before that nothing is known';

const lifeRemedy = (store: string): string =>
  `Plan its disinfection or another container. When it is done: waterwright log service --item ${word(store)} --what disinfected.`;

export const storageWords = {
  'dose-above-maximum': (data, where, context) => {
    const store = storeOf(where);
    const { what, makes, most } = saidOverdose(data, store, context);
    return say(
      `${what} (${textOf(data, 'ref')}), and at this outpost nothing is dosed above ${most}. ${store} is on HOLD.${keptBecause(data)}`,
      `a dose that makes at most ${most}`,
      makes,
      `Do not use it. Sample it, and ask the medical officer; thinner water brings it down: waterwright log sample. If the entry has a slip: waterwright log undo ${entryNo(data)}.`,
    );
  },
  'biocide-over-age': (data, where, context) => {
    const [biocide, store] = [textOf(data, 'biocide'), storeOf(where)];
    const [days, most] = [numberOf(data, 'days'), numberOf(data, 'mostDays')];
    return say(
      `The ${biocide} in ${store} is ${counted(days, 'day')} old (${SINCE_WHAT.get(textOf(data, 'by')) ?? 'as the book has it'}, ${timeOf(data, 'sinceMs', context)}); at this outpost it counts for ${counted(most, 'day')}.`,
      `${biocide} not older than ${counted(most, 'day')}`,
      counted(days, 'day'),
      `Hold ${store}, sample it, and dose it if the result says so: waterwright log sample, then waterwright reckon dose --store ${word(store)}.`,
    );
  },
  'line-stood-too-long': (data, _where, context) => {
    const [line, days, most] = [textOf(data, 'line'), numberOf(data, 'days'), numberOf(data, 'mostDays')];
    const since =
      data['flowed'] === true
        ? `since ${timeOf(data, 'sinceMs', context)}`
        : `since the book began, ${timeOf(data, 'sinceMs', context)}, or longer`;
    return say(
      `No water has gone through the ${textOf(data, 'kind')} ${line} for ${counted(days, 'day')} (${since}). What stands in it counts as good for ${counted(most, 'day')}.`,
      `a flow within ${counted(most, 'day')}`,
      `none for ${counted(days, 'day')}`,
      'Flush the line into waste before water for people goes through it, and enter what it took: waterwright log use.',
    );
  },
  'container-life-near': (data, where) => {
    const { used, allowed } = lifeUsed(data);
    return say(
      `${storeOf(where)} is near the end of its life: ${used} of ${allowed}, ${lifeFrom(data)}.`,
      `within ${allowed}`,
      used,
      lifeRemedy(storeOf(where)),
    );
  },
  'container-life-over': (data, where) => {
    const { used, allowed } = lifeUsed(data);
    return say(
      `${storeOf(where)} is past its life: ${used} of ${allowed}, ${lifeFrom(data)}.`,
      `within ${allowed}`,
      used,
      lifeRemedy(storeOf(where)),
    );
  },
  'taste-repeated': (data) => {
    const [source, times] = [textOf(data, 'source'), numberOf(data, 'times')];
    const within = counted(numberOf(data, 'withinDays'), 'day');
    return say(
      `A taste or odour was told of ${source} ${times} times within ${within}.`,
      `fewer than 2 within ${within}`,
      `${times}`,
      `Take a sample there and look at what fed it: waterwright log sample, waterwright store list.`,
    );
  },
} satisfies Partial<Words<AccountFindingCode>>;
