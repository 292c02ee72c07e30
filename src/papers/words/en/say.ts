// Building sentences about the account and for the desk: which entry, which store, how much.
import type { FindingData, Where } from '../../../ground/units/index.ts';
import type { Sentences, WordsContext } from '../shape.ts';
import { maybeNumber, maybeText, numberOf } from './data.ts';
import { saidMass, saidMassWithin, saidTime } from './said.ts';

export function say(text: string, expected: string, received: string, remedy: string): Sentences {
  return { text, expected, received, remedy };
}

/** `Entry E0035`: how people know it. */
export function entryOf(data: FindingData): string {
  const ref = maybeText(data, 'ref');
  return ref === null ? 'An entry' : `Entry ${ref}`;
}

/** How a command names the entry; `ENTRY` where the finding is about none. */
export function entryNo(data: FindingData): string {
  return maybeText(data, 'entryNo') ?? 'ENTRY';
}

export function storeOf(where: Where): string {
  return where.store ?? 'the store';
}

/** A name as one word of a command line. */
export function word(name: string): string {
  return /^[\w.:/+-]+$/.test(name) ? name : `"${name.replace(/["\\$`]/g, '')}"`;
}

/** An amount under a key, with its ± where there is one under `u95Mg`. */
export function massOf(data: FindingData, key: string, context?: WordsContext): string {
  const massMg = numberOf(data, key);
  const u95Mg = maybeNumber(data, 'u95Mg');
  const mgPerL = densityOf(data, context);
  return u95Mg === null ? saidMass(massMg, mgPerL) : saidMassWithin({ massMg, u95Mg }, mgPerL);
}

/** The same without a ±: a capacity, a floor, a counted amount. */
export function bareMassOf(data: FindingData, key: string, context?: WordsContext): string {
  return saidMass(numberOf(data, key), densityOf(data, context));
}

export function densityOf(data: FindingData, context?: WordsContext): number | null {
  return maybeNumber(data, 'mgPerL') ?? context?.mgPerL ?? null;
}

export function timeOf(data: FindingData, key: string, context?: WordsContext): string {
  return saidTime(numberOf(data, key), context?.dayRule ?? null);
}

/** ` It was kept because it had happened: "…".` where somebody said so. */
export function keptBecause(data: FindingData): string {
  const happened = maybeText(data, 'happened');
  return happened === null ? '' : ` It was kept because it had happened: "${happened}".`;
}
