// English for figures that do not fit: contents, readings and counters.
import type { AccountFindingCode } from '../../../../account/index.ts';
import type { Words } from '../../shape.ts';
import { listOf, maybeNumber, numberOf, textOf } from '../data.ts';
import { listed, saidDoubt, saidValue } from '../said.ts';
import { bareMassOf, densityOf, entryNo, entryOf, massOf, say, storeOf, word } from '../say.ts';

export const stockWords = {
  'over-capacity': (data, where, context) =>
    say(
      `After entry ${textOf(data, 'ref')}, ${storeOf(where)} would hold ${massOf(data, 'massMg', context)} against its capacity of ${bareMassOf(data, 'capacityMg', context)}: one of the entries behind that figure does not fit.`,
      `at most ${bareMassOf(data, 'capacityMg', context)}`,
      massOf(data, 'massMg', context),
      `Look at its entries, and undo or correct the one that is wrong: waterwright store show ${word(storeOf(where))}.`,
    ),
  'negative-stock': (data, where, context) =>
    say(
      `${storeOf(where)} stands at ${massOf(data, 'massMg', context)}, less than nothing: water that flowed in is not in the book, or too much was entered as taken out. What is missing here is counted on nowhere.`,
      'zero or more',
      massOf(data, 'massMg', context),
      `Look at its entries, then read its content: waterwright store show ${word(storeOf(where))}.`,
    ),
  'stands-over-capacity': (data, where, context) =>
    say(
      `${storeOf(where)} stands at ${massOf(data, 'massMg', context)}, more than the ${bareMassOf(data, 'capacityMg', context)} that it can hold: one of the entries behind that figure does not fit, or something was changed and not entered. No more than it can hold is counted on.`,
      `at most ${bareMassOf(data, 'capacityMg', context)}`,
      massOf(data, 'massMg', context),
      `Look at its entries, then read its content: waterwright store show ${word(storeOf(where))}.`,
    ),
  'never-weighed': (data, where, context) => {
    const mgPerL = densityOf(data, context);
    const wide = saidDoubt(numberOf(data, 'u95Mg'), mgPerL);
    return say(
      `${storeOf(where)} is known within ${wide} only, wide for its ${bareMassOf(data, 'capacityMg', context)}: nobody seems to have measured it yet.`,
      'a content that was measured once',
      wide,
      `Weigh or gauge it when there is time: waterwright log weigh ${word(storeOf(where))} AMOUNT.`,
    );
  },
  'reading-far-off': (data, where, context) => {
    const mgPerL = densityOf(data, context);
    const within = saidDoubt(numberOf(data, 'u95Mg'), mgPerL);
    return say(
      `${storeOf(where)} was ${textOf(data, 'how')} at ${bareMassOf(data, 'readMg', context)}; the book expected ${bareMassOf(data, 'expectedMg', context)}, and the two should agree within ${within}. The reading is used, and moves the figure.`,
      `${bareMassOf(data, 'expectedMg', context)}, within ${within}`,
      bareMassOf(data, 'readMg', context),
      `Read it once more. If the entry has a slip: waterwright log undo ${entryNo(data)}.`,
    );
  },
  'reading-skipped': (data, where) =>
    say(
      `A reading of ${storeOf(where)} was planned and not done (${textOf(data, 'ref')}); its figure rests on what was known before.`,
      'a content',
      'no reading',
      `Make up for it when there is time: waterwright log weigh ${word(storeOf(where))} AMOUNT.`,
    ),
  'count-missing': (data) =>
    say(
      `${entryOf(data)} has no reading of ${textOf(data, 'instrument')}. Nothing is lost: its next reading covers the time since the last one.`,
      'a reading',
      'no reading',
      `If it was read after all: waterwright log undo ${entryNo(data)}, and enter the line again with it: waterwright log day.`,
    ),
  'counter-backwards': (data) => {
    const unit = textOf(data, 'unit');
    const [value, last] = [saidValue(numberOf(data, 'value'), unit), saidValue(numberOf(data, 'last'), unit)];
    return say(
      `${textOf(data, 'instrument')} reads ${value} after ${last} (${textOf(data, 'ref')}), and it counts upwards only. The water of that interval is not counted.`,
      `${last} or more`,
      value,
      `Look at the counter again. If the entry has a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    );
  },
  'counter-leaps': (data, _where, context) =>
    say(
      `${textOf(data, 'instrument')} says ${bareMassOf(data, 'massMg', context)} in one interval (${textOf(data, 'ref')}), more than the ${bareMassOf(data, 'mostMg', context)} that can pass in that time. It is counted as it was read.`,
      `at most ${bareMassOf(data, 'mostMg', context)}`,
      bareMassOf(data, 'massMg', context),
      `Look at the counter again. If the entry has a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    ),
  'drinks-exceed-counter': (data, _where, context) =>
    say(
      `Single entries up to ${textOf(data, 'ref')} add up to ${bareMassOf(data, 'singleMg', context)}; ${textOf(data, 'instrument')} counted ${bareMassOf(data, 'countedMg', context)} in the same time. The counter stands, and the single entries are a split of it.`,
      `at most ${bareMassOf(data, 'countedMg', context)}`,
      bareMassOf(data, 'singleMg', context),
      'Look for a single entry that was made twice: waterwright book show.',
    ),
  'unmetered-inflow': (data, where, context) =>
    say(
      `More was taken out of ${storeOf(where)} than the book had put in (${entryOf(data)}): ${bareMassOf(data, 'massMg', context)} came in by ${textOf(data, 'unit')}, which no meter counts.`,
      'an inflow that some meter counts',
      `${bareMassOf(data, 'massMg', context)} that none counted`,
      'Look why that unit ran, and how long: water that it collects is missing elsewhere meanwhile.',
    ),
  'legs-differ': (data, _where, context) =>
    say(
      `${entryOf(data)}: the stores that gave say ${bareMassOf(data, 'givenMg', context)}, those that got it say ${bareMassOf(data, 'gotMg', context)}. What was given is counted, and the last receiver has the difference.`,
      `${bareMassOf(data, 'givenMg', context)} in the receivers`,
      bareMassOf(data, 'gotMg', context),
      `If one of the amounts is a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    ),
  'tank-not-run-dry': (data, where, context) => {
    const book =
      maybeNumber(data, 'bookMg') === null
        ? ''
        : ` The keeper's own book said ${bareMassOf(data, 'bookMg', context)}.`;
    return say(
      `${storeOf(where)} was called empty although the flow had not stopped (${textOf(data, 'ref')}); that tells nothing of what is left, and its figure stays as reckoned.${book}`,
      'a flow that stopped by itself, or a gauging',
      'a flow that was ended',
      `Pump until the flow stops, then: waterwright log empty ${word(storeOf(where))} --flow-stopped. Or gauge it: waterwright log gauge ${word(storeOf(where))} AMOUNT.`,
    );
  },
  'reserve-below-floor': (data, _where, context) =>
    say(
      `The reserve holds ${massOf(data, 'massMg', context)}, below its floor of ${bareMassOf(data, 'floorMg', context)} (${listed(listOf(data, 'stores'))}).`,
      `${bareMassOf(data, 'floorMg', context)} or more`,
      massOf(data, 'massMg', context),
      'Fill it up with released water, or tell the planner: waterwright today.',
    ),
  'waste-limit': (data, where, context) =>
    say(
      `${storeOf(where)} holds ${massOf(data, 'massMg', context)} of waste, above its limit of ${bareMassOf(data, 'limitMg', context)}.`,
      `at most ${bareMassOf(data, 'limitMg', context)}`,
      massOf(data, 'massMg', context),
      'Send further waste elsewhere, and take out what is above the limit.',
    ),
} satisfies Partial<Words<AccountFindingCode>>;
