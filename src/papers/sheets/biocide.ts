// What the sheet of a store tells of its biocide and of its own life.
import type { SheetFigure } from './figure.ts';
import type { ReckonCaution } from './reckon.ts';

/** A result for the biocide in the water that stands in the store now. */
export interface BiocideResult {
  readonly ref: string;
  readonly id: string;
  /** When the sample was drawn. */
  readonly stamp: string;
  readonly valueMgPerL: number;
  /** Under the detection limit, which is the value. */
  readonly below: boolean;
}

/** How long it has been in the water, against the age that the outpost's policy allows. */
export interface BiocideAge {
  readonly days: number;
  readonly since: string;
  readonly by: 'dose' | 'fill' | 'opening' | 'delivery';
  readonly mostDays: number | null;
  /** Last outpost day on which it counts. */
  readonly untilDay: number | null;
  readonly isOver: boolean;
}

/** Outpost days on which the least is passed, by so many outcomes of a hundred; null: not within a hundred years. */
export interface BiocideDays {
  readonly q05: number | null;
  readonly q50: number | null;
  readonly q95: number | null;
}

export interface RedoseSheet {
  readonly volume: SheetFigure;
  readonly resulting: SheetFigure;
  readonly mostMgPerL: number | null;
  /** The dose is reckoned as if nothing were left in the water, for nobody knows. */
  readonly assumesNothingLeft: boolean;
  readonly cautions: readonly ReckonCaution[];
}

/** The port that the store stands on, and how long no water has gone through it. */
export interface StandingLine {
  readonly line: string;
  /** Null: none since the book began. */
  readonly lastFlow: string | null;
  readonly days: number;
  readonly untilDay: number | null;
  readonly isOver: boolean;
}

export interface BiocideSheet {
  readonly biocide: string;
  readonly results: readonly BiocideResult[];
  /** mg/L: now where a rate is known, else as it was read. */
  readonly level: SheetFigure | null;
  readonly levelIs: 'now' | 'as read' | 'not known';
  /** Percent a day, as the store stands now. */
  readonly rate: SheetFigure | null;
  /** Millimetres of water a day that the wall clears: the rate without the shape of the store. */
  readonly wallLoss: SheetFigure | null;
  readonly wall: SheetFigure;
  readonly ratedBy: 'own' | 'kind' | 'both' | 'not known';
  /** Results of this store, and other stores of its kind, that the rate rests on. */
  readonly ratedResults: number;
  readonly ratedStores: number;
  readonly noRate: 'no results' | 'one result' | 'limits alone' | 'no instrument' | 'undetermined' | null;
  readonly leastMgPerL: number | null;
  readonly mostMgPerL: number | null;
  readonly ends: BiocideDays | null;
  readonly age: BiocideAge | null;
  /** The day from which it counts no more, and what says so; without one it is for a hold. */
  readonly untilDay: number | null;
  readonly untilBy: 'forecast' | 'policy' | 'below least' | 'not known';
  readonly redose: RedoseSheet | null;
  readonly noRedose: 'no concentrate told' | 'no target' | 'not needed' | 'nothing inside' | 'refused' | null;
  readonly line: StandingLine | null;
}

/** How often it was filled and how long it has been in use. */
export interface LifeSheet {
  readonly fills: number;
  readonly empties: number;
  readonly days: number;
  readonly since: string;
  readonly sinceWhat: 'disinfected' | 'first in the book';
  readonly lifeCycles: number | null;
  readonly lifeDays: number | null;
  readonly verdict: 'within' | 'near' | 'over' | 'no life told';
}
