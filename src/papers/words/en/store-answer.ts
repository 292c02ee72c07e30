// English for the answer to "may I use this water?": what the book knows, never that water is fit for anything.
import { listed } from './said.ts';

/** What the account knows about the use of a store's water. */
export interface StoreUse {
  /** Why it is not free, by the account's word; null: it is free. */
  readonly why: string | null;
  readonly grade: string | null;
  /** On whose word it may be used. */
  readonly release: string;
  /** What its grade is for, and the units that may take it. */
  readonly usableFor: readonly string[];
  readonly enters: readonly string[];
  /** Whether there is anything to be used. */
  readonly content: 'some' | 'nothing usable' | 'below nothing';
  readonly hold: { readonly hold: string; readonly since: string; readonly reason: string } | null;
}

/** Reasons of holds that a rule set by itself; what a person wrote stands as written. */
const ruleReasons: ReadonlyMap<string, string> = new Map([
  ['dose-above-maximum', 'more biocide was dosed into it than this outpost allows'],
  ['biocides-meet', 'two biocides that must not meet came together in it'],
  ['grade-may-not-flow', 'water of another grade came into it that may not'],
  ['grade-may-not-enter', 'water that may not enter the unit before it went through that unit'],
  ['grade-went-up', 'its grade was raised'],
  ['grade-unknown', 'it was given a grade, and nobody knew what it was'],
  ['treatment-not-allowed', 'it was treated in a way that is not allowed for it'],
  ['result-fails', 'a result of this water fails'],
  ['limits-chosen', 'a result of this water fails a limit that was chosen'],
]);

export function saidHoldReason(reason: string): string {
  return ruleReasons.get(reason) ?? reason;
}

const releases: ReadonlyMap<string, string> = new Map([
  ['own sample', 'released on a sample of the outpost'],
  ['made here', 'made by the outpost itself'],
  ['opening', 'taken over with the opening of the book'],
  [
    'loader\u2019s certificate',
    'on the loader\u2019s certificate; no sample of the outpost stands behind it yet',
  ],
]);

/** The sentences; what it may not be used for comes first, for many read no further. */
export function storeAnswer(use: StoreUse): string {
  if (use.content === 'below nothing')
    return 'Do not drink. By the book less than nothing is in it: something was not entered. Read its content first.';
  if (use.why === null && use.content === 'nothing usable') return nothingUsable;
  return use.why === null ? free(use) : notFree(use.why, use);
}

const nothingUsable = 'Do not count on it: nothing above its usable remainder is in it.';

/** Free water is for what its grade is for, and for nothing else. */
function free({ grade, release, usableFor, enters }: StoreUse): string {
  const name = `${grade ?? 'unknown'} water`;
  const word = releases.get(release) ?? release;
  if (usableFor.includes('drink'))
    return `Yes, as ${name} by the rules of this outpost: ${word}. No hold is in the book.`;
  if (usableFor.length > 0)
    return `Do not drink. It is ${name}, for ${listed(usableFor)} alone: ${word}. No hold is in the book.`;
  return `Do not drink. It is ${name}${enters.length === 0 ? '' : `; only the ${listed(enters)} may take it`}.`;
}

function notFree(why: string, { grade, hold, content }: StoreUse): string {
  const since = hold === null ? '' : ` ${hold.hold} since ${hold.since} (${saidHoldReason(hold.reason)})`;
  switch (why) {
    case 'hold':
      return `Do not use it. HOLD${since}. It waits for a release, a waiver or a downgrade.`;
    case 'conditional':
      return `Do not drink, but in an emergency. CONDITIONAL${since}. It waits for a release.`;
    case 'reserve':
      return content === 'nothing usable'
        ? nothingUsable
        : 'It is the reserve: kept for an emergency. What is drawn from it is entered as drawn from the reserve.';
    case 'emergency only':
      return `Do not drink, but in an emergency: that is what ${grade ?? 'this'} water is for at this outpost.`;
    case 'waste':
      return 'Do not drink. It is waste.';
    case 'not released':
      return 'Do not drink yet. NOT RELEASED: it waits for a sample that passes and a release.';
    case 'release over':
      return 'Do not drink yet. Its release is over: it waits for a new sample that passes and a release.';
    case 'no limit set':
      return 'Do not drink yet. No limit set: hold. The outpost requires a limit whose figure nobody has typed.';
    case 'empty':
      return nothingUsable;
    case 'grade unknown':
      return 'Do not drink. What grade it holds is not known by this book.';
    default:
      return `No: ${why}.`;
  }
}
