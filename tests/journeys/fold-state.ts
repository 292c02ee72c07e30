// Everything that a fold knows, as plain data: two folds are the same if this is the same, to the last bit.
import { type Fold, type Position, positionOf } from '../../src/account/index.ts';
import { canonicalJson, type Json, plainHash } from '../../src/book/index.ts';

/** Every figure, covariance, finding and counter of a fold. Maps become lists, so that their order counts too. */
export function stateOf(fold: Fold): unknown {
  const n = fold.estimator.size;
  const places = Array.from({ length: n }, (_, i) => i);
  return {
    balances: [...fold.ledger.balances()],
    means: places.map((i) => fold.estimator.mean(i)),
    covariances: places.map((i) => places.slice(0, i + 1).map((j) => fold.estimator.covariance(i, j))),
    stores: [...fold.stores.values()],
    counters: [...fold.counters].map(([id, state]) => [id, { ...state, split: [...state.split] }]),
    offsets: [...fold.offsets],
    ports: [...fold.ports],
    runs: [...fold.runs],
    visits: [...fold.visits],
    recent: [...fold.recent],
    closedDays: [...fold.closedDays],
    findings: [...positionOf(fold, fold.lastEntryMs ?? 0).findings],
    usage: fold.usage.grades().map((grade) => [grade, fold.usage.days(grade)]),
    decisions: [...fold.decisions],
    rest: [
      fold.dayRule,
      fold.peopleAboard,
      fold.openingMs,
      fold.normsUntilMs,
      fold.lastLineMs,
      fold.lastEntryMs,
      fold.entries,
    ],
  };
}

/** What a position says in whole milligrams, and which findings it has: the same on every machine and for any order of arrival. */
export function positionDigest(position: Position): string {
  const { stores, accountsMg, findings } = position;
  const said = {
    stores: Object.fromEntries(stores.map(({ facts, massMg, uMg }) => [facts.id, [massMg, uMg]])),
    accounts: Object.fromEntries(accountsMg),
    findings: findings.map(({ code, data }) => `${code} ${String(data['ref'] ?? '')}`),
  };
  return plainHash(canonicalJson(said as unknown as Json));
}
