// The start of a book: its outpost file as the first entry; for practice, the invented outpost's log behind it.
import { entryOf, kindVersion, readDraft } from '../book/index.ts';
import { parseInstantIso } from '../ground/units/index.ts';
import { readOutpost } from '../outpost/index.ts';
import { type Answer, no, yes } from './answer.ts';
import type { Desk, Moment } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { type ImportResult, importLines } from './exchange.ts';

/** Reads an outpost file before there is a book for it: its name, and the name that its entries may be numbered under. */
export function readOutpostFile(file: {
  readonly name: string;
  readonly text: string;
}): Answer<{ outpost: string; site: string }> {
  const read = readOutpost(file.text, { file: file.name });
  if (!read.ok) return no('bad input', ...read.findings);
  const { name } = read.outpost.outpost;
  return yes({ outpost: name, site: siteOf(name) });
}

/** `Lunar Base 2` becomes `lunar-base-2`; a name without a letter of a to z becomes `outpost`. */
function siteOf(name: string): string {
  const site = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, MOST_SITE_LETTERS)
    .replace(/^-+|-+$/g, '');
  return site === '' ? 'outpost' : site;
}

const MOST_SITE_LETTERS = 31;

/** Puts the outpost file into an empty book. What happens before Day 1 belongs to the file's own date. */
export async function startBook(
  desk: Desk,
  moment: Moment,
  file: { readonly name: string; readonly text: string },
): Promise<Answer<{ outpost: string }>> {
  const entries = await desk.port.count();
  if (entries > 0) return no('bad input', deskFinding('book-not-empty', { entries }));
  return putOutpostFile(desk, moment, file);
}

/** Another outpost file for a book that has one: an entry like any other, the older ones stay readable. */
export async function putOutpostFile(
  desk: Desk,
  moment: Moment,
  file: { readonly name: string; readonly text: string; readonly reason?: string },
): Promise<Answer<{ outpost: string }>> {
  const read = readOutpost(file.text, { file: file.name });
  if (!read.ok) return no('bad input', ...read.findings);
  const atMs =
    (await desk.port.count()) === 0
      ? firstMs(desk, moment, read.outpost.outpost.dayOne)
      : await enteringMs(desk, moment);
  const draft = readDraft({
    id: desk.newId(atMs),
    version: kindVersion('outpost'),
    kind: 'outpost',
    happenedAtMs: atMs,
    happenedOffsetMin: moment.offsetMin,
    enteredAtMs: atMs,
    enteredOffsetMin: moment.offsetMin,
    by: moment.by,
    body: file.reason === undefined ? { text: file.text } : { text: file.text, reason: file.reason },
  });
  if (!draft.ok) return no('bad input', ...draft.findings);
  const kept = await desk.keep([draft.draft], moment);
  return kept.ok ? yes({ outpost: read.outpost.outpost.name }) : kept;
}

/** The outpost file that counts now, as it was put in. */
export async function outpostText(desk: Desk): Promise<Answer<string>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  let text = '';
  for await (const rows of desk.port.scan({ order: 'total', kinds: ['outpost'] })) {
    for (const row of rows) {
      const entry = entryOf(row);
      if (entry.kind === 'outpost') text = entry.body.text;
    }
  }
  return yes(text);
}

function firstMs(desk: Desk, moment: Moment, date: string): number {
  const dayOne = parseInstantIso(`${date}T00:00Z`);
  return desk.info.purpose === 'practice' && dayOne.ok
    ? dayOne.instant.utcMs - PRACTICE_LEAD_MS
    : moment.nowUtcMs;
}

async function enteringMs(desk: Desk, moment: Moment): Promise<number> {
  const opened = await desk.account();
  return opened.ok ? desk.enteringMs(opened.value.fold, moment) : moment.nowUtcMs;
}

/** The practice book's file lies a day before its Day 1, so that every instant of the log comes after it. */
const PRACTICE_LEAD_MS = 86_400_000;

/** Makes the practice book from the invented outpost's file and field log. */
export async function startPractice(
  desk: Desk,
  moment: Moment,
  files: {
    readonly outpost: { readonly name: string; readonly text: string };
    readonly log: { readonly name: string; readonly lines: readonly string[] };
    readonly untilDay?: number;
  },
): Promise<Answer<ImportResult>> {
  const started = await startBook(desk, moment, files.outpost);
  if (!started.ok) return started;
  return importLines(desk, moment, {
    file: files.log.name,
    lines: files.log.lines,
    sure: true,
    ...(files.untilDay !== undefined && { untilDay: files.untilDay }),
  });
}
