// What a line of a card has to be: one act in a sentence, an answer that fits its expectation, a *must pass* that can fail.
import type { CardFile } from '../card-schema.ts';
import type { CardFaults, Placed, SoundCard } from './sound-card.ts';

type Line = Placed<CardFile['steps'][number]>;
type Input = Line['item']['input'];
type Expect = NonNullable<Line['item']['expect']>;

/** A person keeps no more than this in mind between two pauses. */
const MOST_IN_A_GROUP = 9;
const ONE_SENTENCE = /^\p{Lu}[^.?!]*(?:\.\d[^.?!]*)*\.$/u;

export function checkLines(card: SoundCard, faults: CardFaults): void {
  for (const line of card.steps) {
    checkAct(line, faults);
    checkInput(line, faults);
    checkExpect(line, faults);
    checkMustPass(line, faults);
  }
  if (card.whole) checkGroups(card, faults);
  checkFlow(card, faults);
  for (const post of card.posts) checkPost(post, faults);
}

function checkAct({ item, path }: Line, faults: CardFaults): void {
  if (!ONE_SENTENCE.test(item.do))
    faults.add('card-act-form', [...path, 'do'], { line: item.id, received: item.do });
}

function checkInput({ item, path }: Line, faults: CardFaults): void {
  const { kind, unit, doubt, choices } = item.input;
  const wrong =
    (kind === 'number') !== (unit !== undefined) ||
    (kind === 'choice') !== (choices !== undefined) ||
    (kind !== 'number' && doubt !== undefined) ||
    (item.holdPoint && kind !== 'tick');
  if (wrong)
    faults.add('card-input-needs', [...path, 'input'], { line: item.id, kind, hold: item.holdPoint });
}

const KEYS_OF: Readonly<Record<Input['kind'], readonly (keyof Expect)[]>> = {
  tick: ['words'],
  time: ['words'],
  text: ['words'],
  choice: ['right'],
  number: ['about', 'within', 'atLeast', 'atMost'],
};

function checkExpect({ item, path }: Line, faults: CardFaults): void {
  const { expect, input } = item;
  if (expect === undefined) return;
  const keys = Object.keys(expect) as (keyof Expect)[];
  const allowed = KEYS_OF[input.kind];
  const isHalf = (expect.about === undefined) !== (expect.within === undefined);
  const isMixed = expect.about !== undefined && (expect.atLeast ?? expect.atMost) !== undefined;
  const strange = keys.some((key) => !allowed.includes(key));
  const isNoChoice = expect.right?.some((word) => !input.choices?.includes(word)) === true;
  if (strange || isHalf || isMixed || isNoChoice)
    faults.add('card-expect-not-for-input', [...path, 'expect'], {
      line: item.id,
      kind: input.kind,
      keys: allowed,
      received: keys,
    });
}

function checkMustPass({ item, path }: Line, faults: CardFaults): void {
  const { mustPass, input, expect, twoPersons } = item;
  if (mustPass === undefined) return;
  const canFail =
    input.kind === 'number'
      ? (expect?.about ?? expect?.atLeast ?? expect?.atMost) !== undefined
      : input.kind === 'choice' &&
        expect?.right !== undefined &&
        expect.right.length < (input.choices?.length ?? 0);
  if (!canFail)
    faults.add('card-must-pass-cannot-fail', [...path, 'mustPass'], { line: item.id, check: mustPass });
  if (mustPass === 'two-person relabel' && !twoPersons)
    faults.add('card-must-pass-two-persons', [...path, 'mustPass'], { line: item.id });
}

function checkGroups({ steps }: SoundCard, faults: CardFaults): void {
  let count = 0;
  for (const { item, path } of steps) {
    count = item.holdPoint ? 0 : count + 1;
    if (count === MOST_IN_A_GROUP + 1)
      faults.add('card-group-too-long', path, { line: item.id, most: MOST_IN_A_GROUP });
  }
}

/** Starts, stops, amount stand in this order; what is done again begins no later than the start and takes it in. */
function checkFlow({ flow, steps }: SoundCard, faults: CardFaults): void {
  if (flow === null) return;
  const place = (id: string): number => steps.findIndex(({ item }) => item.id === id);
  const [starts, stops, amount] = [place(flow.starts), place(flow.stops), place(flow.amount)];
  if ([starts, stops, amount].includes(-1)) return;
  const isVolume = steps[amount]?.item.input.unit === 'L';
  const opens = steps[starts]?.item.acts.includes('let water flow') === true;
  const again = flow.again.length === 0 || flow.again.includes(flow.starts);
  const early = flow.again.every((id) => place(id) <= starts);
  if (!(starts < stops && stops <= amount && isVolume && opens && again && early))
    faults.add('card-flow-order', ['flow'], {
      starts: flow.starts,
      stops: flow.stops,
      amount: flow.amount,
    });
}

type PostKind = CardFile['posts'][number]['kind'];

/** Fields without which an entry of the kind cannot be made. */
const POST_NEEDS: Readonly<Record<PostKind, { names: readonly string[]; figures: readonly string[] }>> = {
  weigh: { names: ['store'], figures: ['amount'] },
  gauge: { names: ['store'], figures: ['amount'] },
  pvt: {
    names: ['store'],
    figures: [
      'amount',
      ...['bottleBefore', 'bottleAfter', 'tankBefore', 'tankAfter'],
      ...['bottleBeforeWarmth', 'bottleAfterWarmth', 'tankBeforeWarmth', 'tankAfterWarmth'],
    ],
  },
  movement: { names: ['from'], figures: ['amount'] },
  push: { names: ['from', 'to'], figures: ['amount'] },
  'declared-empty': { names: ['store'], figures: [] },
  'declared-full': { names: ['store'], figures: ['amount'] },
  hookup: { names: ['store', 'port'], figures: [] },
  sample: { names: ['store', 'sample'], figures: [] },
  dose: { names: ['store'], figures: ['dose'] },
  relabel: { names: ['store'], figures: [] },
  check: { names: [], figures: [] },
  'stock-count': { names: ['store'], figures: ['amount'] },
  service: { names: [], figures: [] },
  'unit-condition': { names: ['unit'], figures: [] },
  'part-used': { names: ['part'], figures: ['count'] },
};

const WORDS_NEEDED: Partial<Record<PostKind, string>> = {
  check: 'what',
  service: 'what',
  relabel: 'toGrade',
  'unit-condition': 'state',
};

function checkPost({ item, path }: SoundCard['posts'][number], faults: CardFaults): void {
  const needs = POST_NEEDS[item.kind];
  const word = WORDS_NEEDED[item.kind];
  const missing = [
    ...needs.names.filter((name) => !(Object.hasOwn(item.names, name) || Object.hasOwn(item.words, name))),
    ...needs.figures.filter((name) => !Object.hasOwn(item.figures, name)),
    ...(word === undefined || Object.hasOwn(item.words, word) ? [] : [word]),
  ];
  if (missing.length > 0) faults.add('card-post-needs', path, { kind: item.kind, missing });
}
