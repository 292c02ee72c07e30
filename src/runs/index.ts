// The door of runs: what other rooms may use.
export type {
  CardBegin,
  CardDeviation,
  CardEnd,
  CardPause,
  CardResume,
  CardStepped,
  Found,
  Moved,
  RunEvent,
} from './event.ts';
export { expectedInRun, leavesInRun, movedBefore } from './known-in-run.ts';
export { flowPlan } from './live/flow-plan.ts';
export type { LearnedHose, PastRun } from './live/learned-hose.ts';
export { learnedHose } from './live/learned-hose.ts';
export type { Estimate, MeansDoubt } from './live/litres-filter.ts';
export type { Band, FlowPlan, LitresRead, Live, LiveAsked, LiveReading, PushRead } from './live/live.ts';
export { live } from './live/live.ts';
export type { CabinStop, FlowStop, FlowStopped } from './live/stop-rules.ts';
export { cabinStop, flowStop } from './live/stop-rules.ts';
export type { Draft, DraftField } from './posts.ts';
export { draftsOf, dueDrafts, movedInAll } from './posts.ts';
export type { Asked, Replayed } from './replay.ts';
export { askRun, replay } from './replay.ts';
export type { RunFinding, RunFindingCode } from './run-finding.ts';
export type { FlowStretch, LineState, LineStatus, RunState, RunStatus } from './run-state.ts';
