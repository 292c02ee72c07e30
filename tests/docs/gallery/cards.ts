// Table of cards with one fault each, and of fillings that may not start.
import {
  type CardFindingCode,
  type CardValue,
  type FillAsked,
  fillCard,
  indexOutpost,
  type RefusedMovement,
  readCard,
  readOutpost,
} from '../../../src/outpost/index.ts';
import { changedCard, SMALL_CARD } from '../../outpost/small-card.ts';
import { SMALL_OUTPOST } from '../../outpost/small-outpost.ts';
import { changedLines } from './changed-lines.ts';
import { failure, type Sample, type Samples, sample } from './sample.ts';

const FILE = { file: 'pour.yaml' };

const file = (from: string, to: string, code?: string) => () => {
  const text = changedCard(from, to);
  const read = readCard(text, FILE);
  const findings = read.ok ? [] : read.findings;
  return failure(changedLines(SMALL_CARD, text), findings.find((each) => each.code === code) ?? findings[0]);
};

const formula = (when: string, text: string): Sample =>
  sample(when, file('formula: amount / 2 L/min', `formula: "${text}"`));

const outpost = readOutpost(SMALL_OUTPOST, { file: 'outpost.yaml' });
if (!outpost.ok) throw new Error('the small outpost is at fault');
const index = indexOutpost(outpost.outpost);

/** A tank and a container of their own, so that the sample does not hang on the small outpost. */
const STORES: FillAsked['stores'] = [
  { id: 'A', kind: 'tank' },
  { id: 'B', kind: 'container' },
];
const litres = (value: number, u = 0) => ({ value, u, unit: 'L' }) as const;
const VALUES = new Map<string, CardValue>([
  ['A.rating', { value: 80, u: 0, unit: 'kPa over cabin' }],
  ['B.fill', litres(20.5)],
  ['B.content', litres(0.6, 0.1)],
]);

interface Start {
  readonly text?: string;
  readonly chosen?: FillAsked['chosen'];
  readonly values?: FillAsked['values'];
  readonly form?: 'READ-DO' | 'DO-CONFIRM';
  readonly refused?: RefusedMovement;
}

const start =
  (
    code: CardFindingCode,
    { text = SMALL_CARD, chosen = { from: 'A', to: 'B' }, values = VALUES, form, refused }: Start,
  ) =>
  () => {
    const read = readCard(text, FILE);
    if (!read.ok) throw new Error(JSON.stringify(read.findings));
    const rules = () => (refused === undefined ? [] : [refused]);
    const asked = { index, values, chosen, stores: STORES, rules, ...(form !== undefined && { form }) };
    const { findings } = fillCard(read.card, asked);
    const said = Object.entries(chosen).map(
      ([id, thing]) => `${id} ${typeof thing === 'string' ? thing : `${thing.value} ${thing.unit}`}`,
    );
    const changes = text === SMALL_CARD ? [] : changedLines(SMALL_CARD, text);
    return failure(
      [...changes, `pour: ${said.join(', ')}${form === undefined ? '' : `, as ${form}`}`],
      findings.find((each) => each.code === code),
    );
  };

const rule = (name: RefusedMovement['rule']) => start(`card-${name}`, { refused: { rule: name, data: {} } });

export const cardSamples: Samples<CardFindingCode> = {
  'formula-too-long': formula('A formula goes on and on.', 'amount + '.repeat(50)),
  'formula-too-deep': formula(
    'Brackets in brackets in brackets.',
    `${'('.repeat(40)}amount${')'.repeat(40)}`,
  ),
  'formula-sign-unknown': formula('A sign that no formula has.', 'amount % 2'),
  'formula-unit-unknown': formula('A unit that cards do not know.', 'amount / 2 gallons'),
  'formula-unexpected': formula('Something is missing in the middle.', 'amount / (2 L/min'),
  'formula-name-unknown': formula('A name is misspelt.', 'amout / 2 L/min'),
  'formula-name-too-early': sample(
    'A line uses what it finds itself.',
    file('found.before - 1 kPa', 'found.tight - 1 kPa'),
  ),
  'formula-function-unknown': formula('A function that there is not.', 'mini(amount, 1 L) / 2 L/min'),
  'formula-arguments': formula('A function does not get what it takes.', 'fill_time(amount, 50 kPa)'),
  'formula-dimension': formula('Litres and minutes are added.', 'amount + 2 min'),
  'formula-point': formula('An absolute pressure is doubled.', '2 * cabin.pressure'),
  'formula-result': formula('A value in minutes gives litres.', 'amount + 2 L'),
  'card-choice-keys': sample(
    'A quantity has no unit.',
    file('of: quantity, unit: L', 'of: quantity', 'card-choice-keys'),
  ),
  'card-input-needs': sample(
    'A line asks for a number in no unit.',
    file('kind: number, unit: L, doubt: 0.1 L', 'kind: number', 'card-input-needs'),
  ),
  'card-expect-not-for-input': sample(
    'A number is expected in words.',
    file(
      'expect: { about: amount - run.moved, within: 1 L }',
      'expect: { words: enough }',
      'card-expect-not-for-input',
    ),
  ),
  'card-act-form': sample(
    'Two acts stand in one line.',
    file('Mate the hose.', 'Mate the hose. Look at it.'),
  ),
  'card-must-pass-cannot-fail': sample(
    'Every answer to a check is right.',
    file('right: [right]', 'right: [right, wrong]'),
  ),
  'card-must-pass-two-persons': sample(
    'One person relabels.',
    file('mustPass: label check', 'mustPass: two-person relabel', 'card-must-pass-two-persons'),
  ),
  'card-must-pass-missing': sample(
    'Water flows before anybody has read the labels.',
    file('mustPass: label check', 'mustPass: gas check', 'card-must-pass-missing'),
  ),
  'card-hazard-missing': sample(
    'Water flows, and no box says what over-filling does.',
    file('hazards: [full]', 'hazards: [wet]', 'card-hazard-missing'),
  ),
  'card-hazard-unused': sample(
    'A box stands at no line.',
    file('    hazards: [full]\n', '    hazards: [wet]\n', 'card-hazard-unused'),
  ),
  'card-hazard-number': sample('A box brings a figure of its own.', file('It tears.', 'It tears at 70 kPa.')),
  'card-hazard-word': sample(
    'A box says CAUTION of what can kill.',
    file('kind: free water, word: WARNING', 'kind: free water, word: CAUTION'),
  ),
  'card-rating-not-asked': sample(
    'A line brings pressure, and no rating is asked for.',
    file('acts: [open a line]', 'acts: [open a line, pressurise]', 'card-rating-not-asked'),
  ),
  'card-group-too-long': sample(
    'Ten lines stand between two hold points.',
    file('    holdPoint: true\n', '    twoPersons: true\n'),
  ),
  'card-flow-order': sample(
    'The flow stops before it starts.',
    file('starts: open', 'starts: shut', 'card-flow-order'),
  ),
  'card-post-needs': sample(
    'An entry names no store.',
    file('names: { store: to, said: found.note }', 'names: {}'),
  ),
  'card-choice-missing': sample(
    'Nobody said where the water goes.',
    start('card-choice-missing', { chosen: { from: 'A' } }),
  ),
  'card-choice-unknown': sample(
    'A store is named that is not aboard.',
    start('card-choice-unknown', { chosen: { from: 'A', to: 'BB' } }),
  ),
  'card-choice-kind': sample(
    'A container is named where only a tank can be.',
    start('card-choice-kind', { chosen: { from: 'B', to: 'A' } }),
  ),
  'card-choice-same': sample(
    'One store is named twice.',
    start('card-choice-same', { chosen: { from: 'A', to: 'A' } }),
  ),
  'card-form-not-there': sample(
    'A form is asked for that the card does not have.',
    start('card-form-not-there', {
      text: changedCard('forms: [READ-DO, DO-CONFIRM]', 'forms: [READ-DO]'),
      form: 'DO-CONFIRM',
    }),
  ),
  'card-rating-missing': sample(
    'Nobody entered what the tank bears.',
    start('card-rating-missing', { values: new Map([...VALUES].filter(([name]) => name !== 'A.rating')) }),
  ),
  'card-must-pass-unknown': sample(
    'A check is held against a figure that nobody entered.',
    start('card-must-pass-unknown', {
      text: changedCard('found.before - 1 kPa', 'from.gas_pressure - 1 kPa'),
    }),
  ),
  'card-condition-fails': sample(
    'There may be no room for the water.',
    start('card-condition-fails', { values: new Map([...VALUES, ['B.content', litres(20.4, 0.2)]]) }),
  ),
  'card-condition-unknown': sample(
    'Nobody knows what is in the receiver.',
    start('card-condition-unknown', {
      values: new Map([...VALUES].filter(([name]) => name !== 'B.content')),
    }),
  ),
  'card-source-held': sample('The source is on hold.', rule('source-held')),
  'card-source-unreleased': sample('The source is not released for the reserve.', rule('source-unreleased')),
  'card-grades-clash': sample('Technical water would go into a drinking container.', rule('grades-clash')),
  'card-biocides-clash': sample('Iodine water would meet silver.', rule('biocides-clash')),
};
