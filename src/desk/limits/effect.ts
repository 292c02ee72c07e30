// What a change of the limits does to the water: who is held, what stays free, which rows are off, what cannot be met by any water.
import {
  type Fold,
  freeStock,
  limitsHoldOf,
  notFreeBecause,
  type Position,
  positionOf,
  rowsOfGrade,
  type StorePosition,
} from '../../account/index.ts';
import type { AnyDraft, AnyEntry } from '../../book/index.ts';
import { coverOf } from '../../forecast/index.ts';
import { clashesOf, type LimitRow, policyLimitSet } from '../../outpost/index.ts';
import {
  type LimitClash,
  type LimitGrade,
  type LimitHold,
  type LimitsEffect,
  saidClash,
} from '../../papers/index.ts';
import { coveredGrades } from '../covered-grades.ts';
import { volumeFigure } from '../figures.ts';
import type { Context } from '../log/context.ts';
import { entryToBe, foldWith } from '../log/overlay.ts';
import { setOfChosen } from './known-sets.ts';

export interface Change {
  readonly before: { readonly fold: Fold; readonly position: Position };
  readonly after: { readonly fold: Fold; readonly position: Position };
}

/** The account without a draft and with it; nothing is kept. */
export async function changeBy(context: Context, draft: AnyDraft): Promise<Change> {
  const { desk, fold, presentMs } = context;
  const entry: AnyEntry = await entryToBe(desk, draft);
  const after = await foldWith(context, entry);
  const atMs = Math.max(presentMs, entry.happenedAtMs);
  return {
    before: { fold, position: positionOf(fold, presentMs) },
    after: { fold: after, position: positionOf(after, atMs) },
  };
}

export function effectOf(change: Change): LimitsEffect {
  const { before, after } = change;
  const holds = after.position.stores.flatMap((store) => holdOf(change, store));
  const fresh = holds.filter(({ already }) => !already).map(({ store }) => store);
  const because = { entries: [], method: 'stock-sum', inputs: [named('stores', fresh)] };
  return {
    holds,
    held: volumeFigure(after.position, after.position.sumOf(fresh), because),
    ends: before.position.stores.flatMap(({ facts }) =>
      isHeldIn(before.fold, facts.id) && !isHeldIn(after.fold, facts.id) ? [facts.id] : [],
    ),
    grades: gradesOf(change),
    clashes: clashesIn(change),
    noMore: rowsNotIn(before.position, after.position),
  };
}

const named = (name: string, list: readonly string[]) => ({ name, value: list.join(', '), unit: '' });

function isHeldIn(fold: Fold, store: string): boolean {
  const state = fold.stores.get(store);
  return state !== undefined && limitsHoldOf(state) !== undefined;
}

/** A store that the change holds, and that was not held by limits before. */
function holdOf({ before, after }: Change, store: StorePosition): readonly LimitHold[] {
  const { id } = store.facts;
  const state = after.fold.stores.get(id);
  const hold = state === undefined ? undefined : limitsHoldOf(state);
  if (hold === undefined || isHeldIn(before.fold, id)) return [];
  const was = before.position.stores.find(({ facts }) => facts.id === id);
  const because = { entries: store.because, method: 'estimator', inputs: [] };
  const already = was !== undefined && (was.hold !== null || was.conditional !== null);
  return [
    {
      ...{ store: id, grade: store.grade, failed: hold.failed ?? [], already },
      volume: volumeFigure(after.position, store, because),
    },
  ];
}

function gradesOf({ before, after }: Change): readonly LimitGrade[] {
  const had = figuresIn(before.position);
  const isFresh = (row: LimitRow) => !had.has(figureIn(placed(after.position, row).set, row));
  return coveredGrades(after.position).flatMap((grade) => {
    const now = rowsOfGrade(after.position.limits, after.position.index, grade);
    const was = rowsOfGrade(before.position.limits, before.position.index, grade);
    if (now.length === 0 && was.length === 0) return [];
    return [
      {
        grade,
        freeBefore: freeFigure(before.position, grade),
        freeAfter: freeFigure(after.position, grade),
        coverBefore: coverOf(before.position, grade).q05,
        coverAfter: coverOf(after.position, grade).q05,
        off: now.filter(({ limit }) => limit === null).map((row) => placed(after.position, row)),
        notMeasured: notMeasured(after.position, grade, now.filter(isFresh)),
      },
    ];
  });
}

/** A row of a set with its figure: one whose figure was typed is another than before. */
const figureIn = (set: string, { id, limit }: LimitRow): string =>
  [set, id, limit?.atLeast ?? '', limit?.atMost ?? ''].join('\n');

function figuresIn({ limits }: Position): ReadonlySet<string> {
  return new Set(limits.sets.flatMap(({ set, rows }) => rows.map((row) => figureIn(set, row))));
}

function freeFigure(position: Position, grade: string) {
  const free = freeStock(position, grade);
  const because = { entries: free.because, method: 'free-stock', inputs: [named('stores', free.stores)] };
  return volumeFigure(position, free, because);
}

function placed({ limits }: Position, row: LimitRow) {
  const set = limits.sets.find(({ rows }) => rows.includes(row))?.set ?? '';
  return { set, row: row.id, parameter: row.parameter };
}

/** Water that stays free although nobody has measured in it what is required from now on. */
function notMeasured(
  position: Position,
  grade: string,
  fresh: readonly LimitRow[],
): LimitGrade['notMeasured'] {
  const free = position.stores.filter(
    (store) => store.grade === grade && notFreeBecause(position, store) === null,
  );
  const asked = fresh.filter(({ limit, neededOf }) => limit !== null && neededOf === 'every store');
  const lacking = free.flatMap((store) => {
    const known = new Set(store.results.map(({ parameter }) => parameter));
    const lacks = asked.map(({ parameter }) => parameter).filter((parameter) => !known.has(parameter));
    return lacks.length === 0 ? [] : [{ store: store.facts.id, lacks }];
  });
  if (lacking.length === 0) return null;
  const stores = lacking.map(({ store }) => store);
  const because = { entries: [], method: 'stock-sum', inputs: [named('stores', stores)] };
  return {
    parameters: [...new Set(lacking.flatMap(({ lacks }) => lacks))],
    stores,
    volume: volumeFigure(position, position.sumOf(stores), because),
  };
}

/** Of rows that are required from now on and were not before. */
function clashesIn({ before, after }: Change): readonly LimitClash[] {
  const { index, limits } = after.position;
  const policy = policyLimitSet(index.outpost);
  const had = figuresIn(before.position);
  return limits.sets
    .filter(({ set }) => set !== policy.id)
    .flatMap((chosen) => {
      const rows = chosen.rows.filter((row) => !had.has(figureIn(chosen.set, row)));
      return index.outpost.grades.flatMap((grade) => {
        const bearing = new Set(rowsOfGrade(limits, index, grade.id));
        const set = setOfChosen({ ...chosen, rows: rows.filter((row) => bearing.has(row)) });
        return clashesOf(set, grade, policy).map(({ row, ...clash }) => {
          const told = { ...clash, set: chosen.set, row: row.id };
          return { ...told, text: saidClash(told) };
        });
      });
    });
}

function rowsNotIn(before: Position, after: Position): LimitsEffect['noMore'] {
  const now = new Set(after.limits.sets.flatMap(({ set, rows }) => rows.map(({ id }) => `${set}\n${id}`)));
  return before.limits.sets.flatMap(({ set, rows }) =>
    rows
      .filter(({ id }) => !now.has(`${set}\n${id}`))
      .map(({ id, parameter }) => ({ set, row: id, parameter })),
  );
}
