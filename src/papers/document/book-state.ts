// The foot of a paper: the state of the book that it was made from, its seal, and what ± means.
import { paperLabels as words } from '../words/en/papers-quality.ts';
import type { PaperDocument } from './document.ts';

/** Signs of a digest that are printed: 16 of them tell any two books apart in practice, and `book check` has it whole. */
const SHOWN = 16;
const GROUP = 4;

/** `3F9A-01C2-77B0-E4D1` */
export function saidSeal(digest: string): string {
  const shown = digest.slice(0, SHOWN).toUpperCase();
  return (shown.match(new RegExp(`.{1,${GROUP}}`, 'g')) ?? []).join('-');
}

/** One line for the margin of every page. */
export function bookState({ head, book }: PaperDocument): string {
  return words.bookState(head, { ...book, seal: saidSeal(book.digest) });
}

/** Under the paper itself. */
export function footLines(document: PaperDocument): readonly string[] {
  const { head } = document;
  return [words.footPaper(document), words.footView(head), bookState(document), words.convention].filter(
    (line) => line !== '',
  );
}
