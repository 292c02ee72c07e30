// The door of the account: what other rooms may use.
export { applyEntry } from './apply.ts';
export { type BedPrior, curveAt, readingOf } from './bed/bed-axes.ts';
export {
  type BedCause,
  bedCauses,
  type Evidence,
  type RankedCause,
} from './bed/bed-causes.ts';
export { type BedFit, type FitReading, fitBed } from './bed/bed-fit.ts';
export { type BedResult, type BedStory, leadUsedL } from './bed/bed-story.ts';
export { type BedTrend, bedTrends, type Moves } from './bed/bed-trend.ts';
export { type Beds, type BedsOutcome, bedsOf } from './bed/beds.ts';
export type { SampleContradiction } from './bed/sample-figures.ts';
export type { Spares } from './bed/spares.ts';
export { type CondensateOutcome, condensateOf } from './condensate.ts';
export type {
  Condensate,
  CondensateDay,
  CondensatePartName,
  FoundCondensate,
  NoExpectation,
} from './condensate-day.ts';
export { isDrawnOn } from './drawn-on.ts';
export { isPool, pools } from './ends.ts';
export type { Content, Estimate, Gauging } from './estimates.ts';
export { Estimator } from './estimator.ts';
export type { FamilyPart } from './family.ts';
export type { AccountFindingCode } from './finding-codes.ts';
export { type FlowsOutcome, flowsOf, type PostedFlow } from './flows.ts';
export { type AccountFinding, Fold, type VisitState } from './fold.ts';
export { readingDoubtMg } from './gauge-doubt.ts';
export { UNACCOUNTED } from './ledger.ts';
export type { OutpostReader } from './outpost-of-book.ts';
export {
  type LearnedError,
  type Position,
  positionOf,
  type RecordOfDoubts,
  type StockSum,
} from './position.ts';
export type { ReadingAhead, WayOfReading } from './reading-ahead.ts';
export { Account, type OpenOutcome } from './reckon.ts';
export { biocidesIn, gradeAfter, isWaste, type RuleBreak, ruleBreaks, type Side } from './rules.ts';
export type { AccountSnapshot, SnapshotPlace } from './snapshot.ts';
export type { Standing } from './standing.ts';
export { SILENCE_MS } from './state-findings.ts';
export { type FreeStock, freeStock, notFreeBecause, reserveStock } from './stock.ts';
export type { StorePosition } from './store-position.ts';
export type { HoldState, HowKnown, Release, StoreFacts } from './store-state.ts';
export type { StoreStory } from './story.ts';
export { storyOf } from './story.ts';
export {
  type Contact,
  type ContactCut,
  type ContactFrom,
  type ContactHop,
  type ContactTrace,
  type DrunkContact,
  type Traced,
  traceContacts,
} from './trace/contacts.ts';
export { type HistoryOutcome, historyOf } from './trace/history.ts';
export { type Origin, type Origins, originsOf, type PassedOn } from './trace/origins.ts';
export { type HoldProposal, holdProposal } from './trace/proposal.ts';
export type { FlowStep, Step, TracedAccount, WaterHistory } from './trace/step.ts';
export {
  type SamplingPoint,
  type Suspicion,
  suspicionAt,
  suspicionOfSample,
} from './trace/suspicion.ts';
export { type CleanWord, type CleanWords, cleanWordsOf, type SuspectWindow } from './trace/window.ts';
export { amountWithoutUnit } from './unit-doubt.ts';
export { MOST_USAGE_DAYS, type UsageDay } from './usage.ts';
export type {
  Blocker,
  Certificate,
  Lack,
  Reason,
  ReasonCode,
  SampleResult,
  Verdict,
  WaterSince,
} from './verdict/sample-result.ts';
export { type VerdictAsked, verdictOf } from './verdict/verdict.ts';
