// Why a dose is refused, and the way out: what it makes stands beside what the outpost allows.
import { type FindingData, roundToDigits } from '../../../ground/units/index.ts';
import type { WordsContext } from '../shape.ts';
import { maybeNumber, numberOf, textOf } from './data.ts';
import { saidValue } from './said.ts';
import { bareMassOf, word } from './say.ts';

/** `100 mL of silver concentrate in C-11 makes at least 1.7 mg/L`, or what was wanted. */
export function saidOverdose(
  data: FindingData,
  to: string,
  context?: WordsContext,
): { readonly what: string; readonly makes: string; readonly most: string } {
  const biocide = textOf(data, 'biocide');
  const most = saidValue(numberOf(data, 'maximumMgPerL'), 'mg/L');
  const told = maybeNumber(data, 'wantedMgPerL');
  if (told !== null) {
    const makes = saidValue(told, 'mg/L');
    return { what: `${makes} of ${biocide} is wanted in ${to}`, makes, most };
  }
  // Two digits tell a slip of ten, and the reckoned figure has no more.
  const makes = `${roundToDigits(numberOf(data, 'resultMgPerL'), 2)}\u00A0mg/L`;
  const least = maybeNumber(data, 'presentMgPerL') === null ? 'at least ' : '';
  const dose = bareMassOf(data, 'massMg', context);
  return { what: `${dose} of ${biocide} concentrate in ${to} makes ${least}${makes}`, makes, most };
}

/** Why it is refused, what is expected, what came, and the way out. */
export function refusedDose(
  data: FindingData,
  context?: WordsContext,
): { why: string; expected: string; received: string; out: string } {
  const to = textOf(data, 'to');
  const { what, makes, most } = saidOverdose(data, to, context);
  return {
    why: `${what}, and at this outpost nothing is dosed above ${most}`,
    expected: `a dose that makes at most ${most}`,
    received: makes,
    out: `Look at the point of the figure: a dose ten times too large is the common slip. Reckon it: waterwright reckon dose --store ${word(to)}. More than that is for the medical officer to decide.`,
  };
}
