// Table of words for what was done, and the act that each means; the match is by the whole cell, bare.

export const ACTS = [
  'move',
  'fill',
  'drink',
  'use',
  'make',
  'weigh',
  'gauge',
  'empty',
  'full',
  'hookup',
  'note',
] as const;
export type Act = (typeof ACTS)[number];

export const ACT_WORDS: Readonly<Record<Act, readonly string[]>> = {
  move: ['move', 'moved', 'transfer', 'transferred', 'pumped', 'movement', 'pushed'],
  fill: ['fill', 'filled', 'top up', 'topped up', 'refill', 'refilled'],
  drink: ['drink', 'drank', 'drunk'],
  use: ['use', 'used'],
  make: ['make', 'made', 'produced', 'product'],
  weigh: ['weigh', 'weighed', 'weighing', 'weight'],
  gauge: ['gauge', 'gauged', 'gauging', 'level', 'sight glass', 'dip', 'dipped'],
  empty: ['empty', 'emptied', 'declared empty', 'ran dry', 'run dry'],
  full: ['full', 'declared full'],
  hookup: ['hookup', 'hooked up', 'connected', 'connect', 'swap', 'swapped', 'hung'],
  note: ['note', 'remark', 'comment', 'noted'],
};
