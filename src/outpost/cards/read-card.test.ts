// Reading a card's file: every fault at once, each at its line and column; slips made at random never get through unseen.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changedCard, SMALL_CARD } from '../../../tests/outpost/small-card.ts';
import { readCard } from './read-card.ts';

const FILE = { file: 'pour.yaml' };

/** `code line:column` of each fault. */
function faultsOf(text: string): readonly string[] {
  const read = readCard(text, FILE);
  return read.ok ? [] : read.findings.map(({ code, where }) => `${code} ${where.line}:${where.column}`);
}

const changed = (from: string, to: string) => faultsOf(changedCard(from, to));

test('the small card is read', () => {
  expect(faultsOf(SMALL_CARD)).toEqual([]);
});

test('a fault in a formula is told at its own column of the file', () => {
  expect(changed('amount / 2 L/min', 'amount / 2 L/mi')).toEqual(['formula-name-unknown 19:54']);
  expect(changed('amount / 2 L/min', "'amount / speed'")).toEqual(['formula-name-unknown 19:51']);
  expect(changed('found.before - 1 kPa', 'found.before - 1 L')).toEqual(['formula-dimension 53:37']);
});

test('faults of different parts are told together, in the order of the file', () => {
  const text = changedCard('kinds: [tank]', 'kinds: [jar]', changedCard('unit: min }', 'unit: L }'));
  expect(faultsOf(changedCard('mustPass: leak check', 'mustPass: look', text))).toEqual([
    'id-unknown 10:49',
    'formula-result 19:41',
    'value-not-in-list 54:15',
    'formula-result 92:12',
  ]);
});

test('a name that an unreadable part would have brought is not called a slip', () => {
  expect(changed('id: before\n', 'id: Before\n').filter((fault) => fault.startsWith('formula'))).toEqual([]);
});

describe('what a card has to have', () => {
  test.each([
    [
      'a choice with keys of another',
      'what: giver, kinds: [tank]',
      'what: giver, unit: L',
      'card-choice-keys',
    ],
    ['a quantity without a unit', 'of: quantity, unit: L', 'of: quantity', 'card-choice-keys'],
    [
      'a number without a unit',
      'kind: number, unit: kPa abs, doubt: 0.1 kPa',
      'kind: number',
      'card-input-needs',
    ],
    [
      'choices at a tick',
      '{ kind: tick }\n    expect',
      '{ kind: tick, choices: [a, b] }\n    expect',
      'card-input-needs',
    ],
    [
      'words at a number',
      '{ atLeast: found.before - 1 kPa }',
      '{ words: tight }',
      'card-expect-not-for-input',
    ],
    [
      'about without within',
      '{ about: cabin.pressure, within: 5 kPa }',
      '{ about: cabin.pressure }',
      'card-expect-not-for-input',
    ],
    ['a right answer that is no choice', 'right: [right]', 'right: [rihgt]', 'card-expect-not-for-input'],
    ['two acts in a line', 'Mate the hose.', 'Mate the hose. Look at it.', 'card-act-form'],
    ['no sentence', 'Mate the hose.', 'mate the hose', 'card-act-form'],
    ['a check that anything passes', 'right: [right]', 'right: [right, wrong]', 'card-must-pass-cannot-fail'],
    [
      'a check by a tick',
      '{ kind: choice, choices: [right, wrong] }\n    expect: { right: [right] }',
      '{ kind: tick }',
      'card-must-pass-cannot-fail',
    ],
    [
      'a relabelling by one',
      'mustPass: label check',
      'mustPass: two-person relabel',
      'card-must-pass-two-persons',
    ],
    [
      'water that flows before the labels were read',
      'mustPass: label check',
      'mustPass: gas check',
      'card-must-pass-missing',
    ],
    ['an act without its box', 'hazards: [full]', 'hazards: [wet]', 'card-hazard-missing'],
    ['a box before no line', 'hazards: [wet]', 'hazards: [bad]', 'card-hazard-unused'],
    ['a number in a box', 'Water floats.', 'Below 60 kPa.', 'card-hazard-number'],
    ['a number of letters in a box', 'what: most,', 'what: most ½,', 'card-hazard-number'],
    [
      'a box that says too little',
      'kind: free water, word: WARNING',
      'kind: free water, word: CAUTION',
      'card-hazard-word',
    ],
    [
      'pressure without its ratings',
      'acts: [open a line]',
      'acts: [open a line, pressurise]',
      'card-rating-not-asked',
    ],
    ['a figure of the book in a box', 'figure: dose.most', 'figure: to.content', 'id-unknown'],
    [
      'a flow that stops before it starts',
      'starts: open\n  stops: shut',
      'starts: shut\n  stops: open',
      'card-flow-order',
    ],
    ['an amount that is no volume', 'amount: litres\n', 'amount: before\n', 'card-flow-order'],
    ['again without the start', 'again: [before, tight, open]', 'again: [before]', 'card-flow-order'],
    [
      'an entry without its store',
      'names: { store: to, said: found.note }',
      'names: { said: found.note }',
      'card-post-needs',
    ],
    ['a choice that is not there', 'Read the labels of {from}', 'Read the labels of {form}', 'id-unknown'],
    ['a line twice', 'id: mate\n', 'id: labels\n', 'id-twice'],
    ['a value of a later line', 'found.before - 1 kPa', 'found.tight - 1 kPa', 'formula-name-too-early'],
    ['a condition that compares nothing', 'holds: amount > 0 L', 'holds: amount', 'formula-result'],
    ['a doubt on a scale', 'doubt: 0.1 kPa', 'doubt: 0.1 kPa abs', 'formula-result'],
    ['a rating that nothing has', 'ratings: [from.rating]', 'ratings: [from.raiting]', 'id-unknown'],
    [
      'a movement between no stores',
      'movement: { from: from, to: to }',
      'movement: { from: amount, to: to }',
      'id-unknown',
    ],
    ['a key that is not known', 'who: second', 'whom: second', 'key-unknown'],
    ['a name that formulas could not use', 'id: mate', 'id: the mate', 'value-wrong-form'],
  ])('%s', (_, from, to, code) => {
    expect(changed(from, to).map((fault) => fault.split(' ')[0])).toContain(code);
  });

  test('no more than nine lines between two hold points', () => {
    const more = Array.from(
      { length: 4 },
      (_, k) => `  - id: more${k}\n    who: keeper\n    do: Wait.\n    input: { kind: tick }\n`,
    ).join('');
    expect(changed('  - id: seen', `${more}  - id: seen`)).toEqual([]);
    const tenth = `${more}  - id: m8\n    who: keeper\n    do: Wait.\n    input: { kind: tick }\n`;
    expect(changed('  - id: seen', `${tenth}  - id: seen`).map((fault) => fault.split(' ')[0])).toEqual([
      'card-group-too-long',
    ]);
  });
});

const PIECES = [
  '',
  ' ',
  '\n',
  ':',
  '- ',
  '{',
  '}',
  '[',
  ']',
  '"',
  "'",
  '#',
  ',',
  '&a',
  '!',
  '\t',
  '0',
  '1e999',
  'null',
  '×',
  'found.',
  '.',
];
const slip = fc.record({
  at: fc.nat(SMALL_CARD.length),
  length: fc.nat(8),
  piece: fc.oneof(fc.constantFrom(...PIECES), fc.string({ maxLength: 3 })),
});

test('a card with slips is read or every fault has a place inside it; it is never thrown', () => {
  let faulty = 0;
  fc.assert(
    fc.property(fc.array(slip, { minLength: 1, maxLength: 3 }), (slips) => {
      const text = slips.reduce(
        (sum, { at, length, piece }) => sum.slice(0, at) + piece + sum.slice(at + length),
        SMALL_CARD,
      );
      const read = readCard(text, FILE);
      if (read.ok) return;
      faulty += 1;
      expect(read.findings.length).toBeGreaterThan(0);
      const lines = text.split('\n').length;
      for (const { where } of read.findings) {
        expect(where.line).toBeLessThanOrEqual(lines + 1);
        expect(where.column).toBeGreaterThanOrEqual(1);
      }
    }),
    { numRuns: 400, seed: 21470303 },
  );
  expect(faulty).toBeGreaterThan(200);
});

test('a key taken out of a line, or a section taken out of the card, is missed or was one that may be left out', () => {
  const lines = SMALL_CARD.split('\n');
  const mayBeLeftOut =
    /^ +(expect|hazards|acts|again|atOnce|twoPersons|- \{ what: most)|^ +mustPass: leak|^ +holdPoint/;
  let missed = 0;
  lines.forEach((line, index) => {
    if (line.trim() === '' || mayBeLeftOut.test(line)) return;
    const rest = [...lines.slice(0, index), ...lines.slice(index + 1)].join('\n');
    if (!readCard(rest, FILE).ok) missed += 1;
  });
  expect(missed).toBeGreaterThan(60);
});
