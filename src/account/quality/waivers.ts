// Waived holds: they are back when their time is over.
import { putOnHold } from '../hold.ts';
import type { HoldState, StoreState, WaivedHold } from '../store-state.ts';

/** Sets a hold aside until the end of the waiver; the hold itself goes on. */
export function waive(state: StoreState, waived: WaivedHold): void {
  state.waived = [...state.waived.filter(({ hold }) => hold.hold !== waived.hold.hold), waived];
}

/** A waived hold comes with other water: of two waivers of one hold the mix has the one that is over first. */
export function bringWaived(state: StoreState, waived: WaivedHold): void {
  const there = state.waived.find(({ hold }) => hold.hold === waived.hold.hold);
  if (there === undefined || waived.untilMs < there.untilMs) waive(state, waived);
}

/** Holds whose waiver is over stand again. */
export function endWaivers(state: StoreState, nowMs: number): void {
  if (state.waived.length === 0) return;
  for (const { hold, untilMs } of state.waived) if (untilMs <= nowMs) putOnHold(state, hold);
  state.waived = state.waived.filter(({ untilMs }) => untilMs > nowMs);
}

/** The hold of a store at an instant after its last entry. */
export function holdAt(
  { hold, waived }: Pick<StoreState, 'hold' | 'waived'>,
  atMs: number,
): HoldState | null {
  return hold ?? waived.find(({ untilMs }) => untilMs <= atMs)?.hold ?? null;
}
