// The total order of entries: when it happened, then site, then number. The order of arrival has no say.

export interface OrderKey {
  readonly happenedAtMs: number;
  readonly site: string;
  readonly number: number;
}

/** Negative when `a` comes first. Sites compare by code units, never by a locale. */
export function compareOrder(a: OrderKey, b: OrderKey): number {
  if (a.happenedAtMs !== b.happenedAtMs) return a.happenedAtMs - b.happenedAtMs;
  if (a.site !== b.site) return a.site < b.site ? -1 : 1;
  return a.number - b.number;
}
