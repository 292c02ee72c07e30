// Findings about quality that are true as long as a state lasts: limits that are off, releases and dates that are over, bad results.
import type { AccountFinding, Fold } from '../fold.ts';
import { holdsOf } from '../hold.ts';
import type { StorePosition } from '../store-position.ts';
import type { HoldState } from '../store-state.ts';
import { rowsOfGrade } from './limits-in-force.ts';

export function qualityFindings(
  fold: Fold,
  stores: readonly StorePosition[],
  atMs: number,
): AccountFinding[] {
  return [
    ...limitsOff(fold, stores, atMs),
    ...releasesOver(stores, atMs),
    ...parkedOver(fold, atMs),
    ...unanswered(fold, atMs),
  ];
}

/** A row that the outpost requires and that is off holds all the water that it bears on. */
function limitsOff(fold: Fold, stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  const grades = [...new Set(stores.map(({ grade }) => grade))];
  const off = grades.flatMap((grade) =>
    rowsOfGrade(fold.limits, fold.index, grade).filter(({ limit }) => limit === null),
  );
  if (off.length === 0) return [];
  const data = {
    rows: [...new Set(off.map(({ id }) => id))],
    parameters: [...new Set(off.map(({ parameter }) => parameter))],
  };
  const entries = fold.limits.entry === null ? [] : [fold.limits.entry];
  return [{ code: 'limit-off', severity: 'act-now', where: {}, data, entries, atMs }];
}

function releasesOver(stores: readonly StorePosition[], atMs: number): AccountFinding[] {
  return stores.flatMap(({ facts, released, emptied, release }): AccountFinding[] => {
    if (emptied || released?.untilMs == null || released.untilMs > atMs) return [];
    const data = { untilMs: released.untilMs, by: released.by, release };
    const where = { store: facts.id };
    return [{ code: 'release-over', severity: 'act-today', where, data, entries: [released.entry], atMs }];
  });
}

/** One line for a hold, however many stores it is on. */
function parkedOver(fold: Fold, atMs: number): AccountFinding[] {
  const holds = new Map<string, HoldState>();
  for (const state of fold.stores.values())
    if (state.aboard) for (const hold of holdsOf(state)) holds.set(hold.hold, hold);
  return [...holds.values()].flatMap(({ hold, parked }): AccountFinding[] => {
    if (parked === undefined || parked.untilMs > atMs) return [];
    const data = { hold, owner: parked.owner, untilMs: parked.untilMs };
    return [{ code: 'parked-over', severity: 'act-today', where: {}, data, entries: [parked.entry], atMs }];
  });
}

function unanswered(fold: Fold, atMs: number): AccountFinding[] {
  return fold.badResults.map(({ entry, sample, stores, parameters }) => ({
    code: 'result-unanswered',
    severity: 'act-now',
    where: {},
    data: { sample, stores, parameters },
    entries: [entry],
    atMs,
  }));
}
