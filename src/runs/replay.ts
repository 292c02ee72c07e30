// From the events of a run to where it stands; the same events in any order of arrival give the same state.
import type { Card, CardForm } from '../outpost/index.ts';
import type { CardBegin, CardDeviation, CardEnd, CardPause, CardStepped, RunEvent } from './event.ts';
import { inOrder } from './event.ts';
import { fitsLine, judge } from './judge.ts';
import type { RunFinding } from './run-finding.ts';
import { counts, isClosed, isFlowing, type LineState, OPEN_LINE, type RunState } from './run-state.ts';

export interface Replayed {
  /** Null before it has begun. */
  readonly state: RunState | null;
  /** Facts that could not follow where they stand; they changed nothing. */
  readonly findings: readonly RunFinding[];
}

/** The state of a run from all that was said of it. An event that arrives twice is the same event. */
export function replay(card: Card, run: string, events: readonly RunEvent[]): Replayed {
  const seen = new Set<string>();
  let state: RunState | null = null;
  const findings: RunFinding[] = [];
  for (const event of inOrder(events)) {
    if (event.run !== run || seen.has(event.id)) continue;
    seen.add(event.id);
    const fault = judge(card, state, event);
    if (fault === null) state = follow(card, state, event);
    else findings.push(fault);
  }
  return { state, findings };
}

export type Asked =
  | { readonly ok: true; readonly state: RunState }
  | { readonly ok: false; readonly finding: RunFinding };

/** An intention: refused with the reason, or the state that it leads to. */
export function askRun(card: Card, state: RunState | null, event: RunEvent): Asked {
  const finding = judge(card, state, event);
  return finding === null ? { ok: true, state: follow(card, state, event) } : { ok: false, finding };
}

function follow(card: Card, state: RunState | null, event: RunEvent): RunState {
  if (event.kind === 'card-begin') return begun(card, event);
  if (state === null) throw new Error(`${event.kind} was not judged`);
  const next = changed(card, state, event);
  const posted = new Set([...state.posted, ...(event.posted ?? [])]);
  return { ...next, posted, marked: markedOf(card, next) };
}

function markedOf({ steps }: Card, { lines }: Pick<RunState, 'lines'>): string | null {
  const next = steps.find(({ id }) => {
    const line = lines.get(id);
    return line !== undefined && !isClosed(line);
  });
  return next?.id ?? null;
}

function begun(card: Card, event: CardBegin): RunState {
  const lines = new Map(card.steps.map(({ id }) => [id, OPEN_LINE]));
  return {
    run: event.run,
    card: card.id,
    form: event.form as CardForm,
    status: 'running',
    beganAtMs: event.atMs,
    endedAtMs: null,
    chosen: new Map(Object.entries(event.chosen)),
    leaves: new Map(Object.entries(event.leaves)),
    lines,
    marked: markedOf(card, { lines }),
    flow: [],
    lastMoved: null,
    posted: new Set(event.posted ?? []),
  };
}

function changed(card: Card, state: RunState, event: Exclude<RunEvent, CardBegin>): RunState {
  switch (event.kind) {
    case 'card-step':
      return stepped(card, state, event);
    case 'card-deviation':
      return decided(card, state, event);
    case 'card-pause':
      return paused(state, event);
    case 'card-resume':
      return resumed(card, { ...state, status: 'running' }, event.atMs);
    case 'card-end':
      return ended(state, event);
  }
}

function withLine(state: RunState, id: string, change: Partial<LineState>): RunState {
  const lines = new Map(state.lines);
  lines.set(id, { ...(lines.get(id) ?? OPEN_LINE), ...change });
  return { ...state, lines };
}

function stepped(card: Card, state: RunState, event: CardStepped): RunState {
  const { step: id, found, by, second = null, verified, atMs } = event;
  const status = fitsLine(card, state, event) ? 'done' : 'off';
  return withFlow(card, withLine(state, id, { status, found, by, second, verified, atMs, reason: null }), id);
}

/** The water begins and stops with two lines of the card. */
function withFlow({ flow }: Card, state: RunState, id: string): RunState {
  const line = state.lines.get(id);
  if (flow === null || line === undefined || !counts(line) || line.atMs === null) return state;
  if (id === flow.starts && !isFlowing(state))
    return { ...state, flow: [...state.flow, { fromMs: line.atMs, toMs: null, moved: null }] };
  return id === flow.stops ? stopped(state, line.atMs, null) : state;
}

function stopped(state: RunState, atMs: number, moved: CardPause['moved'] | null): RunState {
  const last = state.flow.at(-1);
  if (last === undefined || last.toMs !== null) return state;
  return { ...state, flow: [...state.flow.slice(0, -1), { ...last, toMs: atMs, moved: moved ?? null }] };
}

function decided(
  card: Card,
  state: RunState,
  { step: id, choice, reason, by, atMs }: CardDeviation,
): RunState {
  const line = state.lines.get(id) ?? OPEN_LINE;
  switch (choice) {
    case 'recheck':
      return withLine(state, id, { ...OPEN_LINE, rechecks: line.rechecks + 1 });
    case 'record':
      return withFlow(card, withLine(state, id, { status: 'deviation', reason }), id);
    case 'skip':
      return withLine(state, id, { status: 'skipped', by, atMs, reason });
    case 'stop':
      return { ...withLine(state, id, { reason }), status: 'stopped' };
  }
}

function paused(state: RunState, { why, atMs, moved }: CardPause): RunState {
  // A card that was stopped stays so: leaving it alone does not make it run again.
  if (state.status === 'stopped') return stopped(state, atMs, moved);
  return { ...stopped(state, atMs, moved), status: why === 'pause' ? 'paused' : 'interrupted' };
}

/** Where the water had been stopped on the way, the lines that make it flow are done again; without such lines it flows at once. */
function resumed({ flow }: Card, state: RunState, atMs: number): RunState {
  const broken = state.flow.at(-1)?.moved ?? null;
  if (flow === null || broken === null) return state;
  if (flow.again.length === 0)
    return { ...state, flow: [...state.flow, { fromMs: atMs, toMs: null, moved: null }] };
  const lines = new Map(state.lines);
  for (const id of flow.again) lines.set(id, { ...OPEN_LINE, rechecks: lines.get(id)?.rechecks ?? 0 });
  return { ...state, lines };
}

function ended(state: RunState, { end, atMs, moved }: CardEnd): RunState {
  return {
    ...stopped(state, atMs, null),
    status: end === 'finish' ? 'finished' : 'aborted',
    endedAtMs: atMs,
    lastMoved: moved ?? null,
  };
}
