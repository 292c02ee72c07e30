// The form of a kind: names without units, what each field takes, which are needed; and what is told is read by it.
import { expect, test } from 'vitest';
import { type Kind, kindNames } from '../../book/index.ts';
import { COMMAND_OF_KIND, formKinds, formOf, kindForm, namesOfKey, shapeOf } from './kind-form.ts';

test('a field is named without the unit that its key ends in, unless two would have one name', () => {
  const names = (kind: Kind) => kindForm(kind).map(({ name }) => name);
  expect(names('cabin-window')).toEqual(['before', 'during', 'until']);
  expect(names('sample')).toEqual([
    ...['store', 'point', 'sample', 'tests', 'volume', 'drawn-from'],
    ...['bottles', 'batch', 'duplicate-of'],
  ]);
  expect(names('pvt')).toContain('bottle-before-kpa-abs');
  expect(names('pvt')).toContain('bottle-before-c');
  expect(names('check')).toContain('hold-minutes');
  expect(namesOfKey('untilDay', ['untilDay'])).toEqual(['untilDay', 'until', 'until']);
});

test('no two fields of a kind have one name', () => {
  for (const kind of kindNames) {
    const names = kindForm(kind).map(({ name }) => name);
    expect({ kind, names: new Set(names).size }).toEqual({ kind, names: names.length });
  }
});

test('what is needed and what a field takes is read off the shape', () => {
  const takes = Object.fromEntries(
    kindForm('release').map(({ name, takes, needed }) => [name, [takes, needed]]),
  );
  expect(takes).toEqual({
    hold: ['text', false],
    stores: ['stores, with commas between', true],
    values: ['NAME=VALUE with commas between', false],
    samples: ['names with commas between', false],
    until: ['a whole number', false],
  });
  expect(kindForm('movement').find(({ name }) => name === 'amount')?.takes).toBe('an amount with its unit');
  expect(kindForm('check').find(({ name }) => name === 'what')?.takes).toBe('labels or leak');
});

test('an instrument is calibrated or replaced by fields that read as they are said', () => {
  const form = (kind: Kind) =>
    kindForm(kind).map(({ name, takes, needed }) => `${name}: ${takes}${needed ? '' : ', if known'}`);
  const doubts = [
    'calibration-relative: a share, as 0.01 or 1%, one standard deviation, if known',
    'calibration-absolute: a number in its own unit, one standard deviation, if known',
    'litres-per-count: a number, if known',
  ];
  expect(form('instrument-calibrated')).toEqual([
    'instrument: an instrument',
    ...doubts,
    'how: text, if known',
  ]);
  expect(form('instrument-replaced')).toEqual([
    'instrument: an instrument',
    'serial: text',
    'ended-at: a number, if known',
    'starts-at: a number',
    ...doubts,
    'reason: text, if known',
  ]);
});

test('every kind has a form or a command, and unknown ones have neither', () => {
  expect([...formKinds, ...Object.keys(COMMAND_OF_KIND)].sort()).toEqual([...kindNames].sort());
  expect(formOf('smple')).toBeNull();
  for (const kind of formKinds) expect(Object.keys(shapeOf(kind)).length).toBe(formOf(kind)?.length);
});
