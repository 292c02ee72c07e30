// Files with slips made at random: the reader never throws, and says something about whatever it does not take.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { SMALL_OUTPOST } from '../../tests/outpost/small-outpost.ts';
import { recordCounts } from '../../tests/verification/record.ts';
import { readOutpost } from './read-outpost.ts';

const PIECES = [
  '',
  ' ',
  '\n',
  '  ',
  ':',
  ': ',
  '- ',
  '{',
  '}',
  '[',
  ']',
  '"',
  "'",
  '#',
  ' #',
  '|',
  '>',
  '?',
  ',',
  '&a',
  '*a',
  '!',
  '%',
  '@',
  '`',
  '\t',
  '\r',
  '0',
  '-1',
  '1e999',
  'null',
  'true',
  '---\n',
  '...\n',
  'é',
  '\ufeff',
];

const RUNS = 500;

const slip = fc.record({
  at: fc.nat(SMALL_OUTPOST.length),
  length: fc.nat(12),
  piece: fc.oneof(fc.constantFrom(...PIECES), fc.string({ maxLength: 4 })),
});

function withSlips(slips: readonly { at: number; length: number; piece: string }[]): string {
  return slips.reduce(
    (text, { at, length, piece }) => text.slice(0, at) + piece + text.slice(at + length),
    SMALL_OUTPOST,
  );
}

test('each is taken, or refused with findings inside the text', () => {
  let refused = 0;
  fc.assert(
    fc.property(fc.array(slip, { minLength: 1, maxLength: 4 }), (slips) => {
      const text = withSlips(slips);
      const read = readOutpost(text, { file: 'outpost.yaml' });
      if (read.ok) return;
      refused++;
      expect(read.findings.length).toBeGreaterThan(0);
      const lines = text.split('\n').length;
      for (const { where } of read.findings) {
        expect(where.line).toBeGreaterThan(0);
        expect(where.line).toBeLessThanOrEqual(lines);
      }
    }),
    { numRuns: RUNS },
  );
  expect(refused).toBeGreaterThan(RUNS / 2);
  recordCounts('outpost-files-with-slips', import.meta.filename, { counts: { files: RUNS } });
});
