// A book opened for one command: the desk over it, who asks and when, and the words that findings need.
import type { BookPort } from '../../book/index.ts';
import { type CodeKeeper, Desk, type DeskTools, type Moment } from '../../desk/index.ts';

import type { WordsContext } from '../../papers/index.ts';
import { BookBusy, type DiskBook, findServer, nodeHash, openBook } from '../disk/index.ts';
import type { RemoteBook } from '../server/index.ts';
import { type BookPlace, needBook } from './book-path.ts';
import type { Call } from './call.ts';
import { keepNames } from './complete/keep-names.ts';
import { lineOf } from './find-command.ts';
import { shippedLimitFiles } from './limit-files.ts';
import { withSecond } from './own-code.ts';
import { CliProblem } from './problem.ts';
import { rememberedAccount } from './remembered-account.ts';
import { rememberingReader } from './remembered-outpost.ts';
import { shownPath } from './shown-path.ts';

export interface OpenBook {
  readonly place: BookPlace;
  readonly book: DiskBook | RemoteBook;
  readonly desk: Desk;
  readonly moment: Moment;
  readonly call: Call;
}

export async function openForCall(
  call: Call,
  place: BookPlace,
  how: { readonly write: boolean },
): Promise<OpenBook> {
  const book = await openAnyhow(call, place.path, how);
  const desk = await Desk.open(book, await toolsFor(call, book));
  const moment = momentOf(call);
  const second = call.text('second');
  return {
    place,
    book,
    desk,
    moment: second === undefined ? moment : withSecond(call, desk, moment, second),
    call,
  };
}

/** The file itself, or through the server that holds it: what is asked and answered is the same. */
async function openAnyhow(
  call: Call,
  path: string,
  { write }: { readonly write: boolean },
): Promise<DiskBook | RemoteBook> {
  const served = await openServed(call, path, { write });
  if (served !== null) return served;
  try {
    return await openBook(path, { owner: lineOf(call.command), readOnly: !write });
  } catch (error) {
    // A server may have taken the book in this very moment.
    const late = error instanceof BookBusy ? await openServed(call, path, { write }) : null;
    if (late === null) throw error;
    return late;
  }
}

/** Null where no server holds the book. */
export async function openServed(
  { terminal }: Call,
  path: string,
  { write }: { readonly write: boolean },
): Promise<RemoteBook | null> {
  const note = findServer(path);
  if (note === null) return null;
  const { RemoteBook: Remote } = await import('../server/index.ts');
  return Remote.open(path, note, { readOnly: !write, build: buildOf(terminal) });
}

/** A program that runs from its sources has no digest of them. */
export function buildOf({ build }: Call['terminal']): string {
  return build ?? 'from sources';
}

/** With what is remembered of this book between two commands. */
export async function toolsFor(
  call: Call,
  book: BookPort & { readonly codes: CodeKeeper },
): Promise<DeskTools> {
  const snapshots = rememberedAccount(call.terminal, (await book.info()).bookId);
  return { ...deskTools(call), codes: book.codes, ...(snapshots !== undefined && { snapshots }) };
}

export function deskTools({ terminal }: Call): DeskTools {
  return {
    hash: nodeHash,
    chance: () => terminal.chance(10),
    readOutpost: rememberingReader(terminal),
    limitFiles: shippedLimitFiles,
  };
}

/** Opens the book of a call, does the work, and closes it whatever happens. */
export async function withBook<T>(
  call: Call,
  how: { readonly write: boolean; readonly place?: BookPlace },
  work: (open: OpenBook) => Promise<T>,
): Promise<T> {
  const open = await openForCall(call, how.place ?? needBook(call), how);
  note(call, open.place);
  try {
    const done = await work(open);
    if (how.write) await keepNames(call.terminal, open.place.path, open.desk);
    return done;
  } catch (error) {
    if (error instanceof CliProblem) error.context = await wordsContext(open.desk).catch(() => ({}));
    throw error;
  } finally {
    open.book.close();
  }
}

/** Nobody named the practice book, so it is said that it was taken. */
function note(call: Call, place: BookPlace): void {
  if (!place.fallback && !call.has('verbose')) return;
  const line = `${place.fallback ? 'Practice book' : 'Book'}: ${shownPath(call.terminal.cwd, place.path)}`;
  if (!call.notes.includes(line)) call.notes.push(line);
}

/** How this outpost counts its days and its litres, for the sentences of a finding. */
export async function wordsContext(desk: Desk): Promise<Partial<WordsContext>> {
  const opened = await desk.account();
  return opened.ok ? { dayRule: opened.value.fold.dayRule, mgPerL: opened.value.fold.mgPerL } : {};
}

/** The office that speaks where nobody names one. */
const USUAL_OFFICE = 'keeper';

export function momentOf(call: Call): Moment {
  const { terminal } = call;
  return { nowUtcMs: terminal.now(), offsetMin: terminal.offsetMin(), by: call.text('by') ?? USUAL_OFFICE };
}
