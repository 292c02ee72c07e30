// English for what readings say of the doubts themselves: swapped labels, wrong openings, means that disagree, doubts that do not fit.
import type { AccountFindingCode } from '../../../../account/index.ts';
import { roundAtPlace } from '../../../../ground/units/index.ts';
import type { Words } from '../../shape.ts';
import { maybeNumber, maybeText, numberOf, textOf } from '../data.ts';
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
      `Look at the two labels. If the names were taken for each other, undo both readings and enter them the other way round: waterwright log undo ${entryNo(data)}.`,
    );
  },
  'opening-off': (data, where, context) => {
    const mgPerL = densityOf(data, context);
    const offMg = numberOf(data, 'offMg');
    const by = saidMassWithin({ massMg: Math.abs(offMg), u95Mg: numberOf(data, 'u95Mg') }, mgPerL);
    const perDayMg = maybeNumber(data, 'perDayMg');
    const slow = perDayMg === null || offMg > 0 ? '' : slowLoss(perDayMg, mgPerL);
    return say(
      `${storeOf(where)} held ${by} ${offMg < 0 ? 'less' : 'more'} than the opening said (${bareMassOf(data, 'toldMg', context)} at ${timeOf(data, 'toldAtMs', context)}), by this reading (${textOf(data, 'ref')}) and everything that was moved since. It is an error of the opening as far as the book can tell.${slow}`,
      bareMassOf(data, 'toldMg', context),
      saidMass(numberOf(data, 'toldMg') + offMg, mgPerL),
      `Nothing has to be entered: the figure of ${storeOf(where)} stands by the reading. To see what it rests on: waterwright store show ${word(storeOf(where))}.`,
    );
  },
  'air-does-not-close': (data, _where, context) => {
    const mgPerL = densityOf(data, context);
    const offMg = numberOf(data, 'offMg');
    const by = saidMassWithin({ massMg: Math.abs(offMg), u95Mg: numberOf(data, 'u95Mg') }, mgPerL);
    const humidity = saidValueAt(numberOf(data, 'percent'), 0, '%');
    const [text, causes] =
      offMg < 0
        ? [
            `${by} of the vapour that people gave off since the last line is missing: it reached neither the condensate counter nor the air (humidity ${humidity}, ${textOf(data, 'ref')}).`,
            'Another condenser or a cold surface may be collecting, people may have been fewer or less active, or a counter is wrong.',
          ]
        : [
            `${by} more vapour came since the last line than people give off: it is in the condensate counter or in the air (humidity ${humidity}, ${textOf(data, 'ref')}).`,
            'Water may be evaporating somewhere in the cabin, people may have been more or more active, or a counter is wrong.',
          ];
    return say(
      `${text} ${causes}`,
      `a balance within ${saidDoubt(numberOf(data, 'u95Mg'), mgPerL)}`,
      `${offMg < 0 ? 'less' : 'more'} by ${saidMass(Math.abs(offMg), mgPerL)}`,
      'Look at the bags and coils of the other condensers and at cold walls, and read the humidity once more.',
    );
  },
  'means-disagree': (data, _where, context) => {
    const within = saidDoubt(numberOf(data, 'u95Mg'), densityOf(data, context));
    return say(
      `${entryOf(data)} says ${bareMassOf(data, 'saidMg', context)}, and ${bareMassOf(data, 'otherMg', context)} by ${textOf(data, 'means')}; for the same water the two should agree within ${within}. Both are used, each by its doubt.`,
      `${bareMassOf(data, 'saidMg', context)}, within ${within}`,
      bareMassOf(data, 'otherMg', context),
      `Look at both figures. If one has a slip: waterwright log undo ${entryNo(data)}, and enter it again.`,
    );
  },
  'doubts-do-not-fit': (data) => {
    const factor = roundAtPlace(numberOf(data, 'factor'), -2);
    const isWider = numberOf(data, 'factor') > 1;
    return say(
      `The last ${textOf(data, 'readings')} readings of ${textOf(data, 'of')} scatter ${factor} times as widely as the outpost file declares. ${isWider ? 'What rests on them is known less surely than it is printed.' : 'What rests on them is known more surely than it is printed.'}`,
      'a factor from 0.8 to 1.25',
      factor,
      isWider
        ? `Have ${textOf(data, 'of')} looked at; if it is as good as it gets, declare wider doubts for it in the outpost file: waterwright book outpost FILE.`
        : `Declare narrower doubts for ${textOf(data, 'of')} in the outpost file: waterwright book outpost FILE.`,
    );
  },
  'reading-before-calibration': (data) =>
    say(
      `${entryOf(data)} has a reading of ${textOf(data, 'instrument')} from before its calibration of ${textOf(data, 'calibratedOn')}. The declared doubts were not yet true then; the reading is used with them all the same.`,
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
      `${textOf(data, 'instrument')} was replaced (${textOf(data, 'ref')}) and nobody read the old one at the end: what passed since its last reading is not counted. ${what}`,
      'a last reading of the old counter',
      maybeText(data, 'endedAt') ?? 'none',
      `If it was read after all: waterwright log undo ${entryNo(data)}, and enter the replacement again with --ended-at.`,
    );
  },
} satisfies Partial<Words<AccountFindingCode>>;

function slowLoss(perDayMg: number, mgPerL: number | null): string {
  return ` A slow loss of ${saidMass(perDayMg, mgPerL)} a day since then would look the same.`;
}
