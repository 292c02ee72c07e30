// A disk whose calls fail one after another: no entry is acknowledged that is not kept, and after a failed sync nothing is written.
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createBook, openBook } from '../../src/doors/disk/index.ts';
import { recordCounts } from '../verification/record.ts';
import { need } from './needs.ts';
import { inPairs, startWriter, type WriterSaid } from './run-writer.ts';
import { endsOf, whatIsWrong } from './whole-book.ts';
import { chainOf, INFO, LONGEST_CHAIN } from './writer.ts';

const PLAN = [1, 1, 1, 60, 1, 1];
const START = 40;
const chain = chainOf(LONGEST_CHAIN);
const ends = endsOf(PLAN, START);
// Appends that fail are passed over, so that later ones may end elsewhere.
const anyEnd = new Set(Array.from({ length: LONGEST_CHAIN }, (_, at) => at));
let folder = '';
let template = '';

beforeAll(async () => {
  need('strace');
  folder = mkdtempSync(join(tmpdir(), 'waterwright-lies-'));
  template = join(folder, 'template.book');
  createBook(template, INFO);
  using book = await openBook(template, { owner: 'faults' });
  await book.append(chain.slice(0, START), []);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** One way to lie: the call that fails, how, and from which time on. `7+` is the seventh and all that follow. */
interface Lie {
  readonly call: string;
  readonly how: string;
  readonly when: string;
}

interface Told extends Lie {
  readonly said: WriterSaid;
  readonly injected: number;
  readonly fault: string | null;
}

async function tellLie(lie: Lie, at: number, ackEarly = false): Promise<Told> {
  const path = join(folder, `${at}.book`);
  const log = `${path}.strace`;
  copyFileSync(template, path);
  const strace = [
    ...['strace', '-f', '-qq', '-o', log, '-e', `trace=${lie.call}`, '-e', 'signal=none'],
    ...['-e', `inject=${lie.call}:${lie.how}:when=${lie.when}`],
    ...['-P', path, '-P', `${path}-journal`],
  ];
  const said = await startWriter({ path, plan: PLAN, ackEarly }, strace).said;
  const injected = readFileSync(log, 'utf8').split('(INJECTED)').length - 1;
  // A killed call is told by the signal, not by a result.
  const killed = lie.how.startsWith('signal') && !said.done ? 1 : 0;
  const acked = Math.max(START, said.acked);
  const fault = await whatIsWrong(path, { chain, acked, ends: said.errors.length === 0 ? ends : anyEnd });
  for (const name of ['', '-journal', '.receipt', '.owner', '.strace'])
    rmSync(`${path}${name}`, { force: true });
  return { ...lie, said, injected: injected + killed, fault };
}

function lies(call: string, how: string, times: number, more: readonly string[] = []): Lie[] {
  const when = [...Array.from({ length: times }, (_, at) => String(at + 1)), ...more];
  return when.map((each) => ({ call, how, when: each }));
}

/** Calls by which this build of SQLite syncs a file: an injection into another one would hit nothing. */
async function syncCalls(): Promise<Set<string>> {
  const path = join(folder, 'sync.book');
  const log = `${path}.strace`;
  copyFileSync(template, path);
  await startWriter({ path, plan: PLAN }, [
    'strace',
    '-f',
    '-qq',
    '-o',
    log,
    '-e',
    'trace=fsync,fdatasync',
    '-P',
    path,
  ]).said;
  return new Set(
    [...readFileSync(log, 'utf8').matchAll(/\b(fsync|fdatasync)\(/g)].map(([, call]) => call as string),
  );
}

test('of all lies of the disk none becomes an acknowledgement that is not true', async () => {
  const [sync, ...others] = [...(await syncCalls())];
  expect(others).toEqual([]);
  const jobs = [
    ...lies('pwrite64', 'error=EIO', 12, ['3+', '20+']),
    ...lies('pwrite64', 'error=ENOSPC', 12, ['3+', '20+']),
    ...lies(sync as string, 'error=EIO', 9, ['2+', '4+']),
    ...lies('ftruncate', 'error=EIO', 5, ['2+']),
    ...lies('openat', 'error=EMFILE', 2, ['1+']),
    ...lies('openat', 'error=EACCES', 2),
    ...lies('pread64', 'error=EIO', 6),
    ...lies('pwrite64', 'signal=KILL', 6),
    ...lies(sync as string, 'signal=KILL', 4),
    ...lies('ftruncate', 'signal=KILL', 3),
  ];
  const told = await inPairs(jobs, (lie, at) => tellLie(lie, at));
  const wrong = told.filter(({ fault }) => fault !== null);
  const fired = told.filter(({ injected }) => injected > 0);
  tellAll(told, sync as string);
  expect(wrong.map(nameOf)).toEqual([]);
  expect(
    told.filter(({ said }) => said.errors.some((error) => error.startsWith('UNCLEAR'))).map(nameOf),
  ).toEqual([]);
  expect(told.length).toBeGreaterThanOrEqual(60);
  expect(fired.length).toBeGreaterThanOrEqual(60);
  for (const call of new Set(jobs.map((job) => `${job.call} ${job.how}`)))
    expect(fired.filter((each) => `${each.call} ${each.how}` === call).length, call).toBeGreaterThan(0);
  holdStops(told, sync as string);
  const counts = {
    runs: told.length,
    'runs that were hit': fired.length,
    'faults injected': told.reduce((sum, each) => sum + each.injected, 0),
    'false acknowledgements': wrong.length,
  };
  recordCounts('lying-disk', import.meta.filename, { counts });
});

test('control: a writer that acknowledges what then fails is found out', async () => {
  for (const how of ['error=EIO', 'error=ENOSPC']) {
    const told = await tellLie({ call: 'pwrite64', how, when: '1+' }, 1000, true);
    expect(told.injected).toBeGreaterThan(0);
    expect(told.fault).toMatch(/lost: acknowledged/);
  }
});

/** What the writer said after each kind of lie. */
function holdStops(told: readonly Told[], sync: string): void {
  const afterSync = told.filter(
    ({ call, how, injected }) => call === sync && how === 'error=EIO' && injected > 0,
  );
  for (const lie of afterSync) {
    expect(lie.said.errors[0], nameOf(lie)).toBe('disk-error');
    // Nothing more is written: every append after the first fault is refused with the reason.
    expect(new Set(lie.said.errors.slice(1)), nameOf(lie)).toEqual(
      new Set(lie.said.errors.length > 1 ? ['writing-stopped'] : []),
    );
    const first = lie.said.lines.findIndex((line) => line.startsWith('err'));
    expect(
      lie.said.lines.slice(first).filter((line) => line.startsWith('ack')),
      nameOf(lie),
    ).toEqual([]);
  }
  expect(afterSync.length).toBeGreaterThanOrEqual(5);
  const full = told.filter(({ how, injected }) => how === 'error=ENOSPC' && injected > 0);
  for (const lie of full) expect(lie.said.errors[0], nameOf(lie)).toBe('disk-full');
  // A full disk is no broken one: when there is room again, the next append goes through.
  expect(
    full.filter(
      ({ said, when }) => !when.endsWith('+') && said.errors.length === 1 && said.acks >= PLAN.length - 1,
    ).length,
  ).toBeGreaterThan(3);
}

function tellAll(told: readonly Told[], sync: string): void {
  const injected = told.reduce((sum, each) => sum + each.injected, 0);
  const codes = new Map<string, number>();
  for (const { said, call, how } of told)
    for (const error of said.errors)
      codes.set(`${call} ${how} → ${error}`, (codes.get(`${call} ${how} → ${error}`) ?? 0) + 1);
  console.log(
    `lies of the disk: ${told.length} runs, ${told.filter((each) => each.injected > 0).length} of them hit, ${injected} faults injected; syncs by ${sync}\n` +
      [...codes].map(([code, count]) => `  ${code} ×${count}`).join('\n'),
  );
}

function nameOf({ call, how, when, fault, said }: Told): string {
  return `${call} ${how} when ${when}: ${fault ?? ''} [${said.lines.join('; ')}] ${said.stderr.slice(0, 300)}`;
}
