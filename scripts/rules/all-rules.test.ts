// Controls for the rules: each sample that breaks a rule must be caught by it, and each that keeps it must pass.
import { describe, expect, test } from 'vitest';
import { type SourceFile, sourceFile } from '../tree/source-file.ts';
import { ALL_RULES, holdAgainst } from './all-rules.ts';
import type { Rule, Sample } from './rule.ts';

const asFile = ({ path, text }: Sample): SourceFile => sourceFile(path, text);

/** Samples of another file than the rule looks at pass because the rule leaves them alone. */
const faultsIn = (rule: Rule, sample: Sample) =>
  rule.looksAt(sample.path) ? rule.faults(asFile(sample)) : [];

describe.each(ALL_RULES)('$name', (rule) => {
  test.each(rule.caught)('catches $text', (sample) => {
    expect(rule.looksAt(sample.path)).toBe(true);
    expect(faultsIn(rule, sample).length).toBeGreaterThan(0);
  });

  test.each(rule.passes)('lets $text pass', (sample) => {
    expect(faultsIn(rule, sample)).toEqual([]);
  });

  test('has samples of both kinds, and fails when it looked at no file', () => {
    expect(rule.caught.length).toBeGreaterThan(0);
    expect(rule.passes.length).toBeGreaterThan(0);
    expect(holdAgainst(rule, []).faults).toHaveLength(1);
  });
});

test('a fault names its file and line', () => {
  const rule = ALL_RULES.find(({ name }) => name === 'core arithmetic');
  const file = sourceFile('src/account/a.ts', '// A.\nconst a = 1;\nconst b = a ** 2;\n');
  expect(rule?.faults(file)).toEqual([
    { path: 'src/account/a.ts', line: 3, says: 'uses **: multiply, or use ground/maths' },
  ]);
});
