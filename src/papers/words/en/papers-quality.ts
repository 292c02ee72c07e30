// English for the papers of quality: their titles, their parts and their verdicts; never that water is fit to drink.
import type { BookSeal, PaperDocument } from '../../document/document.ts';
import type { HoldSheet, TouchLine } from '../../sheets/holds.ts';
import type { CertificateSheet, LeftHold, PaperRow, PaperWord } from '../../sheets/papers-quality.ts';
import type { SheetHead } from '../../sheets/today.ts';
import { counted, listed, saidValue } from './said.ts';
import { word } from './say.ts';
import { saidHoldReason } from './store-answer.ts';

const views: Readonly<Record<SheetHead['view'], string>> = {
  now: '',
  'as known at': 'As it was known then: what was entered later is not in it.',
  'as of': 'The state of then, by all that is known now.',
};

export const paperLabels = {
  practice: 'PRACTICE: an invented outpost, no real water',
  under: ({ outpost, stamp, peopleAboard }: SheetHead): string =>
    `${outpost}, ${stamp}, ${counted(peopleAboard, 'person', 'people')} aboard`,
  bookState: (
    { entries }: Pick<SheetHead, 'entries'>,
    { kept, last, seal }: Pick<BookSeal, 'kept' | 'last'> & { readonly seal: string },
  ): string =>
    `Book: ${entries === kept ? counted(kept, 'entry', 'entries') : `${entries} of ${counted(kept, 'entry', 'entries')}`}, last ${last.length === 0 ? 'none' : listed(last)}, seal ${seal}`,
  footPaper: ({ paper, of }: Pick<PaperDocument, 'paper' | 'of'>): string => `Paper: ${paper} ${of}`.trim(),
  footView: ({ view }: Pick<SheetHead, 'view'>): string => views[view],
  convention:
    '\u00B1 is the half-width of the 95\u00A0% interval. Numbers such as corrie 54 are entries of the book. This is an account: the rules of the outpost and the word of the medic come first.',
  sign: 'signed',
  signedAt: 'day and time',
} as const;

/** `keeper and medic (declared, not verified)` */
export function saidWho({ by, second }: Pick<PaperWord, 'by' | 'second'>): string {
  if (second === null) return by;
  return `${by} and ${second.office} (${second.confirmation})`;
}

export function saidRow({ atLeast, atMost, unit, basis }: PaperRow): string {
  const measure = basis === 'as itself' || basis === '' ? unit : `${unit} ${basis}`;
  const of = measure.replaceAll(' ', '\u00A0');
  if (atLeast !== null && atMost !== null) return `${saidValue(atLeast, '')} to ${saidValue(atMost, of)}`;
  if (atLeast !== null) return `at least ${saidValue(atLeast, of)}`;
  return atMost === null ? 'no limit set: hold' : `at most ${saidValue(atMost, of)}`;
}

/** The kind of evidence is said where the source does not say it already. */
export const saidSource = ({ source, locator, evidence }: PaperRow): string =>
  [source, locator, source.includes(evidence) ? '' : evidence].filter((part) => part !== '').join(', ');

/** A release may bring its figures itself: the account knows them by its own name. */
const OF_RELEASE = /^release (.+)$/s;

export const saidSample = (sample: string): string => (OF_RELEASE.test(sample) ? 'with the entry' : sample);

export function saidSamples(samples: readonly string[]): string {
  const named = samples.filter((sample) => !OF_RELEASE.test(sample));
  const brought = named.length === samples.length ? [] : ['figures with the release'];
  return listed([...named, ...brought]);
}

export const samplePaper = {
  title: (sample: string | null, place: string): string =>
    sample === null ? `Sample sheet, blank, for ${place}` : `Sample sheet ${sample} of ${place}`,
  facts: {
    sample: 'sample',
    place: 'drawn at',
    from: 'drawn from',
    speaksOf: 'speaks of the water of',
    taken: 'drawn on',
    by: 'drawn by',
    bottles: 'bottles',
    batch: 'batch',
    volume: 'volume',
    twin: 'second one of',
    method: 'read',
    entries: 'entries',
  },
  unsafe: {
    signal: 'WARNING',
    text: 'Until its result is back and the medic has released it, nobody knows what this water does to people. Do not drink what you draw, and do not put it back. A result that is missing means hold.',
  },
  biocide: (biocides: readonly string[]) =>
    ({
      signal: 'CAUTION',
      text: `Reagents, and ${listed(biocides)} in strength, harm eyes and skin. Wear what the maker and the medic ask for. Free drops float: keep them from live equipment and faces.`,
    }) as const,
  drawHead: 'Drawing',
  draw: [
    'Label the bottle before it is filled: number, place, day and time.',
    'Let the line run as long as the outpost\u2019s rule says; catch and measure what runs.',
    'Fill the bottle without touching its neck, close it at once, and read the label aloud.',
    'Enter the sample in the book, the flush water as a use of its own.',
  ],
  testHead: 'Tests',
  testStep: 'Tests, with what the outpost requires',
  custodyHead: 'Custody: every hand that the bottle went through',
  back: 'Typed back by:',
  backSample: (place: string): string =>
    `waterwright sample add ${word(place)} --bottles BOTTLE --at TIME --by OFFICE`,
  backResult: (
    sample: string,
    tests: readonly { readonly parameter: string; readonly unit: string }[],
  ): string =>
    `waterwright sample result ${word(sample)} ${tests.map(({ parameter, unit }) => `--value "${parameter}= ${unit}"`).join(' ')}`.trim(),
  below:
    'What was below the detection limit is written with its sign, such as <0.05; what was not measured stays empty. Neither is a zero.',
  noTests: 'No test is named.',
  columns: {
    test: 'TEST',
    limit: 'LIMIT',
    found: 'FOUND',
    unit: 'UNIT',
    is: 'IS',
    method: 'METHOD',
    entry: 'ENTRY',
    who: 'WHO (office)',
    when: 'DAY, TIME',
    what: 'WHAT (drawn, stored at °C, read, sent)',
    sign: 'SIGN',
    source: 'SOURCE OF THE LIMIT',
  },
  sources: 'Where the limits come from',
  drawn: 'drew the sample',
  read: 'read the result',
} as const;

const onWord: ReadonlyMap<string, (told: string) => string> = new Map([
  ['made here', () => 'The outpost made this water itself, and no release of it is in the book.'],
  [
    'opening',
    (told: string) =>
      `It was taken over with the opening of the book${told}, and no release of it is in the book.`,
  ],
  [
    'loader\u2019s certificate',
    (told: string) =>
      `It came on the word of its loader${told}, and no release by the outpost is in the book.`,
  ],
  ['none', () => 'No release of it is in the book.'],
]);

export const certificate = {
  title: (store: string): string => `Certificate of the water in ${store}`,
  facts: {
    store: 'store',
    place: 'stands at',
    content: 'what is in it',
    known: 'how known',
    grade: 'grade',
    mark: 'mark in the book',
    by: 'released by',
    at: 'released on',
    until: 'until',
    samples: 'on samples',
    entry: 'entry',
  },
  noGrade: 'not known',
  noEnd: 'no end was said',
  none: 'none named',
  released: 'RELEASED',
  onCertificate: 'ON THE LOADER\u2019S CERTIFICATE',
  notReleased: 'NOT RELEASED',
  inUseHead: 'NOT RELEASED, AND IN USE',
  waived: 'WAIVED',
  empty: 'EMPTY',
  emptySays: 'There is nothing in it to be released.',
  releasedSays: ({ word: said, quality }: CertificateSheet, isClear: boolean): string => {
    const { released } = quality;
    const who = said === null ? (released?.by ?? '') : saidWho(said);
    const samples = released?.samples ?? [];
    const on = samples.length === 0 ? '' : `, on ${saidSamples(samples)}`;
    const end = released?.until == null ? '' : `, until ${released.until}`;
    const clear = isClear ? ' Nothing in the book speaks against it.' : '';
    return `Released by ${who} ${released?.at ?? ''}${end}${on}.${clear}`;
  },
  certificateSays:
    'Delivered water, used on the word of its loader until the outpost\u2019s own sample is back. It is not released for the reserve.',
  waivedSays: (waived: CertificateSheet['waived'][number]): string =>
    `Waived by ${saidWho(waived)} ${waived.at} until ${waived.until} (${waived.ref}): the hold ${waived.hold} stands again then. Because: ${waived.reason}. A waiver makes no water better.`,
  notReleasedSays: (count: number): string =>
    count === 1 ? 'One thing stands against it.' : `${count} things stand against it.`,
  whyHead: 'Why it is not released',
  alsoHead: 'What the book says beside that',
  hold: ({ hold, since, reason, parked }: CertificateSheet['quality']['holds'][number]): string =>
    `Do not use it: HOLD ${hold} since ${since} (${saidHoldReason(reason)})${parked === null ? '' : `; parked with ${parked.owner} until ${parked.until}`}.`,
  conditional: ({ hold, since, reason }: NonNullable<CertificateSheet['quality']['conditional']>): string =>
    `CONDITIONAL, for an emergency only: ${hold} since ${since} (${saidHoldReason(reason)}).`,
  over: (until: string): string => `Its release was over ${until}.`,
  onWordOf: (of: string, told: PaperWord | null): string =>
    (onWord.get(of) ?? onWord.get('none'))?.(told === null ? '' : ` (${told.at}, ${told.ref})`) ?? '',
  inUseSays: 'The account counts it as usable without a release of its own.',
  releaseAgainst: (by: string, at: string): string =>
    `A release by ${by} ${at} is in the book, and does not stand against that.`,
  lack: (said: string): string => `By its results: ${said}.`,
  nobodyDrinks: 'Nobody drinks water of this grade: no figure is required of it.',
  figureHead: 'Figures, each against its row',
  noFigures: 'No result of this water is in the book.',
  rowHead: 'Rows that are required, and where each limit comes from',
  noRows: 'The outpost requires no row of water of this grade.',
  columns: {
    store: 'STORE',
    sample: 'SAMPLE',
    taken: 'DRAWN',
    parameter: 'PARAMETER',
    figure: 'FIGURE',
    unit: 'UNIT',
    limit: 'LIMIT',
    is: 'IS',
    row: 'ROW',
    set: 'SET',
    source: 'SOURCE',
    entry: 'ENTRY',
  },
  setAside: 'set aside',
  medic: 'releases, or does not',
  checked: 'has read it',
} as const;

export const notice = {
  title: (hold: string): string => `Quarantine notice ${hold}`,
  doNotUse: 'DO NOT USE',
  ended: 'ENDED',
  endedSays: 'Nothing is on this hold any more. What became of it stands on its release.',
  says: (since: string, reason: string): string => `HOLD since ${since}: ${saidHoldReason(reason)}.`,
  conditionalOnly: 'FOR AN EMERGENCY ONLY',
  waivedOnly: 'WAIVED FOR A TIME',
  unsafe: {
    signal: 'WARNING',
    text: 'This water may make people ill. Do not drink it, cook or wash with it, move it or mix it. Hang this sheet on every store that it names.',
  },
  storesHead: 'Stores',
  conditionalHead: 'Conditional: touched by the same water, for an emergency only, as the medic decides',
  waivedHead: 'Waived for a time',
  touchedHead: 'What its water touched, and by which way',
  noTrace: 'No sample is named, so that nothing can be followed from it.',
  guessed: (sample: string): string => `The hold names no sample; it most likely rests on ${sample}.`,
  notOnIt: 'not on this hold',
  node: (
    { name, fate, isSource, first, path }: TouchLine,
    of: {
      readonly suspect: string;
      readonly held: string | null;
      readonly isHeld: boolean;
      readonly fate: string;
    },
  ): string => {
    const way = path.at(-1);
    const hose = way?.hose == null ? '' : ` by ${way.hose}`;
    const came =
      isSource || way === undefined ? 'sampled' : `from ${way.from}${hose}, first ${first} (${way.ref})`;
    const left = fate === 'gone' || fate === 'none left';
    const water =
      of.held === null || of.held === of.suspect
        ? `suspect ${of.suspect}`
        : `${of.held}, of it suspect ${of.suspect}`;
    const mark = of.isHeld ? `${of.fate} ` : '';
    const parts = [left ? '' : water, came, mark === '' ? of.fate : ''];
    return `${mark}${name}: ${parts.filter((part) => part !== '').join('; ')}`;
  },
  nobodyDrank: 'Nobody drank of it.',
  drank: (litres: string, since: number, until: number): string =>
    `People drank ${litres} of it${since === until ? ` on Day\u00A0${since}` : ` from Day\u00A0${since} to Day\u00A0${until}`}. The medic knows more, and no paper does.`,
  reserve: (stores: readonly string[], litres: string): string =>
    `${listed(stores)} (${litres}) ${stores.length === 1 ? 'is' : 'are'} CONDITIONAL: counted apart, never as free, and beside the floor of the reserve only as such.`,
  parked: ({ owner, until, over }: NonNullable<HoldSheet['hold']['parked']>): string =>
    `Parked with ${owner} until ${until}${over ? ', which is over' : ''}. It stays held.`,
  leftFree: (stores: readonly string[]): string =>
    `Its sample\u2019s water touched ${listed(stores)}, too, and somebody left ${stores.length === 1 ? 'it' : 'them'} free.`,
  waitsHead: 'What waits for it',
  waits: (grade: string, volume: string, days: string | null): string =>
    `${volume} of ${grade} water${days === null ? '' : `, ${days} of use`}`,
  noWaits: 'Nobody waits for this water.',
  waysHead: 'Ways out',
  findingsHead: 'What the book says of it',
  columns: {
    store: 'STORE',
    mark: 'MARK',
    grade: 'GRADE',
    volume: 'WATER',
    lacks: 'LACKS BEFORE A RELEASE',
    until: 'UNTIL',
  },
  fact: {
    hold: 'hold',
    since: 'since',
    why: 'why',
    failed: 'failed',
    sample: 'sample',
    entry: 'entry',
    held: 'held',
    conditional: 'conditional',
  },
  noSample: 'none named',
  hung: (stores: readonly string[]): readonly string[] => stores.map((store) => `Label hung on ${store}`),
  hungHead: 'Done at the stores',
  keeper: 'hung the labels',
  medic: 'has read it',
} as const;

const became: Readonly<Record<LeftHold['how'], string>> = {
  released: 'RELEASED',
  downgraded: 'DOWNGRADED',
  waived: 'WAIVED',
};

export const holdRelease = {
  title: (hold: string): string => `Quarantine release ${hold}`,
  all: 'NOTHING IS HELD ANY MORE',
  some: 'A PART IS STILL HELD',
  nothing: 'NOTHING RELEASED',
  says: (left: readonly LeftHold[], held: readonly string[]): string => {
    const parts = (['released', 'downgraded', 'waived'] as const).flatMap((how) => {
      const stores = left.filter((one) => one.how === how).map(({ store }) => store);
      return stores.length === 0 ? [] : [`${how} ${listed(stores)}`];
    });
    const still = held.length === 0 ? '' : `${parts.length === 0 ? '' : '; '}still on it ${listed(held)}`;
    const said = `${parts.join('; ')}${still}.`;
    return said === '.'
      ? 'The book names no store on it.'
      : `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
  },
  leftHead: 'What left the hold, and on whose word',
  noneLeft: 'No store has left this hold.',
  heldHead: 'What stays on it',
  noneHeld: 'No store is on it any more.',
  figureHead: 'Samples that were named, every figure against its row',
  noFigures: 'No sample was named, and no figure came with it.',
  became: ({ how, toGrade }: LeftHold): string =>
    toGrade === null ? became[how] : `${became[how]} to ${toGrade}`,
  columns: {
    store: 'STORE',
    became: 'BECAME',
    by: 'BY',
    at: 'WHEN',
    samples: 'ON SAMPLES',
    until: 'UNTIL',
    entry: 'ENTRY',
  },
  isOf: 'A release says who let this water go, and on what. It says nothing of water that comes in later.',
  medic: 'releases it',
  keeper: 'took the labels down',
  second: 'second person',
} as const;

export const trendPaperWords = {
  title: (name: string): string => `Trend of ${name}`,
  tableHead: 'Results',
  columns: {
    day: 'DAY',
    sample: 'SAMPLE',
    place: 'PLACE',
    figure: 'FIGURE',
    is: 'AGAINST LIMIT',
    made: 'READ',
    method: 'METHOD',
    entry: 'ENTRY',
  },
  none: 'Nothing was measured there.',
  limitHead: 'Limits',
  noLimits: 'No row of the outpost bears on it.',
  limitColumns: { row: 'ROW', limit: 'LIMIT', source: 'SOURCE', act: 'FIRST ACT' },
  off: 'no limit set: hold',
  picture: 'The picture of it is on the printed page.',
} as const;
