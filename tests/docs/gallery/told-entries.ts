// A small book of the invented outpost Holm, told entry by entry until a finding of the account comes of it.
import type { AccountFindingCode } from '../../../src/account/index.ts';
import { formatShortStamp } from '../../../src/ground/units/index.ts';
import { entryInWords } from '../../../src/papers/index.ts';
import { holm, type Told } from '../../journeys/told.ts';
import { failure, type Sample, sample } from './sample.ts';

type Tell = (told: Told) => unknown;

/** The entries after the opening, as the daybook shows them, and the finding. */
export function failureOf(code: AccountFindingCode, tell: Tell, begin: () => Told = holm) {
  const told = begin();
  const opened = told.entries.length;
  tell(told);
  const { fold } = told;
  const context = { mgPerL: fold.mgPerL, dayRule: fold.dayRule, instruments: fold.index.instruments };
  const given = told.entries.slice(opened).map((entry) => {
    const who = entry.source === undefined ? entry.by : `${entry.by}, ${entry.source}`;
    return `${formatShortStamp(entry.happenedAtMs, fold.dayRule)}  ${who}: ${entryInWords(entry, context)}`;
  });
  const shown = given.length === 0 ? ['(nothing but the opening)'] : given;
  return failure(shown, told.findings(code).at(-1), context);
}

/** One sample for each way of telling. */
export function toldSample(code: AccountFindingCode, when: string, tell: Tell, ...more: Tell[]): Sample {
  return sample(when, () => failureOf(code, tell), ...more.map((each) => () => failureOf(code, each)));
}
