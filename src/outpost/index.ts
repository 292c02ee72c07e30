// The door of the outpost room: what other rooms may use.
export type {
  Card,
  CardFlow,
  CardForm,
  CardHazard,
  CardPost,
  CardStep,
} from './cards/card.ts';
export type { CardFinding, CardFindingCode, CardStartFinding } from './cards/card-finding.ts';
export { cardJsonSchema } from './cards/card-schema.ts';
export type { CardUnit } from './cards/card-units.ts';
export { CARD_UNITS, fromSi, spanFromSi, spanToSi, toSi, typeOfUnit } from './cards/card-units.ts';
export type { CardFigure, Expected } from './cards/fill/expected.ts';
export { expectedAt, figureOf, fitsExpected, missingInBounds } from './cards/fill/expected.ts';
export type {
  CardValue,
  ChoosableStore,
  FillAsked,
  IntendedMovement,
  RefusedMovement,
} from './cards/fill/fill-asked.ts';
export type { FilledCard, FilledHazard, FilledStep } from './cards/fill/fill-card.ts';
export { fillCard } from './cards/fill/fill-card.ts';
export { hoseFactor } from './cards/fill/outpost-values.ts';
export type { Leaf, Leaves, Named, Reckoned, Truth } from './cards/formula/evaluate.ts';
export { holdsSurely, leafNames, reckonFormula } from './cards/formula/evaluate.ts';
export type { FormulaFault } from './cards/formula/formula-fault.ts';
export type { Formula } from './cards/formula/parse.ts';
export { parseFormula } from './cards/formula/parse.ts';
export type { ReadCard } from './cards/read-card.ts';
export { readCard } from './cards/read-card.ts';
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
