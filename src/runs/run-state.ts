// Where a run stands: its lines, the marked one, the water that flowed, and what has been posted.
import type { CardForm, Leaf } from '../outpost/index.ts';
import type { Found, Moved } from './event.ts';

export type RunStatus = 'running' | 'paused' | 'interrupted' | 'stopped' | 'finished' | 'aborted';
/** `off`: found outside what is expected, and nobody has decided yet. */
export type LineStatus = 'open' | 'off' | 'done' | 'deviation' | 'skipped';

export interface LineState {
  readonly status: LineStatus;
  readonly found: Found | null;
  readonly by: string | null;
  readonly second: string | null;
  readonly verified: boolean;
  readonly atMs: number | null;
  readonly reason: string | null;
  /** How often it was found and taken back. */
  readonly rechecks: number;
}

/** One stretch of time in which the water flowed. */
export interface FlowStretch {
  readonly fromMs: number;
  /** Null while it flows. */
  readonly toMs: number | null;
  /** What was found when it was stopped on the way; null where the line of the card finds it. */
  readonly moved: Moved | null;
}

export interface RunState {
  readonly run: string;
  readonly card: string;
  readonly form: CardForm;
  readonly status: RunStatus;
  readonly beganAtMs: number;
  readonly endedAtMs: number | null;
  readonly chosen: ReadonlyMap<string, string>;
  /** What it was filled with. */
  readonly leaves: ReadonlyMap<string, Leaf | null>;
  readonly lines: ReadonlyMap<string, LineState>;
  /** The line that is next; null when all are closed. */
  readonly marked: string | null;
  readonly flow: readonly FlowStretch[];
  /** Said at the end of an abort. */
  readonly lastMoved: Moved | null;
  /** Keys of drafts that are entries by now. */
  readonly posted: ReadonlySet<string>;
}

export const OPEN_LINE: LineState = {
  status: 'open',
  found: null,
  by: null,
  second: null,
  verified: false,
  atMs: null,
  reason: null,
  rechecks: 0,
};

export function isClosed({ status }: LineState): boolean {
  return status === 'done' || status === 'deviation' || status === 'skipped';
}

/** A value was found there and counts. */
export function counts({ status }: LineState): boolean {
  return status === 'done' || status === 'deviation';
}

export function hasEnded({ status }: Pick<RunState, 'status'>): boolean {
  return status === 'finished' || status === 'aborted';
}

export function isFlowing({ flow }: Pick<RunState, 'flow'>): boolean {
  return flow.at(-1)?.toMs === null;
}
