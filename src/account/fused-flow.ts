// One movement that several means have measured: each counts by its own doubt, none is averaged by hand.
import type { Amount, AnyEntry } from '../book/index.ts';
import { flow, follow } from './flow.ts';
import { type Flow, type Fold, MG_PER_KG } from './fold.ts';
import { doubtOf, instrumentOf } from './instrument-of.ts';
import { noteEntry } from './note.ts';
import { readState } from './read-state.ts';

/** Another means by which the same water was measured. */
export interface OtherMeans {
  readonly amount: Amount;
  readonly instrument?: string | undefined;
  readonly method?: string | undefined;
  readonly hose?: string | undefined;
}

/**
 * Moves water by its first means, then lets the others read the same amount. The amount is a state of its own for as long as that
 * takes: true = m (1 + b) + e for each means, so means of one instrument share its error and the two stores keep what was
 * learned. The ledger moves what the entry says first; what the others teach is in the estimate.
 */
export function fusedFlow(fold: Fold, entry: AnyEntry, what: Flow, others: readonly OtherMeans[]): void {
  if (others.length === 0 || !fold.estimating) {
    flow(fold, entry, what);
    return;
  }
  const { estimator } = fold;
  const means = others.map((other) => ({
    other,
    doubt: doubtOf(fold, other.amount, instrumentOf(fold, other)),
  }));
  const onPosted = fold.watcher?.onFlow?.(fold, entry, what);
  fold.ledger.post(what.from.account, what.to.account, what.massMg);
  const amount = estimator.add(0, 0);
  const [massKg, uKg] = [what.massMg / MG_PER_KG, what.uMg / MG_PER_KG];
  estimator.move({ from: -1, to: amount, calibration: what.calibration, massKg, uKg });
  for (const { other, doubt } of means) readAmount(fold, entry, { amount, other, doubt, what });
  for (const [end, sign] of [
    [what.from, -1],
    [what.to, 1],
  ] as const) {
    const place = fold.placeOf(end);
    if (place >= 0) estimator.lean(place, amount, sign);
  }
  estimator.dropLast();
  onPosted?.();
  follow(fold, entry, what);
}

function readAmount(
  fold: Fold,
  entry: AnyEntry,
  by: { amount: number; other: OtherMeans; doubt: ReturnType<typeof doubtOf>; what: Flow },
): void {
  const { other, doubt } = by;
  const valueKg = other.amount.massMg / MG_PER_KG;
  const outcome = readState(fold, entry, {
    place: by.amount,
    shared: doubt.calibration < 0 ? [] : [{ place: doubt.calibration, weight: -valueKg }],
    valueKg,
    uKg: doubt.uMg / MG_PER_KG,
    recordOf: instrumentOf(fold, other)?.id ?? other.method ?? null,
    isOneOfSeveral: true,
  });
  if (!outcome.isFarOff) return;
  const data = {
    saidMg: by.what.massMg,
    otherMg: other.amount.massMg,
    means: other.method ?? other.instrument ?? 'another means',
    u95Mg: Math.round(2 * Math.sqrt(outcome.variance) * MG_PER_KG),
    mgPerL: fold.mgPerL,
  };
  noteEntry(fold, entry, {
    code: 'means-disagree',
    severity: 'act-today',
    store: by.what.to.store?.facts.id,
    data,
  });
}
