// Contents that somebody read: above what the store can hold, off by a point or a unit, or those of another store.
import type { Amount, AnyEntry, Entry } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import type { StoreState } from '../store-state.ts';
import { believedAt } from './believed.ts';
import { fittingReading } from './fitting.ts';
import { askFigure } from './question.ts';
import { askStore, storesThat } from './stores.ts';

/** A reading may be above the capacity by this part. Ours, no source: readings have doubts. */
export const OVER_SHARE = 0.02;
/** Another store is named when the reading is so many standard deviations from the named one, and so few from the other. Ours, no source. */
const FAR = 4;
const NEAR = 2;
/** And at least this far in litres. Ours, no source. */
const FAR_L = 1;
/** A rest may be so many of its standard deviations from what the outpost file says. Ours, no source. */
const REST_SPREADS = 2.5;

export function askContent(
  fold: Fold,
  entry: AnyEntry,
  of: { readonly store: string; readonly amount: Amount; readonly bookBeforeMg?: number | undefined },
  mayBeOther = true,
): void {
  const state = fold.stores.get(of.store);
  if (state?.aboard !== true) return;
  const { massMg } = of.amount;
  const atMs = entry.happenedAtMs;
  const believed = believedAt(fold, state, atMs);
  const uMg = Math.sqrt(believed.uMg * believed.uMg + (of.amount.uMg ?? 0) * (of.amount.uMg ?? 0));
  const farMg = Math.max(FAR * uMg, FAR_L * fold.mgPerL);
  const isFar = Math.abs(massMg - believed.massMg) > farMg;
  const isOver = massMg > state.facts.capacityMg * (1 + OVER_SHARE);
  if (isFar || isOver) {
    const slackL = Math.max(3 * uMg, 0.5 * fold.mgPerL) / fold.mgPerL;
    const believedL = believed.massMg / fold.mgPerL;
    const fit = fittingReading(
      massMg / fold.mgPerL,
      { kgPerL: fold.mgPerL / 1_000_000 },
      // Next to nothing is near to nothing in any unit.
      (value) => value > slackL && Math.abs(value - believedL) <= slackL,
    );
    if (fit !== null || isOver) {
      askFigure(fold, entry, {
        ...{ code: 'reading-implausible', of: 'content', value: massMg / fold.mgPerL, unit: 'L', fit },
        ...{ store: of.store, name: of.store, against: isOver ? 'capacity' : 'store' },
        low: isOver ? 0 : Math.max(0, believedL - slackL),
        high: isOver ? state.facts.capacityMg / fold.mgPerL : believedL + slackL,
      });
      return;
    }
  }
  if (!mayBeOther) return;
  if (isFar || isOtherBook(fold, { state, atMs }, of.bookBeforeMg)) askOtherStore(fold, entry, state, of);
}

interface StoreAt {
  readonly state: StoreState;
  readonly atMs: number;
}

/** The keeper's own figure from before the reading is not that of this store. */
function isOtherBook(fold: Fold, at: StoreAt, bookMg: number | undefined): boolean {
  if (bookMg === undefined) return false;
  const apartMg = Math.abs(bookMg - believedAt(fold, at.state, at.atMs).massMg);
  return apartMg > BOOK_APART_L * fold.mgPerL && likeBook(fold, at, bookMg).length > 0;
}

/** Two books of one store differ by less than this. Ours, no source. */
const BOOK_APART_L = 3;

function likeBook(fold: Fold, { state, atMs }: StoreAt, bookMg: number): readonly string[] {
  const apartMg = Math.abs(bookMg - believedAt(fold, state, atMs).massMg);
  return storesThat(
    fold,
    state,
    (other) => Math.abs(bookMg - believedAt(fold, other, atMs).massMg) < apartMg / 2,
  );
}

function askOtherStore(
  fold: Fold,
  entry: AnyEntry,
  state: StoreState,
  of: { readonly amount: Amount; readonly bookBeforeMg?: number | undefined },
): void {
  const atMs = entry.happenedAtMs;
  const near = (massMg: number) => (other: StoreState) => {
    const { massMg: contentMg, uMg } = believedAt(fold, other, atMs);
    const readUMg = of.amount.uMg ?? 0;
    return Math.abs(massMg - contentMg) <= NEAR * Math.sqrt(uMg * uMg + readUMg * readUMg);
  };
  const candidates =
    of.bookBeforeMg === undefined
      ? storesThat(fold, state, near(of.amount.massMg))
      : likeBook(fold, { state, atMs }, of.bookBeforeMg);
  if (candidates.length > 0)
    askStore(fold, entry, { why: 'fits other', store: state.facts.id, candidates, massMg: of.amount.massMg });
}

/** What is left in an emptied store, against what the outpost file says of such stores. */
export function askRest(fold: Fold, entry: Entry<'declared-empty'>): void {
  const { store, residual } = entry.body;
  const facts = fold.stores.get(store)?.facts;
  if (residual === undefined || facts === undefined || facts.remainderUMg === 0) return;
  const slackMg = REST_SPREADS * facts.remainderUMg;
  if (Math.abs(residual.massMg - facts.remainderMg) <= slackMg) return;
  const [low, high] = [Math.max(0, facts.remainderMg - slackMg), facts.remainderMg + slackMg];
  const fit = fittingReading(residual.massMg / fold.mgPerL, { kgPerL: fold.mgPerL / 1_000_000 }, (value) => {
    const massMg = value * fold.mgPerL;
    return massMg >= low && massMg <= high;
  });
  if (fit === null && residual.massMg < high + slackMg) return;
  askFigure(fold, entry, {
    ...{ code: 'reading-implausible', of: 'rest', value: residual.massMg / fold.mgPerL, unit: 'L', fit },
    ...{ low: low / fold.mgPerL, high: high / fold.mgPerL, against: 'usual', store },
  });
}
