// Every finding about an outpost file has a file that earns it, and four calm sentences, held as a golden record.
import { expect, test } from 'vitest';
import { expectGolden } from '../../../../tests/golden/record.ts';
import { FAILING_SAMPLES } from '../../../../tests/outpost/failing-samples.ts';
import { type OutpostFinding, type OutpostFindingCode, readOutpost } from '../../../outpost/index.ts';
import { outpostWords } from './outpost.ts';

const samples = Object.entries(FAILING_SAMPLES) as [OutpostFindingCode, string][];

function printed({ code, where, data }: OutpostFinding): string {
  const { text, expected, received, remedy } = outpostWords[code](data, where);
  const place = `${where.file}:${where.line}:${where.column}`;
  return `${place}  ${code}\n  ${text}\n  expected  ${expected}\n  received  ${received}\n  remedy    ${remedy}\n`;
}

/** The one that the sample is for: all others of a sample with many are cut short. */
function findingsOf(code: OutpostFindingCode, text: string): readonly OutpostFinding[] {
  const read = readOutpost(text, { file: 'outpost.yaml' });
  if (read.ok) throw new Error(`the sample for ${code} was taken`);
  return read.findings;
}

test.each(samples)('%s', (code, text) => {
  const findings = findingsOf(code, text);
  const ofAnotherCode = findings.filter((finding) => finding.code !== code).map((finding) => finding.code);
  expect(ofAnotherCode).toEqual(code === 'findings-cut' ? Array(200).fill('id-twice') : []);
  const last = findings[findings.length - 1] as OutpostFinding;
  expect(last).toMatchObject({ code, severity: 'error', entries: [] });
  const words = outpostWords[code](last.data, last.where);
  for (const sentence of Object.values(words)) {
    expect(sentence).not.toMatch(/undefined|\bnull\b|NaN|please|invalid|\[object/i);
    expect(sentence.length).toBeGreaterThan(0);
  }
  expect(words.text + words.remedy).not.toContain('!');
  expect(words.text).toMatch(/[.?]$/);
  expect(words.remedy).toMatch(/[.?]$/);
});

test('the sentences as they are read', () => {
  const record = samples.map(([code, text]) => printed(findingsOf(code, text).at(-1) as OutpostFinding));
  expectGolden('outpost/findings.txt', `${record.join('\n')}`);
});
