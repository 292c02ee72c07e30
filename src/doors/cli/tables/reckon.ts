// Table of the calculators.
import type { Command } from '../command.ts';
import type { Flag } from '../flags.ts';

const flag = (name: string, value: string, what: string): Flag => ({ name, value, what });

const STORE = flag('store', 'STORE', 'a store of the book: fills in its content and its ratings');
const PEOPLE = flag('people', 'N', 'people aboard');

const more = [
  'Every quantity carries its unit, and may carry its ± (95 %): 22L+-0.4.',
  'What is not typed is taken from the book and its outpost file, where there is one.',
];

export const RECKON_COMMANDS: readonly Command[] = [
  {
    path: ['reckon', 'transfer'],
    does: 'how long a push through a hose takes, and what it does to the cabin',
    args: [],
    flags: [
      flag('from', 'STORE', 'the store that is emptied'),
      flag('to', 'STORE', 'the store that is filled'),
      flag('hose', 'HOSE', 'a hose of the outpost file, with its couplings and what its runs have taught'),
      'volume',
      'length',
      'bore',
      'roughness',
      'minor-loss',
      'kv',
      'over',
      'water',
      'cabin',
      'lift',
      'gravity',
      'coil',
      flag('gas', 'VOLUME', 'gas in the tank, with no compressor behind it'),
      'receiver',
      'cabin-volume',
      'air',
      'compressor',
      'rating',
      'explain',
    ],
    examples: [
      [
        'waterwright reckon transfer --volume 22L --length 6m --bore 8mm --roughness 1.5um --minor-loss 3 --kv 0.6,0.6 --over 0.5atm --water 25C',
        'from figures alone',
      ],
      ['waterwright reckon transfer --from c01 --to c05 --hose H-1 --explain', 'from the book'],
    ],
    more,
  },
  {
    path: ['reckon', 'pressure'],
    does: 'what gas under pressure takes from the cabin, and what it stores',
    args: [],
    flags: [
      STORE,
      'volume',
      'over',
      'cabin',
      'cabin-volume',
      'receiver',
      'gas-from',
      'gas',
      'radius',
      'wall-thickness',
      'warming',
      'rating',
      'explain',
    ],
    examples: [
      ['waterwright reckon pressure --volume 200L --over 0.5atm --cabin 1atm --cabin-volume 180m3', ''],
      [
        'waterwright reckon pressure --volume 200L --over 0.5atm --cabin 1atm --cabin-volume 180m3 --receiver outside',
        'into a store outside',
      ],
    ],
    more,
  },
  {
    path: ['reckon', 'dewpoint'],
    does: 'how much water the air carries, and whether a wall sweats',
    args: [],
    flags: ['air', 'humidity', 'cabin', 'oxygen', 'cabin-volume', 'wall', 'explain'],
    examples: [['waterwright reckon dewpoint --air 22C --humidity 50%+-2 --wall 12C', '']],
    more,
  },
  {
    path: ['reckon', 'condense'],
    does: 'how much water a condenser takes out of the air',
    args: [],
    flags: [
      'air',
      'humidity',
      'cabin',
      'oxygen',
      'air-flow',
      'coolant',
      'bypass',
      'coolant-flow',
      'air-side',
      'coolant-side',
      PEOPLE,
      'vapour-each',
      'explain',
    ],
    examples: [
      [
        'waterwright reckon condense --air 22C --humidity 50% --air-flow 120m3/h --coolant 6C --bypass 0.1 --people 4',
        '',
      ],
    ],
    more,
  },
  {
    path: ['reckon', 'oxygen'],
    does: 'how much water the oxygen of a crew takes',
    args: [],
    flags: [PEOPLE, 'need', 'share', 'cells', 'cell-voltage', 'current-efficiency', 'purged', 'explain'],
    examples: [['waterwright reckon oxygen --people 4 --share 77%', '']],
    more,
  },
  {
    path: ['reckon', 'dose'],
    does: 'how much stock solution to add, and what the water then holds',
    args: [],
    flags: [STORE, 'volume', 'present', 'wanted', 'stock', 'maximum', 'explain'],
    examples: [
      [
        'waterwright reckon dose --volume 20L --present 0.03mg/L --wanted 0.2mg/L --stock 400mg/L --maximum 0.4mg/L',
        '',
      ],
    ],
    more,
  },
  {
    path: ['reckon', 'mix'],
    does: 'what comes of water poured together',
    args: [],
    flags: [flag('volume', 'AMOUNTS', 'of each, commas between'), 'concentration', 'temperature', 'explain'],
    examples: [['waterwright reckon mix --volume 20L,10L --concentration 0.2mg/L,0.05mg/L', '']],
    more,
  },
];
