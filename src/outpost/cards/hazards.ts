// Table of the hazards beside the work, and of the acts that call for them: what has to stand before a line of such an act.

export const SIGNAL_WORDS = ['WARNING', 'CAUTION', 'NOTICE'] as const;
/** WARNING: grave injury. CAUTION: slight injury. NOTICE: equipment. */
export type SignalWord = (typeof SIGNAL_WORDS)[number];

/** The gravest word that fits what the hazard can do; a box may not say less. */
const HAZARDS = {
  pressure: 'WARNING',
  'residual pressure': 'WARNING',
  'charge above a rating': 'WARNING',
  'hot compressor': 'CAUTION',
  'compressor noise': 'CAUTION',
  'over-filled bladder': 'NOTICE',
  'trapped water': 'WARNING',
  'trapped ice': 'WARNING',
  scald: 'WARNING',
  'steam lock': 'WARNING',
  hydrogen: 'WARNING',
  'oxygen enrichment': 'WARNING',
  electricity: 'WARNING',
  'biocide concentrate': 'WARNING',
  'slip of ten': 'WARNING',
  'iodine water': 'CAUTION',
  'waste and concentrate': 'WARNING',
  'free water': 'WARNING',
  'unsafe water': 'WARNING',
  'moving mass': 'CAUTION',
} as const satisfies Readonly<Record<string, SignalWord>>;

export type HazardKind = keyof typeof HAZARDS;
export const HAZARD_KINDS = Object.keys(HAZARDS) as [HazardKind, ...HazardKind[]];

/** Lower is graver. */
const gravity = (word: SignalWord): number => SIGNAL_WORDS.indexOf(word);

export function leastWord(kind: HazardKind): SignalWord {
  return HAZARDS[kind];
}

export function saysTooLittle(kind: HazardKind, word: SignalWord): boolean {
  return gravity(word) > gravity(HAZARDS[kind]);
}

interface ActLine {
  /** Boxes that have to stand at the line or before it. */
  readonly hazards: readonly HazardKind[];
  /** Ratings without which the card may not start; `*` stands for every store or hose that is chosen. */
  readonly ratings: readonly string[];
  /** A *must pass* line of this kind has to come before. */
  readonly after?: MustPass;
}

/** Lines of these kinds can be done again or end the card; they are never skipped and never recorded as a deviation. */
export const MUST_PASS = [
  'leak check',
  'label check',
  'two-person relabel',
  'gas check',
  'end pressure',
  'dose',
] as const;
export type MustPass = (typeof MUST_PASS)[number];

export const ACTS = {
  pressurise: {
    hazards: ['pressure'],
    ratings: ['push.set', 'push.relief', 'store.rating', 'hose.rating'],
  },
  'run compressor': { hazards: ['hot compressor', 'compressor noise'], ratings: [] },
  'let water flow': {
    hazards: ['over-filled bladder', 'unsafe water'],
    ratings: [],
    after: 'label check',
  },
  demate: { hazards: ['residual pressure', 'free water'], ratings: [] },
  'open a line': { hazards: ['free water'], ratings: [] },
  'shut a rigid line': { hazards: ['trapped water', 'trapped ice'], ratings: [] },
  'charge a tank': {
    hazards: ['charge above a rating', 'pressure'],
    ratings: ['bottle.rating', 'store.rating'],
    after: 'end pressure',
  },
  'draw hot water': { hazards: ['scald', 'steam lock'], ratings: [] },
  'work on the electrolyser': {
    hazards: ['hydrogen', 'oxygen enrichment', 'electricity'],
    ratings: [],
  },
  'handle concentrate': { hazards: ['biocide concentrate'], ratings: [] },
  'add the dose': { hazards: ['biocide concentrate', 'slip of ten'], ratings: ['dose.most'], after: 'dose' },
  'move waste': { hazards: ['waste and concentrate'], ratings: [] },
  'push waste into a tank': {
    hazards: ['waste and concentrate'],
    ratings: [],
    after: 'two-person relabel',
  },
  'use water': { hazards: ['unsafe water'], ratings: [] },
  'use iodine water': { hazards: ['iodine water'], ratings: [] },
  weigh: { hazards: ['moving mass'], ratings: [] },
} as const satisfies Readonly<Record<string, ActLine>>;

export type Act = keyof typeof ACTS;
export const ACT_NAMES = Object.keys(ACTS) as [Act, ...Act[]];

export function actLine(act: Act): ActLine {
  return ACTS[act];
}
