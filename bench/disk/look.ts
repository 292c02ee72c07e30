// Reads a whole book in a process of its own and says how fast, and with how much memory.
import { statSync } from 'node:fs';
import { checkBook } from '../../src/book/index.ts';
import { checkBookFile, nodeHash, openBook } from '../../src/doors/disk/index.ts';

const [path = ''] = process.argv.slice(2);
using book = await openBook(path, { owner: 'bench', readOnly: true });

const started = performance.now();
const chains = await checkBook(book, { hash: nodeHash });
const chainsDone = performance.now();
const whole = await checkBookFile(book);
const wholeDone = performance.now();
let scanned = 0;
for await (const rows of book.scan({ order: 'total' })) scanned += rows.length;
const scanDone = performance.now();

const faults = [...chains.findings, ...whole.findings];
if (faults.length > 0 || scanned !== chains.entries) throw new Error(JSON.stringify(faults[0] ?? scanned));
const seconds = (from: number, to: number): number => (to - from) / 1000;
console.log(
  JSON.stringify({
    entries: chains.entries,
    chainSeconds: seconds(started, chainsDone),
    checkSeconds: seconds(chainsDone, wholeDone),
    scanSeconds: seconds(wholeDone, scanDone),
    megabytes: process.resourceUsage().maxRSS / 1024,
    size: statSync(path).size,
  }),
);
