// English for what readings say of the doubts themselves: swapped labels, wrong openings, means that disagree, doubts that do not fit.
import type { AccountFindingCode } from '../../../../account/index.ts';
import type { Words } from '../../shape.ts';
import { maybeNumber, numberOf, textOf } from '../data.ts';
import { saidDoubt, saidMass, saidMassWithin, saidValueAt } from '../said.ts';
import { bareMassOf, densityOf, entryNo, entryOf, say, storeOf, timeOf, word } from '../say.ts';

export const doubtWords = {
  'labels-swapped': (data, where, context) => {
    const [store, other] = [storeOf(where), textOf(data, 'other')];
    const bare = (key: string) => bareMassOf(data, key, context);
    return say(
      `${store} was read at ${bare('readMg')} where the book expected ${bare('expectedMg')}, and ${other} at ${bare('otherReadMg')} (${textOf(data, 'otherRef')}) where it expected ${bare('otherExpectedMg')}: each reading fits the other store. Their labels, or the two names, look swapped. Both readings are used as they were entered.`,
      `${store} ${bare('expectedMg')}, ${other} ${bare('otherExpectedMg')}`,
      `${store} ${bare('readMg')}, ${other} ${bare('otherReadMg')}`,
      `Look at the two labels. If the names were taken for each other, undo both readings and enter them the other way round: waterwright log undo ${entryNo(data)}, and waterwright log undo ${textOf(data, 'otherEntryNo')}.`,
    );
  },
  'opening-off': (data, where, context) => {
    const mgPerL = densityOf(data, context);
    const offMg = numberOf(data, 'offMg');
    const by = saidMassWithin({ massMg: Math.abs(offMg), u95Mg: numberOf(data, 'u95Mg') }, mgPerL);
    const perDayMg = maybeNumber(data, 'perDayMg');
    const first = firstWords.get(textOf(data, 'toldBy')) ?? 'its first entry';
    const slow = perDayMg === null || offMg > 0 ? '' : slowLoss(perDayMg, mgPerL);
    return say(
      `${storeOf(where)} held ${by} ${offMg < 0 ? 'less' : 'more'} than ${first} said (${bareMassOf(data, 'toldMg', context)} at ${timeOf(data, 'toldAtMs', context)}), by this reading (${textOf(data, 'ref')}) and everything that was moved since. It is an error of ${first} as far as the book can tell.${slow}`,
      bareMassOf(data, 'toldMg', context),
      saidMass(numberOf(data, 'toldMg') + offMg, mgPerL),
      `Nothing has to be entered: the figure of ${storeOf(where)} follows the reading. To see what it rests on: waterwright store show ${word(storeOf(where))}.`,
    );
  },
  'air-does-not-close': (data, _where, context) => {
    const mgPerL = densityOf(data, context);
    const offMg = numberOf(data, 'offMg');
    const by = saidMassWithin({ massMg: Math.abs(offMg), u95Mg: numberOf(data, 'u95Mg') }, mgPerL);
    const within = saidDoubt(numberOf(data, 'u95Mg'), mgPerL);
    const humidity = saidValueAt(numberOf(data, 'percent'), 0, '%');
    const ref = textOf(data, 'ref');
    if (offMg < 0)
      return say(
        `${by} of the vapour that people gave off since the humidity was last read is missing: it reached neither the condensate counter nor the air (humidity ${humidity}, ${ref}). Another condenser or a cold surface may be collecting it, fewer people may have been here or less active, or a counter is wrong.`,
        `a balance within ${within}`,
        `${saidMass(-offMg, mgPerL)} too little`,
        'Look at the bags and coils of other condensers and at cold walls, and read the humidity once more.',
      );
    return say(
      `${by} more vapour came since the humidity was last read than people give off: it is in the condensate counter or in the air (humidity ${humidity}, ${ref}). Water may be evaporating somewhere in the cabin, more people may have been here or more active, or a counter is wrong.`,
      `a balance within ${within}`,
      `${saidMass(offMg, mgPerL)} too much`,
      'Look for wet places, open water and things hung up to dry, and read the humidity once more.',
    );
  },
  'means-disagree': (data, _where, context) => {
    const within = saidDoubt(numberOf(data, 'u95Mg'), densityOf(data, context));
    return say(
      `${entryOf(data)} says ${bareMassOf(data, 'saidMg', context)}, and ${bareMassOf(data, 'otherMg', context)} by ${textOf(data, 'means')}; for the same water the two should agree within ${within}. Both are used, the surer one more, and the movement is taken to be as doubtful as they disagree.`,
      `${bareMassOf(data, 'saidMg', context)}, within ${within}`,
      bareMassOf(data, 'otherMg', context),
      `Look at both figures. If one has a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    );
  },
  'doubts-do-not-fit': (data) => {
    const factor = saidValueAt(numberOf(data, 'factor'), -2, '');
    const isWider = numberOf(data, 'factor') > 1;
    const { what, remedy } = misfit(textOf(data, 'of'), textOf(data, 'kind'), isWider);
    return say(
      `The last ${textOf(data, 'readings')} ${what} scatter ${factor} times as widely as their doubts say. Figures that rest on them are ${isWider ? 'less sure' : 'surer'} than their ± says.`,
      'a factor from 0.8 to 1.25',
      factor,
      remedy,
    );
  },
  'reading-before-calibration': (data) =>
    say(
      `${entryOf(data)} has a reading of ${textOf(data, 'instrument')} from before its calibration on ${textOf(data, 'calibratedOn')}. The declared doubts were not yet true then; the reading is used with them all the same.`,
      `a reading from ${textOf(data, 'calibratedOn')} on`,
      'an earlier one',
      `If the date is right, nothing is to be done; else correct it in the outpost file: waterwright book outpost FILE.`,
    ),
  'counter-gap': (data, _where, context) => {
    const stoodIn = maybeNumber(data, 'massMg');
    const what =
      stoodIn === null
        ? 'Nothing stands in for it, since its daily mean is not known yet.'
        : `Its daily mean stands in: ${saidMassWithin({ massMg: stoodIn, u95Mg: numberOf(data, 'u95Mg') }, densityOf(data, context))}.`;
    return say(
      `${entryOf(data)} replaced ${textOf(data, 'instrument')}, and nobody read the old one at the end: what passed since its last reading is not counted. ${what}`,
      'a last reading of the old counter',
      'no reading',
      `If it was read after all: waterwright log undo ${entryNo(data)}, and enter the replacement again with --ended-at.`,
    );
  },
} satisfies Partial<Words<AccountFindingCode>>;

/** What the first word on a content was, by whose word it was. */
const firstWords: ReadonlyMap<string, string> = new Map([
  ['opening', 'the opening'],
  ['loader\u2019s certificate', 'the loader\u2019s figure'],
]);

const OUTPOST_FILE = 'in the outpost file: waterwright book outpost FILE.';

/** What scatters, and what can be done: an instrument can be looked at, a way of reading and an assumption cannot. */
function misfit(of: string, kind: string, isWider: boolean): { what: string; remedy: string } {
  if (kind === 'assumption')
    return {
      what: `closings of the balance of ${of}`,
      remedy: `Look at the norms of people ${OUTPOST_FILE}`,
    };
  const declare = `Declare ${isWider ? 'wider' : 'narrower'} doubts for`;
  if (kind === 'way')
    return {
      what: `readings "${of}"`,
      remedy: `Give such a reading its own ± when you enter it, or ${declare.toLowerCase()} the stores ${OUTPOST_FILE}`,
    };
  return {
    what: `readings of ${of}`,
    remedy: isWider
      ? `Have ${of} looked at. If it is as good as it gets, ${declare.toLowerCase()} it ${OUTPOST_FILE}`
      : `${declare} ${of} ${OUTPOST_FILE}`,
  };
}

function slowLoss(perDayMg: number, mgPerL: number | null): string {
  return ` A slow loss of ${saidMass(perDayMg, mgPerL)} a day since then would look the same.`;
}
