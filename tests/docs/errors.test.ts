// The gallery of findings: every sample earns its code, is said in whole sentences, and stands in the page as it is.
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { errorsPage } from '../../scripts/docs/errors-page.ts';
import { expectGolden } from '../golden/record.ts';
import { galleryRooms } from './gallery/rooms.ts';

const rooms = await galleryRooms();
const shown = rooms.flatMap(({ name, entries }) =>
  entries.flatMap(({ code, failures }) => failures.map((failure) => [name, code, failure] as const)),
);

test.each(shown)('%s %s', (_room, code, { given, finding }) => {
  expect(finding.code).toBe(code);
  expect(given.join('').trim()).not.toBe('');
  for (const sentence of [finding.text, finding.expected, finding.received, finding.remedy]) {
    expect(sentence).toMatch(/\S/);
    // What was received may be anything, and stands in quotes.
    const ours = sentence.replace(/"[^"]*"/g, '""').replace('NaN and', 'words and');
    expect(ours).not.toMatch(/undefined|NaN|\[object|!|please| {2}/);
  }
  expect(finding.text).toMatch(/[.?]$/);
  expect(finding.remedy).toMatch(/[.?]$/);
});

test('the page is what the samples give today; if it should change, npm run golden writes it', () => {
  expectGolden('errors.md', errorsPage(rooms), join(import.meta.dirname, '../../docs'));
});
