// The sheets of the purifier beds: the list, one bed with what is read behind it, and the days ahead.
import type { SheetFigure } from './figure.ts';
import type { WordedFinding } from './finding.ts';
import type { SheetHead } from './today.ts';

/** A day of the outpost, as a number with its part of a day and in ISO 8601; null beyond what is looked at. */
export type BedDay = { readonly day: number; readonly at: string } | null;

/** Ends and middle of a band in which 80 of 100 come true. */
export interface BedDates {
  readonly q10: BedDay;
  readonly q50: BedDay;
  readonly q90: BedDay;
}

export interface BedBand {
  readonly q10: number;
  readonly q50: number;
  readonly q90: number;
  readonly unit: string;
}

export type BedMoves = 'too few readings' | 'flat' | 'rising' | 'falling';

export interface BedLine {
  /** `lead`; with more than one purifier `purifier lead`. */
  readonly id: string;
  readonly unit: string;
  readonly position: string;
  /** Litres that it has had through it; of a bed behind the first by the share that the file gives. */
  readonly used: SheetFigure;
  readonly life: SheetFigure;
  /** Part of its life in percent, and its ends at 95 %. */
  readonly usedPercent: { readonly value: number; readonly low: number; readonly high: number };
  /** Since when it has stood there. */
  readonly since: {
    readonly begun: 'opening' | 'outpost file' | 'change';
    readonly day: number;
    readonly at: string;
  };
  /** When the first limit is reached behind the beds; null for beds behind the first, and where nothing is known of the feed. */
  readonly dates: BedDates | null;
  readonly by: string | null;
}

export interface BedParameter {
  readonly parameter: string;
  readonly unit: string;
  readonly limit: number;
  readonly readings: number;
  readonly last: {
    readonly value: number;
    readonly below: boolean;
    readonly day: number;
    readonly ref: string;
  } | null;
  readonly moves: BedMoves;
  /** Of a straight line, per day. */
  readonly perDay: SheetFigure | null;
  /** Part of the way to the limit that it went, in percent. */
  readonly wayPercent: number | null;
  /** Throughput at the limit, as learned. */
  readonly limitAt: SheetFigure;
  readonly left: BedBand | null;
  readonly dates: BedDates | null;
}

export interface BedReading {
  readonly ref: string;
  readonly id: string;
  readonly stamp: string;
  readonly day: number;
  readonly at: string;
  readonly parameter: string;
  readonly value: number;
  readonly u95: number;
  readonly unit: string;
  readonly below: boolean;
  readonly throughputL: number;
  /** These beds; those before the last change; or water from before it, still in the buffer. */
  readonly of: 'these beds' | 'beds before' | 'mixed water';
}

export interface BedEvidence {
  readonly side: 'for' | 'against' | 'open';
  readonly text: string;
}

export interface BedCauseLine {
  readonly cause: string;
  readonly evidence: readonly BedEvidence[];
}

export type BedVerdict = 'no trend' | 'wait' | 'read sooner' | 'change now' | 'no dates';

/** What an advice rests on. */
export interface BedDecision {
  readonly verdict: BedVerdict;
  readonly parameter: string | null;
  readonly dates: BedDates | null;
  readonly nextReadingDay: number | null;
  readonly spares: { readonly part: string; readonly count: number } | null;
  /** The next visit that arrives: with it samples return and cargo comes. */
  readonly visit: { readonly visit: string; readonly day: number } | null;
}

export interface BedAdvice extends BedDecision {
  /** The verdict in words; then the spares and the next visit. */
  readonly texts: readonly string[];
}

export interface BedChangeLine {
  readonly day: number;
  readonly at: string;
  readonly ref: string;
  /** What the lead had had through it, by the counters, and as it was written down. */
  readonly reckonedL: number;
  readonly toldL: number | null;
}

export interface BedFeed {
  readonly perDay: SheetFigure;
  readonly basis: 'learned' | 'norm';
  readonly people: readonly { readonly day: number; readonly people: number }[];
  /** What the water brings to the beds in a day, where the feed has been read. */
  readonly load: SheetFigure | null;
}

export interface BedPlotPoint extends BedBand {
  readonly day: number;
  readonly at: string;
  readonly throughputL: number;
  readonly throughputU95L: number;
  readonly isAhead: boolean;
}

/** What the plot is drawn from. */
export interface BedPlot {
  readonly parameter: string;
  readonly unit: string;
  readonly limit: number;
  readonly curve: readonly BedPlotPoint[];
}

export interface BedSheet {
  readonly head: SheetHead;
  readonly bed: BedLine;
  readonly parameters: readonly BedParameter[];
  readonly advice: BedAdvice | null;
  readonly causes: readonly BedCauseLine[];
  readonly feed: BedFeed | null;
  readonly readings: readonly BedReading[];
  readonly changes: readonly BedChangeLine[];
  readonly plot: BedPlot | null;
  readonly findings: readonly WordedFinding[];
}

export interface BedsSheet {
  readonly head: SheetHead;
  readonly beds: readonly BedLine[];
  readonly spares: { readonly part: string; readonly count: number } | null;
  readonly findings: readonly WordedFinding[];
}
