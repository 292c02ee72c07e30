// English for what is said no to about samples, results and holds, each with its way out.
import type { FindingData } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Words, WordsContext } from '../shape.ts';
import { listOf, maybeText, numberOf, textOf } from './data.ts';
import { saidLacks } from './holds.ts';
import { listed, saidValue } from './said.ts';
import { massOf, say, timeOf, word } from './say.ts';

const nothing = 'Nothing was written.';

interface Refusal {
  readonly why: string;
  readonly expected: string;
  readonly received: string;
  readonly out: string;
}

/** `C-06: plate count: above` in words, store by store. */
function saidReasons(reasons: readonly string[]): string {
  const byStore = new Map<string, string[]>();
  for (const reason of reasons) {
    const at = reason.indexOf(': ');
    const [store, lack] = [reason.slice(0, at), reason.slice(at + 2)];
    byStore.set(store, [...(byStore.get(store) ?? []), lack]);
  }
  // Stores that lack the same are told together.
  const byLack = new Map<string, string[]>();
  for (const [store, lacks] of byStore) {
    const said = saidLacks(lacks);
    byLack.set(said, [...(byLack.get(said) ?? []), store]);
  }
  return [...byLack].map(([lack, stores]) => `${listed(stores)} (${lack})`).join('; ');
}

const treatmentWhy: ReadonlyMap<string, (data: FindingData) => string> = new Map([
  ['no such recipe', () => 'the outpost file has no such recipe'],
  ['not allowed', () => 'the outpost does not allow that recipe'],
  ['other grade', () => 'the recipe makes water of another grade'],
  [
    'has held',
    (data: FindingData) =>
      `it has held ${listed(listOf(data, 'neverHeld'), 'or')} water, and the recipe is never for such a store`,
  ],
  ['no recipe for it', () => 'the outpost file has no single recipe for water of its grade'],
  [
    'other source',
    (data: FindingData) =>
      `it holds ${maybeText(data, 'grade') ?? 'water of no known grade'}, and the recipe begins with ${textOf(data, 'from')}`,
  ],
]);

export const qualityRefusals: readonly (readonly [
  string,
  (data: FindingData, context?: WordsContext) => Refusal,
])[] = [
  [
    'release',
    (data) => {
      const stores = listOf(data, 'stores');
      const reasons = listOf(data, 'reasons');
      const isSampled = reasons.some((reason) => /: (?:above|below|contradictory)$/.test(reason));
      const sample = `waterwright sample add ${stores.map(word).join(' ')}`;
      return {
        why: `no results prove ${listed(stores)}: ${saidReasons(reasons)}`,
        expected: 'results of this water that meet every limit which the outpost requires',
        received: saidReasons(reasons),
        out: isSampled
          ? `What passes can be released by its name. What fails: dose it and sample it anew (${sample}), or make it water of a lower grade: waterwright hold downgrade ${word(stores[0] ?? 'STORE')}.`
          : `Take a sample, and release it when its result has passed: ${sample}.`,
      };
    },
  ],
  [
    'releases',
    (data) => {
      const offices = listOf(data, 'offices');
      const act = textOf(data, 'act') === 'aside' ? 'sets a result aside' : 'releases water';
      return {
        why: `at this outpost the ${listed(offices, 'or')} alone ${act}, and this is asked by the ${textOf(data, 'by')}`,
        expected: `the word of the ${listed(offices, 'or')}`,
        received: textOf(data, 'by'),
        out: `If the ${offices[0] ?? 'medic'} says so: add --by ${word(offices[0] ?? 'medic')}.`,
      };
    },
  ],
  [
    'treatment',
    (data) => ({
      why: `${textOf(data, 'store')} cannot be treated by ${textOf(data, 'recipe')}: ${treatmentWhy.get(textOf(data, 'why'))?.(data) ?? textOf(data, 'why')}`,
      expected: 'a recipe of the outpost file that is allowed for this water',
      received: textOf(data, 'recipe'),
      out: `Ask the medic. To see what it has held: waterwright store show ${word(textOf(data, 'store'))}.`,
    }),
  ],
  [
    'grade-up',
    (data) => ({
      why: `from ${textOf(data, 'fromGrade')} to ${textOf(data, 'toGrade')} is up, and a downgrade goes down`,
      expected: `a grade below ${textOf(data, 'fromGrade')}`,
      received: textOf(data, 'toGrade'),
      out: `The only way up is a treatment by a recipe of the outpost: waterwright hold treat ${word(textOf(data, 'store'))} --second OFFICE.`,
    }),
  ],
];

function unreadWhy(data: FindingData): { readonly why: string; readonly expected: string } {
  const units = listed(listOf(data, 'units').slice(0, 6), 'or');
  const bases = listed(listOf(data, 'bases'), 'or');
  switch (textOf(data, 'why')) {
    case 'negative':
      return { why: 'is below nothing', expected: 'a figure from 0 on' };
    case 'unit missing':
      return { why: 'has no unit', expected: `a unit: ${units}` };
    case 'unit unknown':
      return { why: 'has a unit in which no result of water is told here', expected: units };
    case 'unit does not fit':
      return { why: `is in a unit that does not measure ${textOf(data, 'parameter')}`, expected: units };
    case 'too large':
      return {
        why: 'is more than any water holds',
        expected: `at most ${saidValue(numberOf(data, 'most'), '')}`,
      };
    case 'basis missing':
      return { why: 'can be told on more than one basis', expected: bases };
    case 'basis unknown':
      return { why: 'has a basis that is not known', expected: bases };
    case 'basis does not fit':
      return { why: 'has a basis in which that unit is not told', expected: bases };
    default:
      return { why: 'is not a figure', expected: 'a number with its unit, such as 0.19mg/L or <0.05mg/L' };
  }
}

export const qualityFindingWords = {
  'parameter-unknown': (data) => {
    const near = listOf(data, 'nearest');
    return say(
      `This outpost neither measures "${textOf(data, 'parameter')}" nor has a limit for it. ${nothing}`,
      listed(listOf(data, 'known'), 'or'),
      `"${textOf(data, 'parameter')}"`,
      `${near.length === 0 ? '' : `Did you mean ${listed(near, 'or')}? `}A parameter of a laboratory is told as --value "NAME=3 mg/L".`,
    );
  },
  'figure-unread': (data) => {
    const { why, expected } = unreadWhy(data);
    return say(
      `${textOf(data, 'parameter')}: "${textOf(data, 'received')}" ${why}. ${nothing}`,
      expected,
      `"${textOf(data, 'received')}"`,
      `Give ${expected}.`,
    );
  },
  'sample-of-other': (data) =>
    say(
      `The sample ${textOf(data, 'sample')} is of ${textOf(data, 'of')}, and the result is told for ${textOf(data, 'told')}. ${nothing}`,
      textOf(data, 'of'),
      textOf(data, 'told'),
      `Look at the bottle. If it is of ${textOf(data, 'told')}, name that sample: waterwright sample list.`,
    ),
  'result-before-sample': (data, _where, context) =>
    say(
      `The sample ${textOf(data, 'sample')} was drawn at ${timeOf(data, 'takenAtMs', context)}, after this result, ${timeOf(data, 'atMs', context)}. ${nothing}`,
      `a time from ${timeOf(data, 'takenAtMs', context)} on`,
      timeOf(data, 'atMs', context),
      'Check the bottle and both times.',
    ),
  'result-contradicts': (data) => {
    const ref = maybeText(data, 'ref');
    const { sample, parameter, kept, told } = {
      sample: textOf(data, 'sample'),
      parameter: textOf(data, 'parameter'),
      kept: textOf(data, 'kept'),
      told: textOf(data, 'told'),
    };
    return say(
      ref === null
        ? `${parameter} of ${sample} is told twice: ${kept} and ${told}. ${nothing}`
        : `${parameter} of ${sample} is in the book already: ${kept} (${ref}); now ${told}. ${nothing}`,
      'one figure for one sample',
      told,
      ref === null
        ? 'Give the one that was read.'
        : `If the first is wrong: waterwright log undo ${word(ref.replace(' ', ':'))}, and enter it anew. A second bottle is a sample of its own: waterwright sample add STORE --duplicate-of ${word(sample)}.`,
    );
  },
  'sample-waits': (data) => {
    const samples = listOf(data, 'samples');
    return say(
      `${listed(samples)} of ${textOf(data, 'place')} ${samples.length === 1 ? 'waits' : 'wait'} for a result, and this one names no sample. ${nothing}`,
      listed(samples, 'or'),
      textOf(data, 'place'),
      `If it is of that sample: waterwright sample result ${word(samples[0] ?? 'SAMPLE')}, with its figures. If it was read by itself: add --yes.`,
    );
  },
  'hold-undecided': (data, _where, context) => {
    const stores = listOf(data, 'stores');
    const touched = listOf(data, 'conditional');
    const also = touched.length === 0 ? '' : `; ${listed(touched)} would be CONDITIONAL`;
    const what = stores.length === 0 ? '' : ` ${listed(stores)}, ${massOf(data, 'massMg', context)}`;
    return say(
      `${textOf(data, 'sample')} fails (${listed(listOf(data, 'parameters'))}), and nobody has said what is to be held. Its water is in${what}${also}. ${nothing}`,
      'a word on what is to be held',
      'none',
      'To hold all of it: add --hold all. Fewer: --hold only STORE …, with --reason and --second OFFICE. To see it without writing: add --dry-run.',
    );
  },
  'hold-not-proposed': (data) =>
    say(
      `${textOf(data, 'store')} is not among the stores that the trace proposes to hold. ${nothing}`,
      listed(listOf(data, 'proposed'), 'or'),
      textOf(data, 'store'),
      `Name one of these. To hold another store: waterwright hold add ${word(textOf(data, 'store'))} --reason REASON.`,
    ),
  'nothing-touched': (data) =>
    say(
      `No water of ${textOf(data, 'sample')} is in any store aboard, as far as it can be followed. ${nothing}`,
      'a sample whose water is aboard',
      textOf(data, 'sample'),
      'To hold a store all the same: waterwright hold add STORE --reason REASON.',
    ),
  'hold-ended': (data) =>
    say(
      `No store is on the hold ${textOf(data, 'hold')} any more. ${nothing}`,
      'a hold that is open',
      textOf(data, 'hold'),
      'The open holds: waterwright hold list.',
    ),
  'not-on-hold': (data) => {
    const stores = listOf(data, 'stores');
    return say(
      `${textOf(data, 'store')} is not on the hold ${textOf(data, 'hold')}. ${nothing}`,
      stores.length === 0 ? 'a hold that is open' : listed(stores, 'or'),
      textOf(data, 'store'),
      `What is on it: waterwright hold show ${word(textOf(data, 'hold'))}.`,
    );
  },
  'medics-code': (data) =>
    say(
      `Who drank of the water under ${textOf(data, 'hold')}, and when, is for the medic alone.`,
      'the code of the medic',
      'none that opens it',
      `How much was drunk, without names: waterwright hold show ${word(textOf(data, 'hold'))}.`,
    ),
} satisfies Partial<Words<DeskFindingCode>>;
