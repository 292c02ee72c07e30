// Following a content back through everything that came in: which account held how much of it, by which way.
import type { Inflow } from './inflows.ts';

/** Where a part of the water was before: a store, a hose, a pool without walls, a content that was told first; `older` is all the rest. */
export type PartKind = 'store' | 'hose' | 'pool' | 'opening' | 'delivery' | 'came aboard' | 'older';

/** An account that some of the water was in, on one way to the store that is asked about. */
export interface Ancestor {
  readonly kind: PartKind;
  readonly name: string;
  /** Of the whole content. */
  readonly share: number;
  readonly grade: string | null;
  /** The youngest first. */
  readonly entries: readonly string[];
  readonly entryCount: number;
  readonly firstMs: number | null;
  readonly lastMs: number | null;
  readonly parents: readonly Ancestor[];
}

/** The same while it is being followed. */
interface Trace extends Ancestor {
  readonly generation: number;
  share: number;
  /** What of it is in its account at the moment that the walk has come back to. */
  open: number;
  grade: string | null;
  readonly entries: string[];
  entryCount: number;
  firstMs: number | null;
  lastMs: number | null;
  readonly parents: Trace[];
  readonly byKey: Map<string, Trace>;
}

/** Entries that are named for a part; a buffer is filled every day. */
const MOST_ENTRIES = 8;
/** Ways that are kept apart; whatever comes by further ones is among the rest. */
const MOST_WAYS = 2000;

/**
 * The ancestors of what an account holds now. What none of a trace's parents has of its share is older than what was followed.
 * @param depth generations that are followed
 */
export function traceBack(inflows: readonly Inflow[], account: string, depth: number): Ancestor {
  const root = newTrace({ kind: 'store', name: account }, 0);
  root.share = 1;
  root.open = 1;
  const walk: Walk = { depth, ways: 1, tracesIn: new Map([[account, [root]]]) };
  for (let k = inflows.length - 1; k >= 0; k--) comeBackTo(walk, inflows[k] as Inflow);
  return root;
}

interface Walk {
  readonly depth: number;
  ways: number;
  /** Every trace whose water was in an account at some time. */
  readonly tracesIn: Map<string, Trace[]>;
}

/** The moment of one inflow: what was in the receiving account is in part in the giving one before it. */
function comeBackTo(walk: Walk, inflow: Inflow): void {
  for (const trace of walk.tracesIn.get(inflow.to) ?? []) {
    if (trace.open === 0) continue;
    const moved = trace.open * inflow.part;
    const parent = parentOf(walk, trace, inflow);
    if (parent !== null) give(parent, inflow, moved);
    trace.open = inflow.begins ? 0 : trace.open - moved;
  }
}

function parentOf(walk: Walk, trace: Trace, inflow: Inflow): Trace | null {
  const key = `${inflow.told ?? ''} ${inflow.from}`;
  const known = trace.byKey.get(key);
  if (known !== undefined) return known;
  if (walk.ways >= MOST_WAYS) return null;
  walk.ways += 1;
  const parent = newTrace(namesOf(inflow), trace.generation + 1);
  trace.byKey.set(key, parent);
  trace.parents.push(parent);
  const isFollowed = parent.kind === 'store' || parent.kind === 'hose';
  if (isFollowed && parent.generation < walk.depth)
    walk.tracesIn.set(inflow.from, [...(walk.tracesIn.get(inflow.from) ?? []), parent]);
  return parent;
}

function give(parent: Trace, { entry, atMs, grade }: Inflow, share: number): void {
  parent.share += share;
  parent.open += share;
  parent.grade ??= grade;
  parent.firstMs = atMs;
  parent.lastMs ??= atMs;
  if (parent.entries.at(-1) === entry) return;
  parent.entryCount += 1;
  if (parent.entries.length < MOST_ENTRIES) parent.entries.push(entry);
}

function namesOf({ told, from }: Inflow): Pick<Ancestor, 'kind' | 'name'> {
  if (told !== null) return { kind: told, name: told === 'delivery' ? from : '' };
  if (from.startsWith('store:')) return { kind: 'store', name: from.slice('store:'.length) };
  if (from.startsWith('line:')) return { kind: 'hose', name: from.slice('line:'.length) };
  return { kind: 'pool', name: from };
}

function newTrace(names: Pick<Ancestor, 'kind' | 'name'>, generation: number): Trace {
  return {
    ...names,
    generation,
    share: 0,
    open: 0,
    grade: null,
    entries: [],
    entryCount: 0,
    firstMs: null,
    lastMs: null,
    parents: [],
    byKey: new Map(),
  };
}
