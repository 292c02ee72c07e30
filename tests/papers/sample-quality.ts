// What the book knows of the fitness of some stores, made by hand.
import type { StoreQuality, StoresSheet } from '../../src/papers/index.ts';

export const onHold: StoreQuality = {
  word: 'HOLD',
  onWordOf: 'own sample',
  released: null,
  holds: [
    { hold: 'Q-01', since: 'Day 46 16:30 UTC', reason: 'plate count', failed: ['plate count'], parked: null },
  ],
  conditional: null,
  waived: [],
  treated: { at: 'Day 16 10:00 UTC', biocide: 'silver', countsFrom: 'Day 16 10:00 UTC' },
  downgraded: null,
  words: [
    'Do not use it: HOLD Q-01 since Day 46 16:30 UTC (plate count).',
    'Dosed with silver Day 16 10:00 UTC.',
  ],
  entries: ['h'],
};

/** Of one store the medic’s word, with its end. */
export const heldQuality: StoresSheet['quality'] = {
  'C-03': onHold,
  'C-01': {
    ...onHold,
    word: 'RELEASED',
    released: {
      by: 'medic',
      at: 'Day 19 08:30 UTC',
      samples: ['SMP-05'],
      until: 'Day 106 15:00 UTC',
      over: false,
    },
    holds: [],
    treated: null,
    words: ['Released by medic Day 19 08:30 UTC (sample SMP-05), until Day 106 15:00 UTC.'],
  },
};
