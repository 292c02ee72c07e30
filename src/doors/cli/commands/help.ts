// `help`: the page for everything, or for one command.
import type { Call } from '../call.ts';
import { helpFor } from '../help.ts';
import type { Outcome } from '../outcome.ts';

export async function run(call: Call): Promise<Outcome> {
  return { raw: [await helpFor(call.args)] };
}
