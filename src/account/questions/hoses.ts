// Hoses as this outpost's own runs show them: how much they pass in a minute, how long a flow was, and which flow had the hose.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { msPerMinute } from '../../ground/units/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry, refOf } from '../note.ts';
import { learn, spreadOf } from './habits.ts';

export interface ToldFlow {
  readonly hose: string;
  readonly minutes: number;
}

/** Stop-watch and clock times may differ by this, or by this part of the flow. Ours, no source: valves, purge and writing down. */
const SPAN_SLACK_MIN = 10;
const SPAN_SLACK_SHARE = 0.5;

type Flowing = Extract<AnyEntry, { readonly body: { readonly amount: unknown } }>;

/** Hose and minutes, where an entry tells both. */
export function flowOf({
  body,
}: Entry<'movement'> | Entry<'run-pause'> | Entry<'run-finish'>): ToldFlow | null {
  const { hose, flowMinutes } = body;
  return hose === undefined || flowMinutes === undefined ? null : { hose, minutes: flowMinutes };
}

/** Litres a minute of a hose: by this outpost's own runs, else by the outpost file; null where nothing tells. */
export function usualFlowLPerMin(fold: Fold, hose: string): number | null {
  const learned = spreadOf(fold.habits.flowLPerMin.get(hose));
  if (learned !== null && learned.count >= 3) return learned.mean;
  const { push } = fold.index.outpost;
  const worked = push?.workedFill?.hose === hose ? push.workedFill.flowLPerMin : undefined;
  return fold.index.hoses.get(hose)?.flowLPerMin ?? worked ?? learned?.mean ?? null;
}

export function learnFlow(
  fold: Fold,
  entry: Entry<'movement'> | Entry<'run-pause'> | Entry<'run-finish'>,
): void {
  const flow = flowOf(entry);
  if (flow !== null && entry.body.amount.massMg > 0)
    learn(fold.habits.flowLPerMin, flow.hose, entry.body.amount.massMg / fold.mgPerL / flow.minutes);
}

/** Asks about the times of a flow: start after end, a span that is not its stop-watch's, two flows at once through one hose. */
export function askFlowTimes(fold: Fold, entry: Flowing): void {
  const { body } = entry;
  const startMs = 'startAtMs' in body ? body.startAtMs : undefined;
  const hose = 'hose' in body ? body.hose : undefined;
  const minutes = 'flowMinutes' in body ? body.flowMinutes : undefined;
  const endMs = entry.happenedAtMs;
  const store = 'to' in body && typeof body.to === 'string' ? body.to : undefined;
  if (startMs !== undefined && startMs > endMs) {
    const data = { why: 'ends before start', startMs, endMs };
    noteEntry(fold, entry, { code: 'order-impossible', severity: 'act-today', store, data });
    return;
  }
  const beganMs = startMs ?? endMs - (minutes ?? 0) * msPerMinute;
  const spanMin = (endMs - beganMs) / msPerMinute;
  if (
    minutes !== undefined &&
    Math.abs(spanMin - minutes) > Math.max(SPAN_SLACK_MIN, SPAN_SLACK_SHARE * minutes)
  ) {
    const data = { why: 'flow length', spanMin, minutes };
    noteEntry(fold, entry, { code: 'time-implausible', severity: 'act-today', store, data });
  }
  if (hose !== undefined) askHoseFree(fold, entry, { hose, beganMs, store });
}

function askHoseFree(
  fold: Fold,
  entry: AnyEntry,
  { hose, beganMs, store }: { hose: string; beganMs: number; store: string | undefined },
): void {
  const { lastFlow } = fold.habits;
  const last = lastFlow.get(hose);
  const endMs = entry.happenedAtMs;
  lastFlow.set(hose, { startMs: beganMs, endMs, entry: entry.id, ref: refOf(entry) });
  // A minute is how finely times are written down.
  const isBusy = last !== undefined && beganMs < last.endMs - msPerMinute && endMs > last.startMs;
  if (!isBusy || fold.index.hoses.get(hose)?.oneFlowAtATime === false) return;
  const data = {
    why: 'hose busy',
    hose,
    otherRef: last.ref,
    otherStartMs: last.startMs,
    otherEndMs: last.endMs,
  };
  noteEntry(fold, entry, {
    code: 'time-implausible',
    severity: 'act-today',
    store,
    data,
    entries: [last.entry],
  });
}
