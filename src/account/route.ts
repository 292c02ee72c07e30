// The way of water of a counter: which sources gave how much of an interval, and where it went.
import type { FlowEnd, Route } from '../outpost/index.ts';
import type { CounterState } from './counter-state.ts';
import { poolEnd } from './ends.ts';
import type { End, Fold } from './fold.ts';
import { storeAccount } from './ledger.ts';

/** What one source gave. */
export interface SourceShare {
  readonly end: End;
  readonly massMg: number;
  /** The buffer through which this source was drawn, because that stood at its remainder. */
  readonly through: End | null;
  /** Told by a person as a change of source; only then is its own doubt known. */
  readonly claimUMg: number | null;
  /** Nobody said that this source, which needs an entry, was drawn. */
  readonly unsaid: boolean;
}

const plain = { through: null, claimUMg: null, unsaid: false } as const;

/** The account behind an end of a way, as things stand; null where nothing hangs on the port. */
export function resolve(fold: Fold, end: FlowEnd): End | null {
  if ('pool' in end) return poolEnd(end.pool);
  const store = 'store' in end ? fold.stores.get(end.store) : fold.storeOn(end.port);
  return store == null ? null : fold.endOfStore(store);
}

/** What people have said of the sources of an open interval. */
type Told = Pick<CounterState, 'split' | 'claims'>;

/** Shares out an interval over the sources of its way: each gives what it has, in order; what was told of one stands. */
export function sourcesOf(fold: Fold, route: Route, told: Told, intervalMg: number): SourceShare[] {
  const ordinary = ordinarySources(fold, route);
  const shares = claimShares(fold, told);
  addStranded(shares, fold, told, ordinary);
  let restMg = intervalMg;
  for (const share of shares) restMg -= share.massMg;
  let buffer: End | null = null;
  for (const { end, drawnDown } of ordinary) {
    const massMg = drawnDown ? Math.min(restMg, availableMg(fold, end, told)) : restMg;
    shares.push({ ...plain, end, massMg, through: buffer });
    restMg -= massMg;
    if (drawnDown && restMg > 0) buffer = end;
  }
  if (restMg !== 0) shares.push({ ...lastResort(fold, route, restMg), through: buffer });
  return shares;
}

/** Sources that give by themselves, in order, down to the first one that gives all of the rest. */
function ordinarySources(fold: Fold, route: Route): { readonly end: End; readonly drawnDown: boolean }[] {
  const ordinary: { end: End; drawnDown: boolean }[] = [];
  for (const source of route.from) {
    const end = isOnlyByEntry(source) ? null : resolve(fold, source);
    if (end === null) continue;
    // A way with one source has no other: what was counted came from there, even if its own inflow is not read yet.
    const drawnDown = isDrawnDown(source) && route.from.length > 1;
    ordinary.push({ end, drawnDown });
    if (!drawnDown) break;
  }
  return ordinary;
}

function claimShares(fold: Fold, { claims }: Told): SourceShare[] {
  return claims.flatMap((claim) => {
    const store = fold.stores.get(claim.store);
    return store === undefined
      ? []
      : [{ ...plain, end: fold.endOfStore(store), massMg: claim.massMg, claimUMg: claim.uMg }];
  });
}

/** Single uses out of stores that give no more by themselves: what they gave stands, unless a claim says how much it was. */
function addStranded(
  shares: SourceShare[],
  fold: Fold,
  { split, claims }: Told,
  ordinary: readonly { readonly end: End }[],
): void {
  for (const [account, massMg] of split) {
    if (ordinary.some(({ end }) => end.account === account)) continue;
    if (claims.some(({ store }) => storeAccount(store) === account)) continue;
    shares.push({ ...plain, end: endOfAccount(fold, account), massMg });
  }
}

function isOnlyByEntry(source: FlowEnd): boolean {
  return 'store' in source && source.onlyByEntry;
}

function isDrawnDown(source: FlowEnd): boolean {
  return 'store' in source && source.downToRemainder;
}

/** What a buffer can give above its remainder; what single entries took of it in this interval is inside. */
function availableMg(fold: Fold, end: End, { split }: Told): number {
  const already = split.get(end.account) ?? 0;
  return Math.max(0, fold.ledger.balanceMg(end.account) + already - (end.store?.facts.remainderMg ?? 0));
}

/** Nobody said where the rest came from: a source that needs an entry gave it if the way has one, else it is unplaced. */
function lastResort(fold: Fold, route: Route, massMg: number): SourceShare {
  const source = route.from.find(isOnlyByEntry);
  const end = source === undefined ? null : resolve(fold, source);
  return end === null
    ? { ...plain, end: poolEnd('unplaced'), massMg }
    : { ...plain, end, massMg, unsaid: true };
}

function endOfAccount(fold: Fold, account: string): End {
  const store = account.startsWith('store:') ? fold.stores.get(account.slice('store:'.length)) : undefined;
  return store === undefined ? poolEnd(account) : fold.endOfStore(store);
}

/** Where a way ends, as things stand. What flowed to a port before its store was changed was posted then. */
export function targetOf(fold: Fold, to: FlowEnd): End {
  return resolve(fold, to) ?? poolEnd('unplaced');
}
