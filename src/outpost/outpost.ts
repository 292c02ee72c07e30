// An outpost as the rest of the program sees it: the file with its groups taken apart and its ways of water filled in.
import type { OutpostFile } from './shape/file-schema.ts';
import type { POOLS, USES } from './shape/flow-end.ts';

/** Everything below is frozen; the types say so. */
type Frozen<T> = T extends readonly (infer Item)[]
  ? readonly Frozen<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Frozen<T[Key]> }
    : T;

type ItemOf<Section extends keyof OutpostFile> = OutpostFile[Section] extends (infer Item)[] ? Item : never;

export type Pool = (typeof POOLS)[number];
export type Use = (typeof USES)[number];
export type FlowEnd = Frozen<ItemOf<'normFlows'>['from']>;

/** One way of water. Sources stand in the order in which they are used up. */
export interface Route {
  readonly from: readonly FlowEnd[];
  readonly to: FlowEnd;
  readonly use?: Use;
  /** The unit that the water passes through; a purifier's counter stands behind it and counts what came out. */
  readonly through?: string;
}

export type OutpostFacts = Frozen<OutpostFile['outpost']>;
export type Place = Frozen<ItemOf<'places'>>;
export type Grade = Frozen<ItemOf<'grades'>>;
export type Biocide = Frozen<ItemOf<'biocides'>>;
export type Store = Frozen<Omit<ItemOf<'stores'>, 'id' | 'ids' | 'name'>> & {
  readonly id: string;
  readonly name: string;
};
export type StoreKind = Store['kind'];
export type Port = Frozen<ItemOf<'ports'>>;
export type Instrument = Frozen<Omit<ItemOf<'instruments'>, 'route' | 'name'>> & {
  readonly name: string;
  /** From the file, or from the unit that the instrument meters. */
  readonly route?: Route;
};
export type Unit = Frozen<ItemOf<'units'>>;
export type SamplingPoint = Frozen<ItemOf<'samplingPoints'>>;
export type UnitKind = Unit['kind'];
export type Norms = Frozen<OutpostFile['norms']>;
export type NormFlow = Frozen<ItemOf<'normFlows'>>;
export type Evaporation = Frozen<NonNullable<OutpostFile['evaporation']>>;
export type Hose = Frozen<ItemOf<'hoses'>>;
export type Coupling = Frozen<ItemOf<'couplings'>>;
export type Push = Frozen<NonNullable<OutpostFile['push']>>;
export type GaugingBottle = Frozen<NonNullable<OutpostFile['gaugingBottle']>>;
export type Office = Frozen<ItemOf<'people'>>;
export type SecondPersonAct = ItemOf<'secondPersonActs'>;
export type Visit = Frozen<ItemOf<'visits'>>;
export type Limit = Frozen<ItemOf<'limits'>>;
export type Policy = Frozen<OutpostFile['policy']>;
export type Treatment = Frozen<ItemOf<'treatments'>>;
export type Part = Frozen<ItemOf<'parts'>>;
export type BottledOxygen = Frozen<NonNullable<OutpostFile['bottledOxygen']>>;
export type Service = Frozen<ItemOf<'service'>>;
export type Task = Frozen<ItemOf<'taskMinutes'>>;
export type Levers = Frozen<NonNullable<OutpostFile['levers']>>;
export type Costs = Frozen<NonNullable<OutpostFile['costs']>>;
export type HazardFigures = Frozen<NonNullable<OutpostFile['hazardFigures']>>;

/** It exists only if its file had no fault. Keys are those of the file. */
export type Outpost = Frozen<Omit<OutpostFile, 'stores' | 'instruments'>> & {
  readonly stores: readonly Store[];
  readonly instruments: readonly Instrument[];
};
