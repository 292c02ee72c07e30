// The door of the outpost room: what other rooms may use.
export type { OutpostIndex } from './index-outpost.ts';
export { indexOutpost } from './index-outpost.ts';
export { outpostJsonSchema } from './json-schema.ts';
export type {
  Biocide,
  BottledOxygen,
  Costs,
  Coupling,
  Evaporation,
  FlowEnd,
  GaugingBottle,
  Grade,
  HazardFigures,
  Hose,
  Instrument,
  Levers,
  Limit,
  NormFlow,
  Norms,
  Office,
  Outpost,
  OutpostFacts,
  Part,
  Place,
  Policy,
  Pool,
  Port,
  Push,
  Route,
  SecondPersonAct,
  Service,
  Store,
  StoreKind,
  Task,
  Treatment,
  Unit,
  UnitKind,
  Use,
  Visit,
} from './outpost.ts';
export type { OutpostFinding, OutpostFindingCode } from './outpost-finding.ts';
export type { ReadOutpost } from './read-outpost.ts';
export { readOutpost } from './read-outpost.ts';
export { USES } from './shape/flow-end.ts';
export { STORE_KINDS } from './shape/stores-and-ports.ts';
