// From a finding to a finding with its words: the one door through which every room's findings go.
import type { DayRule, Finding } from '../../ground/units/index.ts';
import type { WordedFinding } from '../sheets/finding.ts';
import { englishWords } from './en/index.ts';

/**
 * The finding with its four sentences.
 * @throws Error for a code that no table has: a room that raises it has forgotten its words.
 */
export function wordFinding(
  finding: Finding,
  context: { readonly dayRule?: DayRule | null; readonly mgPerL?: number | null } = {},
): WordedFinding {
  const { code, severity, where, data, entries } = finding;
  const words = englishWords.get(code);
  if (words === undefined) throw new Error(`there are no words for the finding ${code}`);
  const { dayRule = null, mgPerL = null } = context;
  return { code, severity, where, entries, ...words(data, where, { dayRule, mgPerL }) };
}
