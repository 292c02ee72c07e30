// Reckons a long book in a process of its own: how fast it is rebuilt, with how much memory, and how soon one more entry is in the position.
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { Account, positionOf } from '../../src/account/index.ts';
import { type AnyDraft, type AnyEntry, type BookPort, keepDrafts } from '../../src/book/index.ts';
import { nodeHash, openBook } from '../../src/doors/disk/index.ts';
import { draftsAfter } from './long-book.ts';

const APPENDS = 2000;
const LATE = 50;
const MINUTE_MS = 60_000;

/** `ledger` alone, with the estimator (`full`), or that and one entry after another (`grow`). */
const [path = '', what = 'full'] = process.argv.slice(2);
using book = await openBook(path, { owner: 'bench' });

const started = performance.now();
const opened = await Account.open(book, { estimating: what !== 'ledger' });
const seconds = (performance.now() - started) / 1000;
if (!opened.ok) throw new Error(JSON.stringify(opened.findings?.[0]));
const { account } = opened;
const { entries, ledger } = account.fold;
if (ledger.closureMg() !== 0 || entries !== (await book.count()))
  throw new Error('the book was not reckoned whole');

/** Kept on disk, taken into the account, and the whole position worked out. */
async function toPosition(port: BookPort, draft: AnyDraft): Promise<number> {
  const started = performance.now();
  const outcome = await keepDrafts(port, [draft], { hash: nodeHash, keptAtMs: 0 });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings[0]));
  await account.take(outcome.kept as readonly AnyEntry[]);
  const position = positionOf(account.fold, account.fold.lastEntryMs ?? 0);
  const spent = performance.now() - started;
  if (position.closureMg !== 0) throw new Error('the position does not close');
  return spent;
}

const appendMs: number[] = [];
const lateMs: number[] = [];
const fresh = what === 'grow' ? draftsAfter(account.fold.lastEntryMs ?? 0, APPENDS + LATE) : [];
for (const draft of fresh.slice(0, APPENDS)) appendMs.push(await toPosition(book, draft));
// A day late: the fold goes back to the one that was kept before it.
for (const draft of fresh.slice(APPENDS)) {
  const happenedAtMs = (account.fold.lastEntryMs ?? 0) - 1440 * MINUTE_MS;
  lateMs.push(await toPosition(book, { ...draft, happenedAtMs } as AnyDraft));
}

const megabytes = peakMegabytes();
console.log(JSON.stringify({ rate: entries / seconds, megabytes, appendMs, lateMs }));

/** Where the system tells it, the peak of this program alone: the other figure has that of the program that started it inside. */
function peakMegabytes(): number {
  try {
    const kilobytes = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))?.[1];
    if (kilobytes !== undefined) return Number(kilobytes) / 1024;
  } catch {}
  return process.resourceUsage().maxRSS / 1024;
}
