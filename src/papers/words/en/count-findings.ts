// English for what stops a stock count, or is asked about in it.
import { type FindingData, formatClockUtc } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Words, WordsContext } from '../shape.ts';
import { numberOf, textOf } from './data.ts';
import { counted, saidMassWithin } from './said.ts';
import { bareMassOf, densityOf, say, timeOf } from './say.ts';

type CountCode = Extract<DeskFindingCode, `count-${string}`>;

const nothing = 'Nothing was written.';
const notTaken = 'Not taken.';
const anyway = 'To keep the reading as it is, type it again with --yes.';

/** An amount under two keys, `readMg` and `readU95Mg`, with its ±. */
function withinOf(data: FindingData, key: string, context: WordsContext | undefined): string {
  const amount = { massMg: numberOf(data, `${key}Mg`), u95Mg: numberOf(data, `${key}U95Mg`) };
  return saidMassWithin(amount, densityOf(data, context));
}

export const countFindingWords: Pick<Words<DeskFindingCode>, CountCode> = {
  'count-empty': () =>
    say(
      `Nothing was counted yet. ${nothing}`,
      'one reading at the least',
      'none',
      'Add readings first: waterwright count add C-01 20.3L.',
    ),
  'count-not-begun': () =>
    say(
      `No stock count is under way. ${nothing}`,
      'a count that was begun',
      'none',
      'Begin one: waterwright count start.',
    ),
  'count-under-way': (data, _where, context) =>
    say(
      `A stock count is under way since ${timeOf(data, 'begunMs', context)}, with ${counted(numberOf(data, 'typed'), 'reading')}. ${nothing}`,
      'no count under way',
      'one that was not finished',
      'Go on with it: waterwright count add. Or finish it: waterwright count finish. To begin anew and forget what was typed: waterwright count start --yes.',
    ),
  'count-far-off': (data, _where, context) =>
    say(
      `${textOf(data, 'store')} was read as ${withinOf(data, 'read', context)}, and the book has ${withinOf(data, 'book', context)}: both can hardly be right. ${notTaken}`,
      `about ${withinOf(data, 'book', context)}`,
      withinOf(data, 'read', context),
      `Read it once more, and look at its label. ${anyway}`,
    ),
  'count-over-capacity': (data, _where, context) =>
    say(
      `${textOf(data, 'store')} was read as ${bareMassOf(data, 'massMg', context)}, and it holds ${bareMassOf(data, 'capacityMg', context)} at most. ${notTaken}`,
      `at most ${bareMassOf(data, 'capacityMg', context)}`,
      bareMassOf(data, 'massMg', context),
      `Check the number, its unit and the label. ${anyway}`,
    ),
  'count-needs-doubt': (data) =>
    say(
      `${textOf(data, 'store')} has no gauge that would tell how well it was read. ${notTaken}`,
      'an amount with its ±',
      `"${textOf(data, 'received')}"`,
      'Say how far off it may be, for example 120L+-5; or - where it was not read.',
    ),
  'count-of-another-day': (data, _where, context) => {
    const day = numberOf(data, 'day');
    const isClosed = data['isClosed'] === true;
    const begun = timeOf(data, 'begunMs', context);
    return say(
      `This count was begun ${begun}${isClosed ? `, and Day ${day} is closed since` : ''}. Entered now, its readings would be of ${timeOf(data, 'nowMs', context)}. ${nothing}`,
      'a count of this day, or the time of its readings',
      `begun ${begun}`,
      `If they are of then, say when: waterwright count finish --at D${day}T${formatClockUtc(numberOf(data, 'begunMs'))}${isClosed ? ' --late REASON' : ''}. If they are of now: waterwright count finish --yes. To begin anew: waterwright count start --yes.`,
    );
  },
};
