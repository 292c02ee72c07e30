// What the book knows of the fitness of each store's water, as a field of its sheet, with its words.
import {
  holdsOf,
  notFreeBecause,
  type Position,
  type StorePosition,
  type StoreState,
} from '../../account/index.ts';
import type { Entry } from '../../book/index.ts';
import { formatShortStamp } from '../../ground/units/index.ts';
import { type QualityWord, type StoreQuality, storeQualityWords } from '../../papers/index.ts';
import { refOf } from './past.ts';
import type { Seen } from './seen.ts';

export function storeQuality(
  { fold, position, past }: Pick<Seen, 'fold' | 'position' | 'past'>,
  store: StorePosition,
): StoreQuality {
  const state = fold.stores.get(store.facts.id);
  const stamp = (ms: number) => formatShortStamp(ms, position.dayRule);
  const facts = {
    word: wordOfStore(position, store),
    onWordOf: store.release,
    released: releasedOf(position, store),
    ...holdsIn(position, store, state),
    treated:
      store.treated === null
        ? null
        : {
            at: stamp(store.treated.atMs),
            biocide: store.treated.biocide,
            countsFrom: stamp(store.treated.untilMs),
          },
    downgraded: downgradedOf(position, state, past.downgrades),
    entries: entriesOf(store),
  };
  return { ...facts, words: storeQualityWords(facts, { grade: store.grade, emptied: store.emptied }) };
}

function wordOfStore(position: Position, store: StorePosition): QualityWord {
  if (store.hold !== null) return 'HOLD';
  if (store.conditional !== null) return 'CONDITIONAL';
  if (store.waived.length > 0) return 'WAIVED';
  const why = notFreeBecause(position, store);
  if (why === 'not released' || why === 'release over' || why === 'no limit set') return 'NOT RELEASED';
  return store.release === 'own sample' && store.released !== null && !store.emptied ? 'RELEASED' : '';
}

function releasedOf(position: Position, { released }: StorePosition): StoreQuality['released'] {
  if (released === null) return null;
  const { by, atMs, samples, untilMs } = released;
  return {
    ...{ by, samples },
    at: formatShortStamp(atMs, position.dayRule),
    until: untilMs === null ? null : formatShortStamp(untilMs, position.dayRule),
    over: untilMs !== null && untilMs <= position.atMs,
  };
}

function holdsIn(
  position: Position,
  { conditional, waived }: StorePosition,
  state: StoreState | undefined,
): Pick<StoreQuality, 'holds' | 'conditional' | 'waived'> {
  const stamp = (ms: number) => formatShortStamp(ms, position.dayRule);
  return {
    holds: (state === undefined ? [] : holdsOf(state)).map(({ hold, sinceMs, reason, failed, parked }) => ({
      ...{ hold, reason, failed: failed ?? [] },
      since: stamp(sinceMs),
      parked: parked === undefined ? null : { owner: parked.owner, until: stamp(parked.untilMs) },
    })),
    conditional:
      conditional === null
        ? null
        : { hold: conditional.hold, since: stamp(conditional.sinceMs), reason: conditional.reason },
    waived: waived.map(({ hold, by, second, reason, untilMs }) => ({
      ...{ hold: hold.hold, by, second, reason },
      until: stamp(untilMs),
    })),
  };
}

/** Of the water that is in it now: a store that was emptied since holds other water. */
function downgradedOf(
  position: Position,
  state: StoreState | undefined,
  downgrades: readonly Entry<'downgrade'>[],
): StoreQuality['downgraded'] {
  const last = downgrades.findLast(({ body }) => body.store === state?.facts.id);
  if (state === undefined || last === undefined || state.emptied || last.happenedAtMs < state.badNewsSinceMs)
    return null;
  const { happenedAtMs, by, body } = last;
  return {
    at: formatShortStamp(happenedAtMs, position.dayRule),
    by,
    fromGrade: body.fromGrade,
    ref: refOf(last),
  };
}

function entriesOf({ released, hold, conditional, waived, treated }: StorePosition): readonly string[] {
  const all = [released, hold, conditional, ...waived, treated];
  return [...new Set(all.flatMap((each) => each?.entry ?? []))];
}
