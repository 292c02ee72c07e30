// What an answer is for the page: a lack is told calmly, a wrong figure at its field, a refusal in the names of the form.
import { expect, test } from 'vitest';
import type { ReckonField, ReckonForm, WordedFinding } from '../../../../papers/index.ts';
import { findingsAt, verdictOf } from './verdict.ts';

const field = (name: string, label: string): ReckonField => ({
  name,
  kind: 'quantity',
  label,
  units: ['kPa'],
  choices: [],
  many: false,
  needed: true,
  otherwise: null,
});

const form: ReckonForm = {
  calculator: 'gauge',
  title: '',
  question: '',
  fields: [field('tank', 'volume of the tank'), field('rating', 'lowest rating')],
  example: {},
  cautions: [],
};

const finding = (told: Partial<WordedFinding>): WordedFinding => ({
  code: 'reckon-refused',
  severity: 'error',
  where: {},
  entries: [],
  text: 'Refused: it is too much.',
  expected: 'less',
  received: 'more',
  remedy: 'Take less.',
  ...told,
});

const failed = (status: number, findings: readonly WordedFinding[], fields = {}) =>
  ({ fields, reply: { ok: false, status, findings } }) as const;

test('what is missing is a list of fields', () => {
  const lacks = finding({
    code: 'reckon-input-missing',
    text: 'The calculator lacks volume of the tank (--tank). Nothing was reckoned.',
  });
  expect(verdictOf(form, failed(400, [lacks]))).toEqual({ kind: 'needs', fields: [form.fields[0]] });
});

test('a figure that cannot be read is told at its field, and only while it stands there', () => {
  const wrong = finding({ code: 'unit-unknown', where: { field: 'tank' } });
  const last = failed(422, [wrong], { tank: '3Mpa' });
  expect(verdictOf(form, last)).toEqual({ kind: 'look', fields: [form.fields[0]] });
  expect(findingsAt(form, 'tank', last)).toHaveLength(1);
  expect(findingsAt(form, 'rating', last)).toHaveLength(0);
});

test('a refusal names the fields of the form, and no command', () => {
  const refused = finding({
    remedy: 'Read it on its plate and give it: --rating 100kPa. An example: waterwright help reckon.',
  });
  const verdict = verdictOf(form, failed(409, [refused]));
  expect(verdict.kind).toBe('refused');
  const [told] = verdict.kind === 'refused' ? verdict.findings : [];
  expect(told?.remedy).toBe('Read it on its plate and give it: “lowest rating” 100kPa.');
});

test('a refusal that an empty field would end is no refusal yet', () => {
  const untold = finding({ where: { field: 'rating' } });
  expect(verdictOf(form, failed(409, [untold])).kind).toBe('untold');
  expect(verdictOf(form, failed(409, [untold], { rating: '1kPa' })).kind).toBe('look');
});

test('without a server, or with something else than findings, it is lost', () => {
  expect(verdictOf(form, failed(0, [])).kind).toBe('lost');
  expect(verdictOf(form, failed(500, [])).kind).toBe('lost');
  expect(verdictOf(form, failed(404, [finding({ code: 'not-in-book' })])).kind).toBe('cannot');
});
