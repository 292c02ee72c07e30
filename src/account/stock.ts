// What can be counted on: water of a grade that is released, in service, above the usable remainder, and not the reserve.
import type { Position } from './position.ts';
import { rowsOfGrade } from './quality/limits-in-force.ts';
import type { StorePosition } from './store-position.ts';

export interface FreeStock {
  readonly grade: string;
  /** Stores that it stands in. */
  readonly stores: readonly string[];
  readonly massMg: number;
  readonly uMg: number;
  readonly because: readonly string[];
}

/** Why a store's water is in no free figure, or null when it is free. */
export function notFreeBecause(position: Position, store: StorePosition): string | null {
  const grade = store.grade === null ? undefined : position.index.grades.get(store.grade);
  if (grade === undefined) return 'grade unknown';
  if (store.hold !== null) return 'hold';
  if (store.conditional !== null) return 'conditional';
  if (store.facts.reserve) return 'reserve';
  if (grade.emergencyOnly) return 'emergency only';
  if (grade.terminal || store.facts.kind === 'wasteContainer') return 'waste';
  if (store.release === 'none') return 'not released';
  const delivered = position.index.outpost.policy.deliveredWater;
  if (store.release === 'loader’s certificate' && delivered?.usableOnLoadersCertificate !== true)
    return 'not released';
  if (isOver(store, position.atMs) || isCertificateOver(position, store)) return 'release over';
  if (hasNoLimit(position, store)) return 'no limit set';
  if (store.emptied) return 'empty';
  return null;
}

/** A release has an end; a waiver's end brings its hold back. */
function isOver({ released }: StorePosition, atMs: number): boolean {
  return released?.untilMs != null && released.untilMs <= atMs;
}

/** The loader's certificate ends with the outpost's own result: one that was back and has run out has ended it. */
function isCertificateOver({ limits, index, atMs }: Position, store: StorePosition): boolean {
  if (store.release !== 'loader’s certificate') return false;
  return rowsOfGrade(limits, index, store.grade).some(({ parameter }) => {
    const own = store.results.filter((result) => result.parameter === parameter);
    return own.length > 0 && own.every(({ validUntilMs }) => validUntilMs <= atMs);
  });
}

/** A row that the outpost requires and nobody has typed: nothing can be said of this water. */
function hasNoLimit({ limits, index }: Position, { grade }: StorePosition): boolean {
  return rowsOfGrade(limits, index, grade).some(({ limit }) => limit === null);
}

/**
 * Free water of one grade. Each store gives what is above its remainder; whose content is less gives nothing.
 * What stands at less than nothing was drawn from somewhere: it is missing here, and a store gives no more than it can hold.
 */
export function freeStock(position: Position, grade: string): FreeStock {
  const members = position.stores.filter(
    (store) =>
      store.grade === grade &&
      store.massMg > store.facts.remainderMg &&
      notFreeBecause(position, store) === null,
  );
  const stores = members.map((store) => store.facts.id);
  const missing = missingFrom(position, grade);
  const { uMg } = position.sumOf([...stores, ...missing.map((store) => store.facts.id)]);
  const remainderVariance = members.reduce(
    (sum, store) => sum + store.facts.remainderUMg * store.facts.remainderUMg,
    0,
  );
  const massMg = [...members.map(givenBy), ...missing.map((store) => store.massMg)].reduce(
    (a, b) => a + b,
    0,
  );
  return {
    grade,
    stores,
    massMg: missing.length === 0 ? massMg : Math.max(0, massMg),
    uMg: Math.round(Math.sqrt(uMg * uMg + remainderVariance)),
    because: [...new Set([...members, ...missing].flatMap((store) => store.because.slice(0, 1)))],
  };
}

/** What a store gives of its water. Above full by more than its doubt, the figure is an error: then no more than it holds. */
function givenBy({ massMg, uMg, facts }: StorePosition): number {
  const isTooMuch = massMg > facts.capacityMg + 2 * uMg;
  return (isTooMuch ? facts.capacityMg : massMg) - facts.remainderMg;
}

/** Stores of a grade that stand at less than nothing beyond their doubt, and have nothing to come that would fill them. */
function missingFrom(position: Position, grade: string): readonly StorePosition[] {
  const said = new Set(
    position.findings.flatMap(({ code, where }) => (code === 'negative-stock' ? [where.store] : [])),
  );
  return position.stores.filter(
    (store) => store.grade === grade && !store.facts.reserve && said.has(store.facts.id),
  );
}

/** The reserve that policy counts, all of its content, and what of it is conditional. */
export function reserveStock(
  position: Position,
): FreeStock & { readonly conditionalMg: number; readonly floorMg: number } {
  const policy = position.index.outpost.policy.reserve;
  const members = position.stores.filter((store) => policy.counts.includes(store.facts.id));
  const stores = members.map((store) => store.facts.id);
  const conditional = members.filter((store) => store.conditional !== null || store.hold !== null);
  return {
    grade: 'reserve',
    stores,
    ...position.sumOf(stores),
    because: members.flatMap((store) => store.because.slice(0, 1)),
    conditionalMg: conditional.reduce((sum, store) => sum + store.massMg, 0),
    floorMg: Math.round(policy.floorL * position.mgPerL),
  };
}
