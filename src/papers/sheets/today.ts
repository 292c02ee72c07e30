// The sheet *Today*: how much, where, fit for what, until when, what needs somebody.

import type { Because, SheetFigure } from './figure.ts';
import type { WordedFinding } from './finding.ts';
import type { CoverAtRateFigure, ReadingWorth } from './worth.ts';

export interface SheetHead {
  readonly outpost: string;
  readonly practice: boolean;
  /** `Day 46 · 2147-04-15 Sat · 21:00 UTC` */
  readonly stamp: string;
  readonly day: number;
  /** ISO, UTC. */
  readonly at: string;
  /** Set when only a part of the book is looked at. */
  readonly view: 'now' | 'as known at' | 'as of';
  readonly closedToDay: number | null;
  readonly peopleAboard: number;
  readonly entries: number;
}

export interface CoverFigure {
  /** Days; null: the stock does not run out in that outcome. */
  readonly q05: number | null;
  readonly q50: number | null;
  readonly q95: number | null;
  readonly unit: 'd';
  readonly basis: 'learned' | 'norm' | 'not enough data';
  readonly free: SheetFigure;
  /** L/d for all who are aboard; null without data. */
  readonly use: SheetFigure | null;
  /** Outpost day that the 5 % quantile falls on. */
  readonly outDayQ05: number | null;
  readonly outDayQ50: number | null;
  /** Days until the reserve would be at its floor. */
  readonly toFloor: {
    readonly q05: number | null;
    readonly q50: number | null;
    readonly q95: number | null;
  } | null;
  /** Days at the rates of policy; null for another grade than that of the reserve. */
  readonly atRates: readonly CoverAtRateFigure[] | null;
  readonly because: Because;
}

export type StoreMark = 'HOLD' | 'CONDITIONAL' | 'WAIVED' | 'NOT RELEASED' | 'EMPTY' | '';

export interface StoreLine {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  readonly place: string;
  readonly grade: string | null;
  readonly emptied: boolean;
  readonly held: boolean;
  readonly conditional: boolean;
  readonly reserve: boolean;
  readonly mark: StoreMark;
  readonly port: string | null;
  readonly mass: SheetFigure;
  readonly volume: SheetFigure;
  /** Ends of the band of 95 %, cut off at empty and at full. */
  readonly band: { readonly low: number; readonly high: number; readonly unit: string };
  /** What it holds when full. */
  readonly capacityL: number;
  readonly howKnown: string;
  /** checked, only source, deduced or unknown. */
  readonly standing: string;
  /** Hours since the last direct reading; null when there was none. */
  readonly age: number | null;
}

/** One line of the sum: free by grade, raw, waste, reserve, held …; together they are the total. */
export interface SumLine {
  readonly name: string;
  readonly volume: SheetFigure;
}

export interface TodaySheet {
  readonly head: SheetHead;
  /** Said before the headline: no reading for two days. */
  readonly silence: WordedFinding | null;
  readonly cover: Readonly<Record<string, CoverFigure>>;
  readonly reserve: {
    readonly volume: SheetFigure;
    readonly floorL: number;
    /** What its stores hold when full. */
    readonly capacityL: number;
    readonly conditionalL: number;
  } | null;
  readonly stores: readonly StoreLine[];
  readonly sums: readonly SumLine[];
  readonly total: SheetFigure;
  readonly closureMg: number;
  /** What a reading of each store would be worth, the best bargain of crew minutes first. */
  readonly readings: readonly ReadingWorth[];
  /** Open ones, the gravest first. */
  readonly findings: readonly WordedFinding[];
  readonly visits: readonly {
    readonly visit: string;
    readonly berthDay: number;
    readonly departDay: number | null;
    readonly aboard: boolean;
  }[];
}
