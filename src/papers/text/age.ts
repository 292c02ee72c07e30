// How old a reading is, in the largest unit that says enough: `40 min`, `17 h`, `46 d`.

/** Hours are rounded down: what is nearly two days old is not called two days old. */
export function saidAge(hours: number): string {
  if (hours < 1) return `${Math.floor(hours * 60)}\u00A0min`;
  return hours < 48 ? `${Math.floor(hours)}\u00A0h` : `${Math.floor(hours / 24)}\u00A0d`;
}

/** `27 to 41 d`, `11 h to 3 d`; one age where both print alike. */
export function saidAgeRange(youngHours: number, oldHours: number): string {
  const [young, old] = [saidAge(youngHours), saidAge(oldHours)];
  if (young === old) return old;
  const [count, unit] = young.split('\u00A0');
  return old.endsWith(`\u00A0${unit}`) ? `${count} to ${old}` : `${young} to ${old}`;
}

/** `weighed 17 h`; without a reading the word alone. */
export function saidKnown(store: { readonly howKnown: string; readonly age: number | null }): string {
  return store.age === null ? store.howKnown : `${store.howKnown}\u00A0${saidAge(store.age)}`;
}
