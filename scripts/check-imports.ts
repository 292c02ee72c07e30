// Holds the import table: which room may import which, only through its door, without circles.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkArchitecture } from './imports/architecture.ts';
import { checkImports } from './imports/check.ts';
import { readTree } from './tree/read-tree.ts';
import { written } from './tree/source-file.ts';

const root = join(import.meta.dirname, '..');
const report = checkImports(readTree(root));
const faults = [...report.faults, ...checkArchitecture(readFileSync(join(root, 'ARCHITECTURE.md'), 'utf8'))];

for (const fault of faults) console.error(written(fault));
console.log(`${report.files} files, ${report.imports} imports, ${faults.length} faults`);
process.exitCode = faults.length === 0 ? 0 : 1;
