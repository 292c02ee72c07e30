// A form sends each figure with its unit, takes a unit that was typed along, and leaves alone what it cannot read.
import { expect, test } from 'vitest';
import { parseQuantity } from '../../../../ground/units/index.ts';
import type { ReckonField, ReckonForm } from '../../../../papers/index.ts';
import { apart, sentOf, type Typed } from './typed.ts';

const field = (told: Partial<ReckonField>): ReckonField => ({
  name: 'volume',
  kind: 'quantity',
  label: 'volume of water',
  units: ['L', 'mL', 'm3'],
  choices: [],
  many: false,
  needed: true,
  otherwise: null,
  ...told,
});

const sent = (about: Partial<ReckonField>, text: string, unit: string | null = null): string | undefined => {
  const fields = [field(about)];
  const form: ReckonForm = { calculator: 'x', title: '', question: '', fields, example: {}, cautions: [] };
  return sentOf(form, { volume: { text, unit } })['volume'];
};

test.each([
  ['22', null, '22L'],
  ['22', 'mL', '22mL'],
  [' 22 ± 0.4 ', null, '22 ± 0.4L'],
  ['22+-0.4', 'm3', '22+-0.4m3'],
  ['500mL', 'L', '500mL'],
  ['22 ± 0.4 L', 'mL', '22 ± 0.4 L'],
  ['1e3', 'L', '1e3L'],
  ['1e3mL', 'L', '1e3mL'],
])('%s beside %s is sent as %s', (text, unit, as) => {
  expect(sent({}, text, unit)).toBe(as);
});

test('a list has its unit at each value, a plain number has none, and an empty field is not sent', () => {
  expect(sent({ many: true }, '20, 10')).toBe('20L,10L');
  expect(sent({ many: true }, '20,')).toBe('20L,');
  expect(sent({ kind: 'plain', units: ['K'] }, '0.5')).toBe('0.5');
  expect(sent({}, '   ')).toBeUndefined();
});

test.each([
  ['22L', { text: '22', unit: 'L' }],
  ['180L+-3.2', { text: '180 ± 3.2', unit: 'L' }],
  ['180 ± 3.2 mL', { text: '180 ± 3.2', unit: 'mL' }],
  ['2,5 l', { text: '2,5', unit: 'L' }],
  ['\u221210 mL', { text: '\u221210', unit: 'mL' }],
  ['1e3 mL', { text: '1e3', unit: 'mL' }],
])('%s comes apart', (text, parts) => {
  expect(apart(field({}), { text, unit: null })).toEqual(parts);
});

test.each(['22', '22 kg', '22 blocks', 'L', '22L+-3mL', '<b>22L</b>', '22L 3L', '', '22 ± L'])(
  'a control: %s stays as it was typed',
  (text) => {
    const typed: Typed = { text, unit: null };
    expect(apart(field({}), typed)).toEqual(typed);
  },
);

test('a list comes apart where all of it has one unit, and only then', () => {
  const list = field({ many: true });
  expect(apart(list, { text: '20L,10L', unit: null })).toEqual({ text: '20, 10', unit: 'L' });
  expect(apart(list, { text: '20L,10mL', unit: null })).toEqual({ text: '20L,10mL', unit: null });
});

test('apart and sent mean the same quantity', () => {
  const rule = { dimension: 'volume' } as const;
  for (const text of ['22L', '180L+-3.2', '180 ± 3.2 mL', '0.4m3', '2,5L']) {
    const { text: number, unit } = apart(field({}), { text, unit: null });
    expect(parseQuantity(sent({}, number, unit) ?? '', rule)).toEqual(parseQuantity(text, rule));
  }
});
