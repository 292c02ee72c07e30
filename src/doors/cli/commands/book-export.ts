// `book export`: the book as JSON Lines, whole or from where the reader's own book stands.
import { exportBook } from '../../../desk/index.ts';
import { exportedText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { writeData } from '../output.ts';
import { wrongUse } from '../problem.ts';
import { textOptions } from '../text-options.ts';
import { readWholeNumber } from '../whole-number.ts';

export function run(call: Call): Promise<Outcome> {
  const since = call.texts('since').map(readSince);
  // Written while the book is open: a book of any length is never held whole.
  return withBook(call, { write: false }, async ({ desk }) => {
    const count = { lines: 0 };
    await writeData(call, lineByLine(exportBook(desk, since), count));
    const file = call.text('output');
    return { written: true, talk: file === undefined ? [] : [told(call, file, count.lines)] };
  });
}

function told(call: Call, file: string, lines: number): string {
  return exportedText(file, lines - 1, textOptions(call, 'stderr')).trimEnd();
}

async function* lineByLine(lines: AsyncIterable<string>, count: { lines: number }): AsyncIterable<string> {
  for await (const line of lines) {
    count.lines += 1;
    yield `${line}\n`;
  }
}

/** `corrie:240`: what that site's entries up to 240 are known already. */
function readSince(text: string): { readonly site: string; readonly number: number } {
  const match = /^([a-z0-9][a-z0-9-]{0,30})[: ](\d{1,9})$/.exec(text.trim());
  if (match?.[1] === undefined || match[2] === undefined) {
    const wanted = ['SITE:N, such as corrie:240'];
    throw wrongUse('flag-value-wrong', { flag: '--since', received: text.slice(0, 60), wanted, nearest: [] });
  }
  return {
    site: match[1],
    number: readWholeNumber(match[2], { flag: '--since', least: 0, most: 999_999_999 }),
  };
}
