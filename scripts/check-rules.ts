// Holds the tree against the rules of the house.
import { join } from 'node:path';
import { ALL_RULES, holdAgainst } from './rules/all-rules.ts';
import { readTree } from './tree/read-tree.ts';
import { written } from './tree/source-file.ts';

const tree = readTree(join(import.meta.dirname, '..'));
const reports = ALL_RULES.map((rule) => holdAgainst(rule, tree));

for (const { rule, files, faults } of reports) {
  console.log(`${rule.name}: ${files} files, ${faults.length} faults`);
  for (const fault of faults) console.error(`  ${written(fault)}`);
  if (faults.length > 0) console.error(`  Why: ${rule.why}.`);
}
process.exitCode = reports.every(({ faults }) => faults.length === 0) ? 0 : 1;
