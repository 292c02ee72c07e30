// The outpost file that a book carries: the text that was entered last, read once.
import { type Amendments, amend, type BookPort, entryOf, type View } from '../book/index.ts';
import {
  indexOutpost,
  type OutpostFinding,
  type OutpostIndex,
  type ReadOutpost,
  readOutpost,
} from '../outpost/index.ts';

export type OutpostOfBook =
  | { ok: true; index: OutpostIndex }
  | { ok: false; findings: readonly OutpostFinding[] | null };

/** Reads the text of an outpost file; a door may bring one that remembers what a text came to. */
export type OutpostReader = (text: string) => ReadOutpost;

const readText: OutpostReader = (text) => readOutpost(text, { file: 'outpost file in the book' });

/** Reading a file costs more than folding a year of entries, and each view of a book asks for the same one: the last is kept. */
let lastRead: { readonly text: string; readonly outcome: OutpostOfBook } | null = null;

/** The outpost of a book in a view. `findings: null` says that the book has no outpost file yet. */
export async function outpostOfBook(
  port: BookPort,
  view: View,
  amendments: Amendments,
  read: OutpostReader = readText,
): Promise<OutpostOfBook> {
  const text = await outpostText(port, view, amendments);
  if (text === null) return { ok: false, findings: null };
  if (lastRead?.text === text) return lastRead.outcome;
  const outpost = read(text);
  const outcome: OutpostOfBook = outpost.ok
    ? { ok: true, index: indexOutpost(outpost.outpost) }
    : { ok: false, findings: outpost.findings };
  lastRead = { text, outcome };
  return outcome;
}

async function outpostText(port: BookPort, view: View, amendments: Amendments): Promise<string | null> {
  let latest: { enteredAtMs: number; text: string } | null = null;
  for await (const rows of port.scan({ order: 'total', kinds: ['outpost'] })) {
    for (const row of rows) {
      if (view.knownAtMs !== undefined && row.enteredAtMs > view.knownAtMs) continue;
      const entry = amend(entryOf(row), amendments);
      if (entry?.kind === 'outpost' && (latest === null || entry.enteredAtMs >= latest.enteredAtMs)) {
        latest = { enteredAtMs: entry.enteredAtMs, text: entry.body.text };
      }
    }
  }
  return latest?.text ?? null;
}
