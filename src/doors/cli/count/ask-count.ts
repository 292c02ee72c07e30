// Walks a person through a stock count, place by place; the book's figure is shown only after the reading.
import {
  type CountItem,
  type CountSheet,
  countLabels,
  promptInWords,
  signed,
  type TextOptions,
} from '../../../papers/index.ts';
import type { Terminal } from '../terminal.ts';

export interface AskCount {
  readonly terminal: Terminal;
  readonly sheet: CountSheet;
  readonly options: TextOptions;
  /** Takes one reading, keeps it safe, and says what the book has; or says why it was not taken. */
  readonly take: (item: CountItem, text: string, again: boolean) => Promise<Taken>;
}

export interface Taken {
  readonly says: readonly string[];
  /** `ask`: it is taken when it is typed again. */
  readonly outcome: 'taken' | 'ask' | 'wrong';
}

/** @returns whether everything was asked; false when the person left before */
export async function askCount(asking: AskCount): Promise<boolean> {
  const { sheet } = asking;
  say(asking, countLabels.walk);
  const all = sheet.places.flatMap(({ place, items }) => items.map((item) => ({ place, item })));
  const typed = new Map(all.flatMap(({ item }) => (item.typed === null ? [] : [[item.id, item.typed]])));
  let at = all.findIndex(({ item }) => !typed.has(item.id));
  let place = '';
  while (at >= 0 && at < all.length) {
    const next = all[at] as (typeof all)[number];
    if (next.place !== place) say(asking, next.place);
    place = next.place;
    const before = typed.get(next.item.id) ?? null;
    const answer = await askOne(asking, next.item, { place: at + 1, of: all.length, before });
    if (answer === 'leave') return false;
    if (answer === 'back') at = Math.max(0, at - 1);
    else {
      typed.set(next.item.id, answer.text);
      at += 1;
    }
  }
  return true;
}

type Answer = { readonly text: string } | 'back' | 'leave';

async function askOne(
  asking: AskCount,
  item: CountItem,
  at: { readonly place: number; readonly of: number; readonly before: string | null },
): Promise<Answer> {
  const prompt = signed(promptInWords(item, at), asking.options.style);
  let doubted: string | null = null;
  for (;;) {
    const reply = await asking.terminal.ask(prompt);
    if (typeof reply === 'string') return 'leave';
    const text = reply.said.trim();
    if (text === '<') return 'back';
    if (text === '' && at.before !== null) return { text: at.before };
    if (text === '') continue;
    const { says, outcome } = await asking.take(item, text, doubted === text);
    say(asking, ...says.map((line) => `  ${line}`));
    if (outcome === 'taken') return { text };
    doubted = outcome === 'ask' ? text : null;
  }
}

function say({ terminal, options }: AskCount, ...lines: readonly string[]): void {
  for (const line of lines) terminal.stderr.write(`${signed(line, options.style)}\n`);
}
