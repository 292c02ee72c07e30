// English for the answer to "may I use this water?": what the book knows, never that water is fit for anything.

/** What the account knows about the use of a store's water. */
export interface StoreUse {
  /** Why it is not free, by the account's word; null: it is free. */
  readonly why: string | null;
  readonly grade: string | null;
  /** On whose word it may be used. */
  readonly release: string;
  readonly hold: { readonly hold: string; readonly since: string; readonly reason: string } | null;
}

/** Reasons of holds that a rule set by itself; what a person wrote stands as written. */
const ruleReasons: ReadonlyMap<string, string> = new Map([
  ['biocides-meet', 'two biocides that must not meet came together in it'],
  ['grade-may-not-flow', 'water of another grade came into it that may not'],
  ['grade-went-up', 'its grade was raised'],
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

/** The sentences, the answer first. */
export function storeAnswer(use: StoreUse): string {
  const { why, grade, release, hold } = use;
  const since = hold === null ? '' : ` ${hold.hold} since ${hold.since} (${saidHoldReason(hold.reason)})`;
  switch (why) {
    case null:
      return `Yes, as ${grade ?? 'unknown'} water by the rules of this outpost: ${releases.get(release) ?? release}. No hold is in the book.`;
    case 'hold':
      return `No. HOLD${since}. It waits for a release, a waiver or a downgrade.`;
    case 'conditional':
      return `Only in an emergency. CONDITIONAL${since}. It waits for a release.`;
    case 'reserve':
      return 'It is the reserve: kept for an emergency. What is drawn from it is entered as drawn from the reserve.';
    case 'emergency only':
      return `Only in an emergency: that is what ${grade ?? 'this'} water is for at this outpost.`;
    case 'waste':
      return 'No. It is waste.';
    case 'not released':
      return 'Not yet. NOT RELEASED: it waits for a sample that passes and a release.';
    case 'empty':
      return 'Nothing above its usable remainder is in it.';
    case 'grade unknown':
      return 'Not by this book: what grade it holds is not known.';
    default:
      return `No: ${why}.`;
  }
}
