// Stories that failed once, shrunk and kept by name.
import type { Act } from './journey.ts';
import { HOLM_WORLD, type World } from './world.ts';

const act = (what: Act['what'], change: Partial<Act> = {}): Act => ({
  what,
  a: 0,
  b: 0,
  c: 0,
  minutes: 0,
  late: 0,
  ...change,
});

export const keptHistories: readonly {
  readonly name: string;
  readonly world: World;
  readonly acts: readonly Act[];
}[] = [
  {
    name: 'an undo of an undo that is written down before it',
    world: HOLM_WORLD,
    acts: [
      act('move', { minutes: 1 }),
      act('undo', { late: 2 }),
      act('undo', { a: 3 }),
      act('move', { late: 1 }),
      act('move'),
    ],
  },
  {
    name: 'two decisions on one pair, dated the other way round than they were made',
    world: HOLM_WORLD,
    acts: [
      act('move'),
      act('copy'),
      act('decide', { b: 421, late: 2 }),
      act('decide', { minutes: 1 }),
      act('move'),
      act('move'),
    ],
  },
  {
    name: 'a drink that is corrected to have gone elsewhere',
    world: HOLM_WORLD,
    acts: [act('drink'), act('correct', { late: 1 }), act('line', { minutes: 600 }), act('move')],
  },
  {
    name: 'movements at the instant of the opening, from a site that comes before it',
    world: HOLM_WORLD,
    acts: [act('move'), act('move'), act('opening'), act('line', { minutes: 7 })],
  },
  {
    name: 'drinks out of the reserve while nothing is on the port, and a told draw of them',
    world: HOLM_WORLD,
    acts: [
      act('swap', { b: 11 }),
      act('drink', { a: 39 }),
      act('claim', { a: 30 }),
      act('drink', { a: 39 }),
      act('line', { minutes: 700, a: 1 }),
    ],
  },
];
