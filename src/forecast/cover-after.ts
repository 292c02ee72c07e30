// How surely a cover is known, and how surely it would be known after a reading that nobody has taken yet.
import { freeStock, type Position, type ReadingAhead, reserveStock } from '../account/index.ts';
import { drawOf, stockToFloor, useOf } from './cover.ts';
import { coverHalfWidth, coverQuantiles, type Draw, type Stock } from './cover-quantiles.ts';

/** `free`: until the free water is used up; `to floor`: until the reserve stands at its floor besides. */
export type Reach = 'free' | 'to floor';

/** A cover with its doubt. */
export interface CoverInDoubt {
  readonly grade: string;
  readonly reach: Reach;
  readonly stock: Stock;
  /** Stores that it stands in. */
  readonly stores: readonly string[];
  readonly draw: Draw | null;
  /** Half the width of the 95 % interval of the run-out; null without data, or where it has no late end. */
  readonly halfWidthDays: number | null;
  /** The middle of the outcomes; null without data, or where it does not run out. */
  readonly middleDays: number | null;
}

/** The same cover after a reading: its stock is as large and better known. */
export interface CoverAfter {
  readonly grade: string;
  readonly reach: Reach;
  readonly stockMg: number;
  readonly stockUMg: { readonly before: number; readonly after: number };
  readonly halfWidthDays: { readonly before: number | null; readonly after: number | null };
}

/** A doubt of a stock that falls by less than this part of it brings a cover nothing that could be printed. */
const SEEN_FROM = 1e-3;

/** Covers of these grades as they stand, and the one to the floor of the reserve. */
export function coversInDoubt(position: Position, grades: readonly string[]): readonly CoverInDoubt[] {
  return grades.flatMap((grade) => {
    const draw = drawOf(position, useOf(position, grade));
    return stocksOf(position, grade).map((each) => ({
      grade,
      draw,
      ...each,
      halfWidthDays: draw === null ? null : coverHalfWidth(each.stock, draw),
      middleDays: draw === null ? null : coverQuantiles(each.stock, draw).q50,
    }));
  });
}

/** One of these covers after a reading at its expected value. */
export function coverAfter(position: Position, ahead: ReadingAhead, cover: CoverInDoubt): CoverAfter {
  const { grade, reach, stock, draw, halfWidthDays: before } = cover;
  const known: Position = {
    ...position,
    sumOf: (stores) => ({ massMg: position.sumOf(stores).massMg, uMg: ahead.uOf(stores) }),
  };
  const uMg = stocksOf(known, grade).find((each) => each.reach === reach)?.stock.uMg ?? stock.uMg;
  const isSeen = draw !== null && before !== null && Math.abs(stock.uMg - uMg) > SEEN_FROM * stock.uMg;
  return {
    grade,
    reach,
    stockMg: stock.massMg,
    stockUMg: { before: stock.uMg, after: uMg },
    halfWidthDays: {
      before,
      after: isSeen ? coverHalfWidth({ massMg: stock.massMg, uMg }, draw) : before,
    },
  };
}

function stocksOf(
  position: Position,
  grade: string,
): { reach: Reach; stock: Stock; stores: readonly string[] }[] {
  const free = freeStock(position, grade);
  const above = stockToFloor(position, grade);
  const ofFree = {
    reach: 'free' as const,
    stock: { massMg: free.massMg, uMg: free.uMg },
    stores: free.stores,
  };
  if (above === null) return [ofFree];
  const stores = [...free.stores, ...reserveStock(position).stores];
  return [ofFree, { reach: 'to floor', stock: above, stores }];
}
