// The study of free water: random histories beside a naive model of fitness, and the page docs/verification/falsely-free.md.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PLANTED } from '../../tests/quality/fitness/planted.ts';
import { type FalselyFree, nothingWalked, type Planted, walk } from '../../tests/quality/fitness/walk.ts';

const HISTORIES = 100_000;
const FIRST_SEED = 3_000_001;
/** Longer than that nobody waits: the page says how many it were. */
const MOST_MINUTES = Number(process.env['FREE_MINUTES'] ?? 60);
const MOST_UNTIL_FOUND = 2000;
const ROOT = join(import.meta.dirname, '..', '..');

const started = performance.now();
const walked = nothingWalked();
const found: FalselyFree[] = [];
for (let seed = FIRST_SEED; seed < FIRST_SEED + HISTORIES; seed++) {
  if (performance.now() - started > MOST_MINUTES * 60_000) break;
  const one = walk(seed, walked);
  if (one === null) continue;
  found.push(one);
  console.log(
    `falsely free: seed ${one.seed}, act ${one.entries.length}, ${one.store}: ${one.why.join(', ')}`,
  );
}
const controls = Object.entries(PLANTED).map(([name, planted]) => ({ name, ...untilFound(planted) }));
const page = pageOf();
mkdirSync(join(ROOT, 'docs', 'verification'), { recursive: true });
writeFileSync(join(ROOT, 'docs', 'verification', 'falsely-free.md'), page);
console.log(page);
console.log(`${Math.round((performance.now() - started) / 1000)} s`);
process.exitCode = found.length === 0 && controls.every(({ histories }) => histories !== null) ? 0 : 1;

function untilFound(planted: Planted): { readonly histories: number | null } {
  for (let many = 1; many <= MOST_UNTIL_FOUND; many++)
    if (walk(FIRST_SEED + many - 1, nothingWalked(), planted) !== null) return { histories: many };
  return { histories: null };
}

function countsIn(counts: ReadonlyMap<string, number>): string {
  const sorted = [...counts].sort(([a, many], [b, others]) => others - many || (a < b ? -1 : 1));
  return sorted.map(([name, many]) => `| ${name} | ${many} |`).join('\n');
}

function pageOf(): string {
  const short =
    walked.histories < HISTORIES ? ` of ${HISTORIES}, as far as ${MOST_MINUTES} minutes reached` : '';
  return `# Is any water falsely free?

Held, unreleased, unknown or waste water must be in no free figure. Random histories of a small outpost are walked beside a naive model of fitness, written from the pages of the methods and not from the account: after every act each store that the account counts as free is looked at. Made by \`npm run study:free\`; 1000 histories are among the tests (\`tests/quality/falsely-free.test.ts\`).

| what was looked at | how many |
|---|---|
| histories${short}, from seed ${FIRST_SEED} | ${walked.histories} |
| acts | ${walked.acts} |
| stores after an act | ${walked.looked} |
| of them free | ${walked.free} |
| **falsely free** | **${found.length}** |

## What the naive model knows
Any milligram of tainted water taints the whole store. Taints are: an open hold, by its name; a waiver that is over; conditional; on nobody's word; the loader's certificate where policy refuses it, or after an own result that ran out; no known grade; waste; for emergencies only; a release that is over; a row that is off; treated and not yet released; biocides that met, water that was called better than it is, and a treatment that is not allowed, each until a treatment by two. A result is held against a limit by a few lines of its own. Which way water went is taken from the postings, for the ledger has its own checks.

How often it spoke against a store, several reasons at once each counted:

| against it | stores |
|---|---|
${countsIn(walked.tainted)}

## Acts
| kind of entry | how many |
|---|---|
${countsIn(walked.byKind)}

## Controls
Accounts that are wrong on purpose, and after how many histories each was found:

| planted | histories |
|---|---|
${controls.map(({ name, histories }) => `| ${name} | ${histories ?? `not in ${MOST_UNTIL_FOUND}`} |`).join('\n')}

## Stricter than the naive model
The account held back what the naive model would let go, of ${walked.looked} stores looked at:

| by the account | stores |
|---|---|
${countsIn(walked.stricter)}

A rule that was broken holds both sides, also where the naive model sees no harm: a better water poured where it may not flow. Holds and words that the naive model lets go with an empty store stand in the account until somebody ends them.

## What is not looked at
Whether a result ought to be true, and whether a trace was made: what left a store before its sample failed is held by people, by the proposal of the trace. Amounts are those of the ledger alone; readings are not simulated.
`;
}
