// Where the work of each command is: loaded when the command is called, so that `help` loads nothing of it.
import type { Call } from './call.ts';
import type { Command } from './command.ts';
import type { Outcome } from './outcome.ts';

interface Loaded {
  readonly run: (call: Call) => Promise<Outcome>;
}

const ofWord: Readonly<Record<string, () => Promise<Loaded>>> = {
  start: () => import('./commands/start.ts'),
  init: () => import('./commands/init.ts'),
  serve: () => import('./commands/serve.ts'),
  today: () => import('./commands/today.ts'),
  'store list': () => import('./commands/store.ts'),
  'store show': () => import('./commands/store.ts'),
  'store add': () => import('./commands/store-add.ts'),
  completion: () => import('./commands/completion.ts'),
  help: () => import('./commands/help.ts'),
  log: () => import('./commands/log-kind.ts'),
  'log day': () => import('./commands/log-day.ts'),
  import: () => import('./commands/import.ts'),
  'inbox list': () => import('./commands/inbox.ts'),
  'inbox show': () => import('./commands/inbox.ts'),
  'inbox take': () => import('./commands/inbox.ts'),
  'inbox drop': () => import('./commands/inbox.ts'),
  'book show': () => import('./commands/book-show.ts'),
  'book check': () => import('./commands/book-check.ts'),
  'book close': () => import('./commands/book-close.ts'),
  'book backup': () => import('./commands/book-backup.ts'),
  'book export': () => import('./commands/book-export.ts'),
  'count start': () => import('./commands/count.ts'),
  'count add': () => import('./commands/count.ts'),
  'count show': () => import('./commands/count.ts'),
  'count finish': () => import('./commands/count.ts'),
  'sample add': () => import('./commands/sample.ts'),
  'sample result': () => import('./commands/sample.ts'),
  'sample list': () => import('./commands/sample.ts'),
  'sample show': () => import('./commands/sample.ts'),
  'quality today': () => import('./commands/quality.ts'),
  'quality trend': () => import('./commands/quality-trend.ts'),
  'quality limits': () => import('./commands/quality-limits.ts'),
  'quality limits list': () => import('./commands/quality-limits.ts'),
  'quality limits show': () => import('./commands/quality-limits.ts'),
  'quality limits choose': () => import('./commands/quality-limits.ts'),
  'quality limits type': () => import('./commands/quality-limits.ts'),
  'bed list': () => import('./commands/bed.ts'),
  'bed show': () => import('./commands/bed.ts'),
  'bed forecast': () => import('./commands/bed.ts'),
  'report list': () => import('./commands/report.ts'),
  'report show': () => import('./commands/report.ts'),
  'book code set': () => import('./commands/book-code.ts'),
  'book code list': () => import('./commands/book-code.ts'),
  'book outpost': () => import('./commands/book-outpost.ts'),
};

/** Acts of `log` that are told in one line have their work together. */
const loadAct = (): Promise<Loaded> => import('./commands/log-act.ts');

/** Holds and every way out of one have theirs together. */
const loadHold = (): Promise<Loaded> => import('./commands/hold.ts');

/** All calculators have their work together. */
const loadReckon = (): Promise<Loaded> => import('./commands/reckon.ts');

const ofGroup: Readonly<Record<string, () => Promise<Loaded>>> = { reckon: loadReckon, hold: loadHold };

export function loadCommand({ path }: Command): Promise<Loaded> {
  return (ofWord[path.join(' ')] ?? ofGroup[path[0] ?? ''] ?? loadAct)();
}
