// Whether an event may follow where a run stands. The same answer refuses an intention and reports a fact.
import { type Card, type CardStep, type Expected, fitsExpected, missingInBounds } from '../outpost/index.ts';
import type { CardDeviation, CardEnd, CardPause, CardStepped, Found, RunEvent } from './event.ts';
import { expectedInRun, neededLines } from './known-in-run.ts';
import { type RunFinding, type RunFindingCode, runFinding } from './run-finding.ts';
import { hasEnded, isClosed, isFlowing, type RunState } from './run-state.ts';

type Fault = readonly [RunFindingCode, RunFinding['data']?] | null;

/** @returns null where it may follow */
export function judge(card: Card, state: RunState | null, event: RunEvent): RunFinding | null {
  const fault = faultOf(card, state, event);
  return fault === null ? null : runFinding(fault[0], event, fault[1] ?? {});
}

function faultOf(card: Card, state: RunState | null, event: RunEvent): Fault {
  if (event.kind === 'card-begin') {
    if (state !== null) return ['run-begun-twice'];
    const isSame = event.card === card.id && event.revision === card.revision;
    const known = card.forms.some((form) => form === event.form);
    if (isSame && known) return null;
    return ['run-other-card', { card: event.card, revision: event.revision, form: event.form }];
  }
  if (state === null) return ['run-not-begun'];
  if (hasEnded(state)) return ['run-ended', { status: state.status }];
  switch (event.kind) {
    case 'card-step':
      return faultOfStep(card, state, event);
    case 'card-deviation':
      return faultOfDeviation(card, state, event);
    case 'card-pause':
      return faultOfPause(state, event);
    case 'card-resume':
      return isPaused(state) ? null : ['run-not-paused', { status: state.status }];
    case 'card-end':
      return faultOfEnd(card, state, event);
  }
}

const isPaused = ({ status }: RunState): boolean => status === 'paused' || status === 'interrupted';

function faultOfPause(state: RunState, { moved }: CardPause): Fault {
  if (isPaused(state)) return ['run-paused', { status: state.status }];
  return isFlowing(state) && !isAmount(moved) ? ['run-moved-missing'] : null;
}

function isAmount(moved: CardPause['moved']): boolean {
  return (
    moved !== undefined &&
    moved.litres >= 0 &&
    moved.litres < Number.POSITIVE_INFINITY &&
    moved.u >= 0 &&
    moved.u < Number.POSITIVE_INFINITY
  );
}

/** Lines are worked at only while the card runs. */
function faultOfStatus(state: RunState): Fault {
  if (isPaused(state)) return ['run-paused', { status: state.status }];
  return state.status === 'stopped' ? ['run-stopped'] : null;
}

function faultOfLine(card: Card, state: RunState, id: string): Fault {
  const line = state.lines.get(id);
  if (line === undefined) return ['run-line-unknown', { line: id }];
  if (isClosed(line)) return ['run-line-closed', { line: id }];
  return mayBeNext(card, state, id) ? null : ['run-line-order', { line: id, marked: state.marked }];
}

/**
 * READ-DO: the marked line alone. DO-CONFIRM: any line of the group of the marked one; a hold point and a *must pass* line end
 * a group, and what the water hangs on keeps its order.
 */
function mayBeNext(card: Card, state: RunState, id: string): boolean {
  if (state.marked === id) return true;
  if (state.form === 'READ-DO') return false;
  const ids = card.steps.map((step) => step.id);
  const [from, to] = [ids.indexOf(state.marked ?? ''), ids.indexOf(id)];
  return from !== -1 && from < to && card.steps.slice(from, to + 1).every((step) => !keepsOrder(card, step));
}

function keepsOrder({ flow }: Card, { id, holdPoint, mustPass, twoPersons }: CardStep): boolean {
  const isOfFlow = flow !== null && [flow.starts, flow.stops, flow.amount].includes(id);
  return holdPoint || mustPass !== undefined || twoPersons || isOfFlow;
}

function faultOfStep(card: Card, state: RunState, event: CardStepped): Fault {
  const fault = faultOfStatus(state) ?? faultOfLine(card, state, event.step);
  if (fault !== null) return fault;
  const step = stepOf(card, event.step);
  if (state.lines.get(event.step)?.status === 'off') return ['run-line-off', { line: event.step }];
  if (!isOfKind(step, event.found)) return ['run-found-kind', { line: step.id, kind: step.input.kind }];
  return faultOfPersons(card, state, event) ?? faultOfMustPass(step, expectedInRun(card, state, step));
}

function stepOf(card: Card, id: string): CardStep {
  const step = card.steps.find((each) => each.id === id);
  if (step === undefined) throw new Error(`the card ${card.id} has no line ${id}`);
  return step;
}

function isOfKind({ input }: CardStep, found: Found): boolean {
  if (found.is !== input.kind) return false;
  if (found.is === 'number')
    return (
      Number.isFinite(found.value) &&
      (found.u === undefined || (found.u >= 0 && found.u < Number.POSITIVE_INFINITY))
    );
  if (found.is === 'choice') return input.choices?.includes(found.choice) === true;
  return true;
}

/** A hold point is for somebody who did none of the lines since the last one; two people are two. */
function faultOfPersons(card: Card, state: RunState, { step: id, by, second }: CardStepped): Fault {
  const { holdPoint, twoPersons } = stepOf(card, id);
  if (twoPersons && (second === undefined || second === by)) return ['run-second-missing', { line: id, by }];
  if (!holdPoint) return null;
  const at = card.steps.findIndex((step) => step.id === id);
  const last = card.steps.slice(0, at).findLastIndex((step) => step.holdPoint);
  const did = card.steps.slice(last + 1, at).map((step) => state.lines.get(step.id)?.by);
  return did.includes(by) ? ['run-same-person', { line: id, by }] : null;
}

/** Where a bound is not known, nothing may pass. */
function faultOfMustPass({ id, mustPass }: CardStep, expected: Expected): Fault {
  if (mustPass === undefined) return null;
  const missing = missingInBounds(expected);
  return missing === null ? null : ['run-must-pass-unknown', { line: id, check: mustPass, missing }];
}

function faultOfDeviation(card: Card, state: RunState, event: CardDeviation): Fault {
  const { step: id, choice, reason } = event;
  const status = choice === 'stop' && state.status === 'running' ? null : faultOfStatus(state);
  const fault = status ?? faultOfLine(card, state, id);
  if (fault !== null) return fault;
  const step = stepOf(card, id);
  const isOff = state.lines.get(id)?.status === 'off';
  if (choice === 'stop') return null;
  const mustPass = step.mustPass;
  if (mustPass !== undefined && choice !== 'recheck')
    return ['run-must-pass', { line: id, check: mustPass, choice }];
  if (choice !== 'skip' && !isOff) return ['run-line-not-off', { line: id, choice }];
  if (choice === 'skip' && isOff) return ['run-line-off', { line: id }];
  if (choice === 'skip' && (keepsOrder(card, step) || neededLines(card).has(id)))
    return ['run-skip-not-here', { line: id }];
  return choice !== 'recheck' && reason.trim() === '' ? ['run-reason-missing', { line: id, choice }] : null;
}

function faultOfEnd(card: Card, state: RunState, { end, reason, moved }: CardEnd): Fault {
  if (end === 'abort') {
    if (reason.trim() === '') return ['run-reason-missing', { line: '', choice: 'abort' }];
    return isAmountOwed(card, state) && !isAmount(moved) ? ['run-moved-missing'] : null;
  }
  const status = faultOfStatus(state);
  if (status !== null) return status;
  const open = [...state.lines].filter(([, line]) => !isClosed(line)).map(([id]) => id);
  return open.length === 0 ? null : ['run-lines-open', { lines: open }];
}

/** Water flowed, and neither the card's line nor a break told how much. */
export function isAmountOwed({ flow }: Card, state: RunState): boolean {
  const last = state.flow.at(-1);
  if (flow === null || last === undefined || last.moved !== null) return false;
  const line = state.lines.get(flow.amount);
  return line === undefined || !isClosed(line);
}

/** Whether what was found is what was expected; a line without an expectation takes anything. */
export function fitsLine(card: Card, state: RunState, { step: id, found }: CardStepped): boolean {
  const expected = expectedInRun(card, state, stepOf(card, id));
  if (found.is === 'number') return fitsExpected(expected, found.value);
  return found.is === 'choice' ? fitsExpected(expected, found.choice) : true;
}
