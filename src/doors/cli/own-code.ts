// Asking a person for a code: hidden at a terminal, or a line of standard input where somebody said so; never from a flag.
import { type Answer, askedAtLast, confirmSecond, type Desk, type Moment } from '../../desk/index.ts';
import { codeLabels } from '../../papers/index.ts';
import type { Call } from './call.ts';
import { linesOf, readInput } from './input-file.ts';
import { Stopped, wrongUse } from './problem.ts';

/** Why there is no code: nobody could be asked, or nobody typed one. */
export type NoCode = 'not asked' | 'not typed';
export type Typed = { readonly code: string } | NoCode;

const FLAG = 'codes-from-stdin';

/** One question on a line of its own. */
export async function askCode(call: Call, prompt: string): Promise<Typed> {
  const { terminal } = call;
  if (call.has(FLAG) && !terminal.stdinIsTty) return codeFromLine(call);
  if (!call.mayAsk()) return 'not asked';
  const reply = await terminal.askHidden(prompt);
  if (reply === 'stopped') throw new Stopped(['', 'Nothing was written.']);
  const said = typeof reply === 'string' ? '' : reply.said.trim();
  return said === '' ? 'not typed' : { code: said };
}

const linesOfCall = new WeakMap<Call, Promise<string[]>>();

/** The lines of standard input in the order in which the codes are asked for. An empty one is no code. */
async function codeFromLine(call: Call): Promise<Typed> {
  const inputs = [...call.args, call.text('from'), call.fields.get('from'), call.fields.get('from-file')];
  if (inputs.includes('-')) throw wrongUse('flags-clash', { first: `--${FLAG}`, second: '-' });
  const lines = linesOfCall.get(call) ?? readInput(call, '-').then(({ text }) => linesOf(text));
  linesOfCall.set(call, lines);
  const line = (await lines).shift()?.trim() ?? '';
  return line === '' ? 'not typed' : { code: line };
}

/** A second person who has a code is asked for it when nothing else speaks against the entry. */
export function withSecond(call: Call, desk: Desk, moment: Moment, office: string): Moment {
  const declared: Moment = { ...moment, second: { office, confirmation: 'declared, not verified' } };
  return askedAtLast(declared, () => confirmedSecond(call, desk, { office, nowUtcMs: moment.nowUtcMs }));
}

async function confirmedSecond(
  call: Call,
  desk: Desk,
  { office, nowUtcMs }: { readonly office: string; readonly nowUtcMs: number },
): Promise<Answer<NonNullable<Moment['second']>>> {
  if (!(await desk.codes.has(office))) return confirmSecond(desk, { office }, { nowUtcMs });
  const typed = await askCode(call, codeLabels.confirm(office));
  if (typeof typed === 'object') return confirmSecond(desk, { office, ...typed }, { nowUtcMs });
  call.notes.push(typed === 'not asked' ? codeLabels.notAsked(office) : codeLabels.notTyped(office));
  return confirmSecond(desk, { office }, { nowUtcMs });
}
