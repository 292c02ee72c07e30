// A question that wants a yes: typed as a word, so that no slip of a finger says it.
import type { Finding } from '../../ground/units/index.ts';
import { signed, wordFinding } from '../../papers/index.ts';
import type { Call } from './call.ts';
import { Stopped } from './problem.ts';
import { textOptions } from './text-options.ts';

export async function saysYes(call: Call, findings: readonly Finding[]): Promise<boolean> {
  const { stderr } = call.terminal;
  const { style } = textOptions(call, 'stderr');
  for (const finding of findings) stderr.write(`${signed(questionOf(finding), style)}\n`);
  const reply = await call.terminal.ask('Type yes to go on: ');
  if (reply === 'stopped') throw new Stopped(['', 'Nothing was written.']);
  return typeof reply === 'object' && reply.said.trim().toLowerCase() === 'yes';
}

/** What would be done, without the sentence that nothing was done yet. */
function questionOf(finding: Finding): string {
  const { text, expected } = wordFinding(finding);
  const [first = expected] = text.split(/(?<=\.) /);
  return first;
}
