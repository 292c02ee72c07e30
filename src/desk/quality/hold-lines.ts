// The holds of a book: each with its stores, what they still lack, who looks after it, and since when.
import { type HoldState, holdsOf, type StoreState } from '../../account/index.ts';
import type { Entry } from '../../book/index.ts';
import { dayOf, formatShortStamp } from '../../ground/units/index.ts';
import type { HeldStore, HoldLine } from '../../papers/index.ts';
import { volumeFigure } from '../figures.ts';
import { lacksOf } from './lacks.ts';
import { refOf } from './past.ts';
import type { Seen } from './seen.ts';
import { waterIn } from './tree-sheet.ts';

interface OnStore {
  readonly as: HeldStore['as'];
  readonly hold: HoldState;
  readonly state: StoreState;
  readonly untilMs: number | null;
}

const ORDER: readonly HeldStore['as'][] = ['hold', 'waived', 'conditional'];

type LinesOf = Pick<Seen, 'fold' | 'position' | 'past'>;

/** Open ones, the oldest first. */
export function holdLines(seen: LinesOf): readonly HoldLine[] {
  const found = new Map<string, OnStore[]>();
  for (const one of everyHold(seen)) found.set(one.hold.hold, [...(found.get(one.hold.hold) ?? []), one]);
  return [...found]
    .map(([name, on]) => ({ sinceMs: on[0]?.hold.sinceMs ?? 0, line: lineOf(seen, name, on) }))
    .sort((a, b) => a.sinceMs - b.sinceMs)
    .map(({ line }) => line);
}

function everyHold({ fold }: LinesOf): readonly OnStore[] {
  return [...fold.stores.values()].flatMap((state): OnStore[] => {
    if (!state.aboard) return [];
    const { conditional } = state;
    return [
      ...holdsOf(state).map((hold) => ({ as: 'hold' as const, hold, state, untilMs: null })),
      ...(conditional === null
        ? []
        : [{ as: 'conditional' as const, hold: conditional, state, untilMs: null }]),
      ...state.waived.map(({ hold, untilMs }) => ({ as: 'waived' as const, hold, state, untilMs })),
    ];
  });
}

function lineOf(seen: LinesOf, name: string, on: readonly OnStore[]): HoldLine {
  const { position, past } = seen;
  const { dayRule } = position;
  const holds = on.map(({ hold }) => hold);
  const [first] = holds;
  const entry = entryOfHold(past, name);
  const sinceMs = first?.sinceMs ?? entry?.happenedAtMs ?? 0;
  const held = on.filter(({ as }) => as !== 'conditional').map(({ state }) => state.facts.id);
  const touched = on.filter(({ as }) => as === 'conditional').map(({ state }) => state.facts.id);
  return {
    hold: name,
    open: on.length > 0,
    since: formatShortStamp(sinceMs, dayRule),
    sinceDay: dayOf(sinceMs, dayRule),
    reason: first?.reason ?? entry?.body.reason ?? '',
    failed: [...new Set(holds.flatMap(({ failed }) => failed ?? []))],
    sample: sampleOfHold(name, entry),
    stores: [...on]
      .sort((a, b) => ORDER.indexOf(a.as) - ORDER.indexOf(b.as))
      .map((one) => heldStore(seen, one)),
    volume: waterIn(position, held),
    conditionalVolume: waterIn(position, touched),
    parked: parkedOf(seen, holds),
    leftFree: entry?.body.leftFree ?? [],
    ref: entry === undefined ? null : refOf(entry),
  };
}

/** A hold that nobody is on any more, for whoever asks about it by its name. */
export function endedHold(seen: LinesOf, name: string): HoldLine {
  return lineOf(seen, name, []);
}

function entryOfHold({ holds }: Pick<Seen['past'], 'holds'>, name: string): Entry<'hold'> | undefined {
  return holds.findLast(({ body }) => body.hold === name);
}

/** A result that fails sets a hold by itself, which bears its sample's name. */
const OF_RESULT = /^result (.+)$/s;

function sampleOfHold(name: string, entry: Entry<'hold'> | undefined): string | null {
  return entry?.body.sample ?? OF_RESULT.exec(name)?.[1] ?? null;
}

function heldStore({ fold, position }: LinesOf, { as, state, untilMs }: OnStore): HeldStore {
  const store = position.stores.find(({ facts }) => facts.id === state.facts.id);
  const because = { entries: store?.because ?? [], method: 'estimator', inputs: [] };
  return {
    store: state.facts.id,
    as,
    grade: state.grade,
    volume: volumeFigure(position, store ?? { massMg: 0, uMg: 0 }, because),
    lacks: lacksOf(fold, state, position.atMs),
    until: untilMs === null ? null : formatShortStamp(untilMs, position.dayRule),
  };
}

function parkedOf({ position }: LinesOf, holds: readonly HoldState[]): HoldLine['parked'] {
  const parked = holds.flatMap((hold) => hold.parked ?? [])[0];
  if (parked === undefined) return null;
  const { owner, untilMs } = parked;
  return {
    owner,
    until: formatShortStamp(untilMs, position.dayRule),
    // It ends with its last day.
    untilDay: dayOf(untilMs - 1, position.dayRule),
    over: untilMs <= position.atMs,
  };
}
