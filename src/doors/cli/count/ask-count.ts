// Walks a person through a stock count, place by place; the book's figure is shown only after the reading.
import type { CountItem, CountSheet } from '../../../papers/index.ts';
import type { Terminal } from '../terminal.ts';

export interface AskCount {
  readonly terminal: Terminal;
  readonly sheet: CountSheet;
  /** Takes one reading, keeps it safe, and says what the book has; or says why it was not taken. */
  readonly take: (
    item: CountItem,
    text: string,
  ) => Promise<{ readonly taken: boolean; readonly says: string }>;
}

/** @returns whether everything was asked; false when the person left before */
export async function askCount({ terminal, sheet, take }: AskCount): Promise<boolean> {
  terminal.stderr.write('- is no reading, < goes back, Ctrl-C keeps what was typed for later.\n');
  const items = sheet.places.flatMap(({ place, items: here }) => here.map((item) => ({ place, item })));
  const todo = items.filter(({ item }) => item.typed === null);
  let place = '';
  let at = 0;
  while (at < todo.length) {
    const next = todo[at];
    if (next === undefined) break;
    if (next.place !== place) terminal.stderr.write(`${next.place}\n`);
    place = next.place;
    const reply = await terminal.ask(promptOf(next.item, at + 1, todo.length));
    if (typeof reply === 'string') return false;
    const text = reply.said.trim();
    if (text === '<') at = Math.max(0, at - 1);
    if (text === '<' || text === '') continue;
    const { taken, says } = await take(next.item, text);
    if (says !== '') terminal.stderr.write(`${says}\n`);
    if (taken) at += 1;
  }
  return true;
}

function promptOf({ kind, id, name, readBy }: CountItem, at: number, of: number): string {
  const about = [name === id ? '' : name, readBy].filter((text) => text !== '').join(', ');
  const unit = kind === 'part' ? 'how many' : 'content with its unit';
  return `  ${at}/${of}  ${id}${about === '' ? '' : ` (${about})`}, ${unit}: `;
}
