// The door of the outpost room: what other rooms may use.
export type { OutpostIndex } from './index-outpost.ts';
export { indexOutpost } from './index-outpost.ts';
export { outpostJsonSchema } from './json-schema.ts';
export type { ChosenRows, LimitChoice } from './limits/chosen-rows.ts';
export { chosenRows } from './limits/chosen-rows.ts';
export type { Clash, ClashKind } from './limits/clashes.ts';
export { clashesOf } from './limits/clashes.ts';
export type { LimitFinding, LimitFindingCode, LimitSetFinding } from './limits/limit-finding.ts';
export type { LimitFigures, LimitRow, LimitSet } from './limits/limit-set.ts';
export { limitSetJsonSchema } from './limits/limit-set-schema.ts';
export type { LimitBasis, LimitUnit } from './limits/limit-units.ts';
export {
  basisUnlessSaid,
  fitTogether,
  LIMIT_BASES,
  LIMIT_UNITS,
  UNITS_OF_LIMITS,
} from './limits/limit-units.ts';
export { policyLimitSet } from './limits/policy-limit-set.ts';
export type { ReadLimitSet } from './limits/read-limit-set.ts';
export { readLimitSet } from './limits/read-limit-set.ts';
export type { SwitchedOn, TypedLimit } from './limits/switched-on.ts';
export { switchedOn } from './limits/switched-on.ts';
export type { Measure } from './limits/told-in.ts';
export { toldIn } from './limits/told-in.ts';
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
  SamplingPoint,
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
