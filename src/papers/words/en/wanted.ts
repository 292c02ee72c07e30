// English for what was wanted of a field, in entries and in requests.
import type { Wanted } from '../../../book/index.ts';
import type { FindingData } from '../../../ground/units/index.ts';
import { listOf, textOf } from './data.ts';
import { listed } from './said.ts';

/** @param what what has the field: `the entry`, `the request` */
export function saidWanted(data: FindingData, what: string): string {
  return SAID[textOf(data, 'wanted') as Wanted](data, what);
}

const SAID: Readonly<Record<Wanted, (data: FindingData, what: string) => string>> = {
  text: () => 'a text',
  number: () => 'a number',
  'whole-number': () => 'a whole number',
  'yes-no': () => 'true or false',
  list: () => 'a list',
  section: () => 'a section of fields',
  'at-least': (data) => `at least ${textOf(data, 'limit')}`,
  'at-most': (data) => `at most ${textOf(data, 'limit')}`,
  'more-than': (data) => `more than ${textOf(data, 'limit')}`,
  longer: (data) => `a length of at least ${textOf(data, 'limit')}`,
  shorter: (data) => `a length of at most ${textOf(data, 'limit')}`,
  'one-of': (data) => listed(listOf(data, 'values'), 'or'),
  form: (_, what) => `the form that this field has in the description of ${what}`,
  'whole-characters': () => 'a text of whole characters (no half of a surrogate pair)',
  'less-nesting': () => 'sections nested at most 32 deep',
  other: (_, what) => `what the description of ${what} says`,
};
