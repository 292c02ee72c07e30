// The sheet of a trend: one parameter over time, its limits, what the water does by itself, and what bad stores share.
import type { ChanceStep, Count, StoreFound, Trait } from '../../account/index.ts';
import type { SheetFigure } from './figure.ts';
import type { SheetHead } from './today.ts';

export interface TrendPlace {
  readonly kind: 'store' | 'point' | 'grade' | 'everywhere';
  /** Empty: everywhere. */
  readonly name: string;
}

/** What was measured at all, and where. */
export interface TrendParameter {
  readonly parameter: string;
  readonly results: number;
  /** The place with the most results comes first. */
  readonly places: readonly {
    readonly kind: 'store' | 'point';
    readonly name: string;
    readonly results: number;
  }[];
  readonly last: { readonly day: number; readonly told: TrendTold };
}

/** As the person who read it told it. */
export interface TrendTold {
  readonly value: number;
  readonly unit: string;
  readonly basis: string | null;
  readonly censored: 'no' | 'below' | 'above';
}

export interface TrendPoint {
  /** Day 12.5 is the noon of Day 12; when the sample was drawn. */
  readonly day: number;
  readonly at: string;
  /** The day on which the result came. */
  readonly knownDay: number;
  readonly place: Pick<TrendPlace, 'kind' | 'name'> | null;
  readonly grade: string | null;
  readonly sample: string;
  /** Site and number of the entry of the result, and its id. */
  readonly ref: string;
  readonly id: string;
  readonly told: TrendTold;
  /** In the unit of the trend. */
  readonly figure: SheetFigure;
  readonly against: 'within' | 'above' | 'below' | 'unclear' | 'no limit';
  readonly method: string | null;
  readonly madeAt: 'aboard' | 'laboratory' | null;
  readonly duplicate: boolean;
  readonly drawnFrom: string | null;
  readonly afterGap: boolean;
}

export interface TrendLimit {
  readonly row: string;
  readonly side: 'at least' | 'at most';
  /** In the unit of the trend; null while the row is off, or where it cannot be told in it. */
  readonly value: number | null;
  readonly isOff: boolean;
  readonly source: string;
  readonly evidence: string;
  readonly firstAct: string;
}

/** Values just before and just after something was done. */
export interface TrendMark {
  readonly day: number;
  readonly at: string;
  readonly what: string;
  readonly before: { readonly day: number; readonly value: number } | null;
  readonly after: { readonly day: number; readonly value: number } | null;
}

export interface TrendSignal {
  readonly rule: 'beyond the limits' | 'on one side' | 'rising' | 'falling';
  readonly side: 'high' | 'low' | null;
  readonly fromDay: number;
  readonly toDay: number;
  readonly ids: readonly string[];
}

export type TrendChart =
  | {
      readonly limits: null;
      readonly why: 'several waters' | 'few results' | 'too few seen' | 'no spread';
      readonly results: number;
      readonly seen: number;
      readonly least: number;
      /** Places that have enough results for limits of their own. */
      readonly enough: readonly {
        readonly kind: 'store' | 'point';
        readonly name: string;
        readonly results: number;
      }[];
    }
  | {
      readonly limits: {
        readonly centre: SheetFigure;
        readonly low: SheetFigure | null;
        readonly high: SheetFigure;
      };
      readonly by: 'moving ranges' | 'censored fit';
      readonly results: number;
      readonly seen: number;
      readonly isProvisional: boolean;
      readonly full: number;
      readonly sinceDay: number;
      readonly signals: readonly TrendSignal[];
    };

export interface TrendPattern {
  readonly isByLimit: boolean;
  readonly now: Count;
  readonly before: { readonly count: Count; readonly chance: ChanceStep } | null;
  readonly stores: readonly {
    readonly store: string;
    readonly found: StoreFound;
    readonly isBeyond: boolean;
    readonly day: number;
    readonly told: TrendTold;
    readonly ref: string;
  }[];
  readonly sharedByAll: readonly Trait[];
  readonly groups: readonly {
    readonly traits: readonly Trait[];
    readonly stores: readonly string[];
    readonly inside: Count;
    readonly outside: Count;
    readonly chance: ChanceStep;
  }[];
}

export interface Trend {
  readonly parameter: string;
  readonly place: TrendPlace;
  readonly unit: string;
  readonly basis: string | null;
  readonly points: readonly TrendPoint[];
  /** Told in a unit or on a basis that is not that of the trend. */
  readonly apart: readonly { readonly sample: string; readonly ref: string; readonly told: TrendTold }[];
  readonly interval: { readonly service: string; readonly everyDays: number } | null;
  readonly gaps: readonly {
    readonly fromDay: number;
    readonly toDay: number;
    readonly days: number;
    readonly everyDays: number;
  }[];
  readonly methodChanges: readonly {
    readonly day: number;
    readonly at: string;
    readonly from: string;
    readonly to: string;
  }[];
  readonly marks: readonly TrendMark[];
  readonly limits: readonly TrendLimit[];
  readonly chart: TrendChart;
  /** How far back a pattern over stores is looked for. */
  readonly patternDays: number;
  /** Null where fewer than two stores were measured within that time, and of one store or point. */
  readonly pattern: TrendPattern | null;
}

export interface TrendSheet {
  readonly head: SheetHead;
  readonly parameters: readonly TrendParameter[];
  /** Null where no parameter was asked for. */
  readonly trend: Trend | null;
}
