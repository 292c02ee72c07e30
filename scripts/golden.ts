// Rewrites the golden records: runs the tests that hold them with WATERWRIGHT_GOLDEN=write; the diff is then read by a person.
import { close } from './checks/part.ts';
import { ROOT } from './checks/run-tool.ts';
import { testsPart } from './checks/tests-part.ts';
import { readTree } from './tree/read-tree.ts';
import { isTest } from './tree/source-file.ts';

const words = process.argv.slice(2);
const holders = readTree(ROOT)
  .filter(({ path, text }) => isTest(path) && !path.startsWith('scripts/') && /golden/i.test(text))
  .map(({ path }) => path);

if (words.length === 0 && holders.length === 0) console.error('No test holds a golden record yet.');
else
  close([
    await testsPart('golden records', words.length > 0 ? words : holders, { WATERWRIGHT_GOLDEN: 'write' }),
  ]);
if (holders.length === 0) process.exitCode = 1;
