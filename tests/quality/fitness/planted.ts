// Accounts that are wrong on purpose: each must be found by the naive model, after few histories.
import type { Fold } from '../../../src/account/index.ts';
import type { AnyEntry } from '../../../src/book/index.ts';
import type { Planted } from './walk.ts';

type StoreState = Fold['stores'] extends Map<string, infer State> ? State : never;

const NO_HOLD = { hold: null, holdsBehind: [] } as const;

function each(fold: Fold, change: (state: StoreState) => void): void {
  for (const state of fold.stores.values()) change(state);
}

const named = (fold: Fold, stores: readonly string[]): StoreState[] =>
  stores.flatMap((store) => fold.stores.get(store) ?? []);

const isFlow = ({ kind }: AnyEntry): boolean => kind === 'movement' || kind.startsWith('run');

/** By the words that the page prints. */
export const PLANTED: Readonly<Record<string, Planted>> = {
  'a hold does not go with its water': {
    after: (fold, entry) => {
      if (entry.kind === 'movement') Object.assign(fold.stores.get(entry.body.to) ?? {}, NO_HOLD);
    },
  },
  'a waiver never lapses': {
    after: (fold, { kind }) => {
      if (kind !== 'waiver') return;
      fold.waiverEndsMs = Number.POSITIVE_INFINITY;
      each(fold, (state) => {
        state.waived = state.waived.map((one) => ({ ...one, untilMs: Number.POSITIVE_INFINITY }));
      });
    },
  },
  'a release needs no proof': {
    after: (fold, entry) => {
      if (entry.kind !== 'release') return;
      for (const state of named(fold, entry.body.stores))
        Object.assign(state, { ...NO_HOLD, release: 'own sample' });
    },
  },
  'a result is not attached to its store': { hears: ({ kind }) => kind !== 'result' },
  'a release never ends': {
    after: (fold) =>
      each(fold, (state) => {
        if (state.released !== null) state.released = { ...state.released, untilMs: null };
      }),
  },
  'a row that is off is passed over': {
    after: (fold) => {
      const sets = fold.limits.sets.map((set) => ({
        ...set,
        rows: set.rows.filter(({ limit }) => limit !== null),
      }));
      fold.limits = { ...fold.limits, sets };
    },
  },
  'the certificate is taken where policy refuses it': {
    after: (fold, entry) => {
      if (entry.kind !== 'visit-berth') return;
      for (const state of named(fold, ['FA'])) state.release = 'own sample';
    },
  },
  'a downgrade ends a foreign hold': {
    after: (fold, entry) => {
      if (entry.kind === 'downgrade') Object.assign(fold.stores.get(entry.body.store) ?? {}, NO_HOLD);
    },
  },
  'treated water is free at once': {
    after: (fold, entry) => {
      if (entry.kind !== 'treatment') return;
      Object.assign(fold.stores.get(entry.body.store) ?? {}, { ...NO_HOLD, release: 'own sample' });
    },
  },
  'conditional water is as any other': {
    after: (fold) =>
      each(fold, (state) => Object.assign(state, { conditional: null, conditionalsBehind: [] })),
  },
  'water of no known grade takes that of the store': {
    after: (fold, entry) => {
      if (!isFlow(entry)) return;
      each(fold, (state) => {
        state.grade ??= state.gradeHistory.at(-1) ?? null;
      });
    },
  },
  'water on nobody’s word is released': {
    after: (fold) =>
      each(fold, (state) => {
        if (state.release === 'none') state.release = 'made here';
      }),
  },
};
