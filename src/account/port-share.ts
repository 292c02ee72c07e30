// Who stood on a port in an interval, and for what share of its time.
import type { PortChange } from './fold.ts';

export interface PortShare {
  readonly store: string | null;
  readonly share: number;
}

/**
 * Shares of an interval by time. Only for flows that no counter closes at the change, such as waste by the norm:
 * a counted total is never shared out by the clock.
 */
export function shareOverPort(changes: readonly PortChange[], over: { readonly fromMs: number; readonly toMs: number }): readonly PortShare[] {
  const lengthMs = over.toMs - over.fromMs;
  if (lengthMs <= 0) return [{ store: changes.at(-1)?.store ?? null, share: 1 }];
  const shares: PortShare[] = [];
  changes.forEach((change, k) => {
    const startMs = k === 0 ? over.fromMs : Math.max(change.atMs, over.fromMs);
    const endMs = Math.min(changes[k + 1]?.atMs ?? over.toMs, over.toMs);
    if (endMs > startMs) shares.push({ store: change.store, share: (endMs - startMs) / lengthMs });
  });
  return shares;
}
