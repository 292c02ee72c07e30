// `book outpost`: the outpost file that counts now, or a changed one; the older ones stay in the book.
import { outpostText, putOutpostFile } from '../../../desk/index.ts';
import { outpostPutText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { readInput } from '../input-file.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { orStop } from '../problem.ts';

export async function run(call: Call): Promise<Outcome> {
  const [typed] = call.args;
  if (typed === undefined) {
    return withBook(call, { write: false }, async ({ desk }) => ({
      raw: [orStop(await outpostText(desk))],
    }));
  }
  const file = await readInput(call, typed);
  const reason = call.text('reason');
  return withBook(call, { write: true }, async ({ desk, moment }) => {
    const data = orStop(
      await putOutpostFile(desk, moment, { ...file, ...(reason !== undefined && { reason }) }),
    );
    return { schema: 'outpost', data, text: (options) => outpostPutText(data, options) };
  });
}
