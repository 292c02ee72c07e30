// English for "may I use this water?": who released what, and what speaks against it. It never says that water is fit to drink.

/** What the account knows of a store's standing. */
export interface Standing {
  /** Why its water is in no free figure, or null. */
  readonly why: string | null;
  readonly grade: string | null;
  readonly release: string;
  readonly hold: { readonly hold: string; readonly since: string; readonly reason: string } | null;
}

export function storeAnswer(standing: Standing): string {
  const { why, hold, grade, release } = standing;
  if (why === 'hold' && hold !== null) return `Do not use: HOLD ${hold.hold} since ${hold.since} (${hold.reason}).`;
  if (why === 'conditional' && hold !== null) {
    return `Emergency only, by the medic: CONDITIONAL since ${hold.since} (${hold.reason}).`;
  }
  if (why === 'grade unknown') return 'Not released: nobody has said what is in it.';
  if (why === 'not released') return 'Not released: no result of a sample.';
  if (why === 'waste') return 'Waste: it goes back into nothing.';
  if (why === 'emergency only') return 'Emergency only, by the medic.';
  if (why === 'empty') return `Empty. It held ${grade ?? 'nothing'} last.`;
  const word = `Grade ${grade}, on the word of: ${release}. Nothing in the book speaks against it.`;
  return why === 'reserve' ? `Reserve: drawn only by the chief's word. ${word}` : word;
}
