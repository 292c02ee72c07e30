// Runs every example of docs/methods/water-density.md.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { litresToMilligrams, milligramsToLitres, waterDensityKgPerM3 } from './water-density.ts';

const page = readFileSync(join(import.meta.dirname, '../../../../docs/methods/water-density.md'), 'utf8');
const block = /```examples\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
const examples = block
  .trim()
  .split('\n')
  .map((line) => /^(\S+)\s+(.*?)\s+=> (.*)$/.exec(line)?.slice(1) ?? [line, '', '']);

const acts: Readonly<Record<string, (first: number, second: number) => string>> = {
  density: (temperatureC) => waterDensityKgPerM3(temperatureC).toFixed(4),
  milligrams: (volumeL, density) => String(litresToMilligrams(volumeL, density)),
  litres: (massMg, density) => String(milligramsToLitres(massMg, density)),
};

it.each(examples)('%s %s => %s', (act = '', text = '', expected = '') => {
  const run = acts[act];
  if (run === undefined) throw new Error(`the page has an example "${act}" that no test knows`);
  const [first = Number.NaN, second = Number.NaN] = text.split(' ').map(Number);
  if (expected === 'refused') expect(() => run(first, second)).toThrow(RangeError);
  else expect(run(first, second)).toBe(expected);
});

it('has found the examples', () => {
  expect(examples.length).toBeGreaterThanOrEqual(5);
});
