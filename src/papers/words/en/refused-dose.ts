// Why a dose is refused, and the way out: what it makes stands beside what the outpost allows.
import { type FindingData, roundToDigits } from '../../../ground/units/index.ts';
import type { WordsContext } from '../shape.ts';
import { maybeNumber, numberOf, textOf } from './data.ts';
import { saidValue } from './said.ts';
import { bareMassOf, word } from './say.ts';

/** Why it is refused, what is expected, what came, and the way out. */
export function refusedDose(
  data: FindingData,
  context?: WordsContext,
): { why: string; expected: string; received: string; out: string } {
  const [to, biocide] = [textOf(data, 'to'), textOf(data, 'biocide')];
  const most = saidValue(numberOf(data, 'maximumMgPerL'), 'mg/L');
  const told = maybeNumber(data, 'wantedMgPerL');
  const made = told ?? maybeNumber(data, 'resultMgPerL') ?? 0;
  // Two digits tell a slip of ten, and the reckoned figure has no more.
  const makes = told === null ? `${roundToDigits(made, 2)}\u00A0mg/L` : saidValue(told, 'mg/L');
  const unknown = told === null && maybeNumber(data, 'presentMgPerL') === null;
  const what =
    told === null
      ? `${bareMassOf(data, 'massMg', context)} of ${biocide} concentrate in ${to} makes ${unknown ? 'at least ' : ''}${makes}`
      : `${makes} of ${biocide} is wanted in ${to}`;
  return {
    why: `${what}, and at this outpost nothing is dosed above ${most}`,
    expected: `a dose that makes at most ${most}`,
    received: makes,
    out: `Look at the point of the figure: a dose ten times too large is the common slip. Reckon it: waterwright reckon dose ${word(to)}. More than that is for the medical officer to decide.`,
  };
}
