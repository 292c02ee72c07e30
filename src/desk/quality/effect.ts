// What an act on holds changes of what can be counted on: free water and days of cover, grade by grade.
import { type Fold, freeStock, type Position, positionOf } from '../../account/index.ts';
import { coverOf } from '../../forecast/index.ts';
import type { EffectLine, WaitingOn } from '../../papers/index.ts';
import { coveredGrades } from '../covered-grades.ts';
import { volumeFigure } from '../figures.ts';
import { coverFigure } from '../today.ts';

/** Grades whose free water changes. */
export function effectOf(before: Position, after: Position): readonly EffectLine[] {
  return coveredGrades(after).flatMap((grade) => {
    if (freeStock(before, grade).massMg === freeStock(after, grade).massMg) return [];
    return [
      {
        grade,
        before: coverFigure(before, coverOf(before, grade)),
        after: coverFigure(after, coverOf(after, grade)),
      },
    ];
  });
}

/** What would be counted on again if nothing were held, conditional or waiting in the stores that are named. */
export function waitsOn(fold: Fold, position: Position, stores: ReadonlySet<string>): readonly WaitingOn[] {
  const freed = positionOf(released(fold, stores), position.atMs);
  return coveredGrades(position).flatMap((grade): WaitingOn[] => {
    const now = new Set(freeStock(position, grade).stores);
    const more = freeStock(freed, grade).stores.filter((id) => !now.has(id) && stores.has(id));
    if (more.length === 0) return [];
    const there = freed.sumOf(more);
    const remainderMg = freed.stores
      .filter(({ facts }) => more.includes(facts.id))
      .reduce((sum, { facts }) => sum + facts.remainderMg, 0);
    const stock = { massMg: there.massMg - remainderMg, uMg: there.uMg };
    const { useMgPerDay } = coverOf(position, grade);
    const because = {
      entries: [],
      method: 'free-stock',
      inputs: [{ name: 'stores', value: more.join(', '), unit: '' }],
    };
    return [
      {
        grade,
        volume: volumeFigure(position, stock, because),
        days: useMgPerDay === null || useMgPerDay <= 0 ? null : stock.massMg / useMgPerDay,
      },
    ];
  });
}

/** The account as if the water of some stores were released: only to see what waits on it. */
function released(fold: Fold, stores: ReadonlySet<string>): Fold {
  const copy = fold.clone();
  for (const state of copy.stores.values()) {
    if (!stores.has(state.facts.id)) continue;
    state.hold = null;
    state.holdsBehind = [];
    state.conditional = null;
    state.waived = [];
    if (state.release === 'none') state.release = 'own sample';
    state.released = null;
  }
  return copy;
}
