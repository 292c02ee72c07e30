// The rules of the house in the order in which they are reported.
import type { Fault, SourceFile } from '../tree/source-file.ts';
import { constantSql } from './constant-sql.ts';
import { coreMaths } from './core-maths.ts';
import { coreNames } from './core-names.ts';
import { lockfile } from './lockfile.ts';
import { numberReading } from './number-reading.ts';
import { openingSentence } from './opening-sentence.ts';
import type { Rule } from './rule.ts';
import { fileSize, functionSize } from './sizes.ts';
import { wholeTree } from './whole-tree.ts';

export const ALL_RULES: readonly Rule[] = [
  coreNames,
  coreMaths,
  numberReading,
  constantSql,
  openingSentence,
  fileSize,
  functionSize,
  wholeTree,
  lockfile,
];

export interface RuleReport {
  readonly rule: Rule;
  readonly files: number;
  readonly faults: readonly Fault[];
}

/** Holds a tree against a rule; a rule that found no file to look at has not passed. */
export function holdAgainst(rule: Rule, tree: readonly SourceFile[]): RuleReport {
  const files = tree.filter(({ path }) => rule.looksAt(path));
  const nothingSeen =
    files.length > 0 ? [] : [{ path: '.', line: 1, says: `no file for the rule "${rule.name}"` }];
  return {
    rule,
    files: files.length,
    faults: [...nothingSeen, ...files.flatMap((file) => rule.faults(file))],
  };
}
