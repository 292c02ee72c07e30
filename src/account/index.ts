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
export { type StandingAge, standingAge } from './biocide/biocide-age.ts';
export {
  type BiocideState,
  biocideStates,
  type NoRate,
  type StoreWithWater,
} from './biocide/biocide-state.ts';
export { type ContainerLife, containerLife } from './biocide/container-life.ts';
export { type BiocideLimits, biocideLimits } from './biocide/limits-of-biocide.ts';
export { type Overdose, overdoseOf } from './biocide/overdose.ts';
export type { LogRow } from './biocide/result-doubt.ts';
export type {
  BiocideSince,
  LevelResult,
  LineFlow,
  Storage,
  StoreStorage,
  TasteTold,
} from './biocide/storage.ts';
export { storageFindings } from './biocide/storage-findings.ts';
export { type StorageOutcome, storageOf } from './biocide/storage-of-book.ts';
export { StorageRecorder } from './biocide/storage-recorder.ts';
export {
  type FallingLevel,
  fallingLevel,
  kindRate,
  type WallRate,
} from './biocide/wall-rate.ts';
export { wettedArea } from './biocide/wetted-area.ts';
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
export { holdsOf } from './hold.ts';
export { UNACCOUNTED } from './ledger.ts';
export type { OutpostReader } from './outpost-of-book.ts';
export {
  type LearnedError,
  type Position,
  positionOf,
  type RecordOfDoubts,
  type StockSum,
} from './position.ts';
export type { BadResult } from './quality/bad-result.ts';
export {
  cleanResults,
  figuresOfEntry,
  rowsOfResult,
  rowsOfStores,
  storesOfResult,
} from './quality/clean-results.ts';
export { flowsThrough } from './quality/flows-through.ts';
export { LIMITS_HOLD, limitsHoldOf } from './quality/judge-anew.ts';
export { type JudgedFigure, judgedFigure } from './quality/judged-figure.ts';
export type { KnownResult, SampleTaken } from './quality/known-results.ts';
export type { ChosenSet, LimitsInForce } from './quality/limits-in-force.ts';
export { isForPeople, policyInForce, rowsOfGrade, typedRow } from './quality/limits-in-force.ts';
export { verdictOfStore } from './quality/release.ts';
export { behindPoint } from './quality/speaks-of.ts';
export { type AgainstLimits, againstLimits } from './quality-series/against-limits.ts';
export {
  type Chart,
  type ChartSignal,
  chartOf,
  FULL_RESULTS,
  LEAST_RESULTS,
  type NoLimits,
} from './quality-series/chart.ts';
export { type Filling, fillingOf } from './quality-series/filling.ts';
export { type MeasuredOutcome, measuredOf } from './quality-series/measured.ts';
export type { Measured, MeasuredPoint, SeriesPlace, WaterMark } from './quality-series/measured-point.ts';
export {
  type ChanceStep,
  type Count,
  type Pattern,
  patternOf,
  type SharedGroup,
  type StoreFound,
  type StoreInPattern,
  type Trait,
  WINDOW_DAYS,
} from './quality-series/pattern.ts';
export { type SamplingInterval, samplingInterval } from './quality-series/sampling-interval.ts';
export { type QualitySeries, type SeriesPoint, seriesOf } from './quality-series/series.ts';
export type { ReadingAhead, WayOfReading } from './reading-ahead.ts';
export { Account, type OpenOutcome } from './reckon.ts';
export { biocidesIn, gradeAfter, isWaste, type RuleBreak, ruleBreaks, type Side } from './rules.ts';
export type { AccountSnapshot, SnapshotPlace } from './snapshot.ts';
export type { Standing } from './standing.ts';
export { SILENCE_MS } from './state-findings.ts';
export { type FreeStock, freeStock, notFreeBecause, reserveStock } from './stock.ts';
export type { StorePosition } from './store-position.ts';
export type {
  HoldState,
  HowKnown,
  Parked,
  Release,
  ReleaseRecord,
  StoreFacts,
  StoreState,
  Treated,
  WaivedHold,
} from './store-state.ts';
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
