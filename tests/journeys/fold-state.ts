// Everything that a fold knows, as one text: two folds are the same if this is the same, to the last bit.
import { type Fold, type Position, positionOf } from '../../src/account/index.ts';
import { canonicalJson, type Json } from '../../src/book/index.ts';
import { nodeHash } from '../../src/doors/disk/index.ts';

/** Every figure, covariance, finding and counter of a fold. Maps become lists, so that their order counts too. */
export function stateOf(fold: Fold): string {
  const n = fold.estimator.size;
  const means = Float64Array.from({ length: n }, (_, i) => fold.estimator.mean(i));
  const covariances = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) covariances[i * n + j] = fold.estimator.covariance(i, j);
  const { dayRule, peopleAboard, openingMs, normsUntilMs, lastLineMs, lastEntryMs, entries } = fold;
  return JSON.stringify({
    balances: [...fold.ledger.balances()],
    means: bitsOf(means),
    covariances: bitsOf(covariances),
    stores: [...fold.stores.values()],
    counters: [...fold.counters].map(([id, state]) => [
      id,
      { ...state, split: [...state.split], missedBy: state.missedBy?.id },
    ]),
    errors: [...fold.errors.values()],
    pools: [...fold.pools],
    records: [...fold.records],
    farOff: fold.farOff,
    saidBeforeCalibration: fold.saidBeforeCalibration,
    litresPerCount: [...fold.litresPerCount],
    ports: [...fold.ports],
    runs: [...fold.runs],
    visits: [...fold.visits],
    recent: fold.recent,
    habits: habitsOf(fold),
    beforeOpening: fold.beforeOpening.map(({ id }) => id),
    closedDays: [...fold.closedDays],
    findings: positionOf(fold, fold.lastEntryMs ?? 0).findings,
    usage: fold.usage.grades().map((grade) => [grade, fold.usage.days(grade)]),
    decisions: [...fold.decisions],
    rest: [dayRule, peopleAboard, openingMs, normsUntilMs, lastLineMs, lastEntryMs, entries],
  });
}

/** Entries by their ids: the order of their fields is that of whoever made them. */
function habitsOf({ habits }: Fold): readonly unknown[] {
  const { recent, ...others } = habits;
  const listed = Object.entries(others).map(([name, habit]) => [
    name,
    habit instanceof Map ? [...habit] : habit,
  ]);
  return [...listed, recent.map(({ id }) => id)];
}

/** The bits of doubles: a zero with a sign and a zero without one differ. */
function bitsOf(values: Float64Array): string {
  return Buffer.from(values.buffer).toString('base64');
}

/** What a position says in whole milligrams, and which findings it has: the same on every machine and for any order of arrival. */
export function positionDigest(position: Position): string {
  const { stores, accountsMg, findings } = position;
  const said = {
    stores: Object.fromEntries(stores.map(({ facts, massMg, uMg }) => [facts.id, [massMg, uMg]])),
    accounts: Object.fromEntries(accountsMg),
    findings: findings.map(({ code, data }) => `${code} ${nameOf(data['ref'])}`),
  };
  return nodeHash(canonicalJson(said as unknown as Json));
}

/** By its name in the file where it has one: numbers move when another entry is taken out. */
function nameOf(ref: unknown): string {
  return String(ref ?? '').replace(/^.*\[(.*)\]$/, '$1');
}
