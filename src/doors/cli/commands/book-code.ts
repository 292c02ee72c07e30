// `book code set` and `book code list`: the codes by which a second person confirms.
import { type CodePlan, type CodeSetting, codeList, planCode, setCode } from '../../../desk/index.ts';
import { codeLabels, codeSetText, codesText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { EXIT } from '../exit-code.ts';
import { type OpenBook, withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { askCode } from '../own-code.ts';
import { CliProblem, orStop } from '../problem.ts';

export function run(call: Call): Promise<Outcome> {
  if (call.command.path[2] === 'list') return withBook(call, { write: false }, list);
  return withBook(call, { write: !call.has('dry-run') }, set);
}

async function list({ desk, moment }: OpenBook): Promise<Outcome> {
  const sheet = orStop(await codeList(desk, moment));
  return { schema: 'codes', data: sheet, text: (options) => codesText(sheet, options) };
}

async function set({ call, desk, moment }: OpenBook): Promise<Outcome> {
  const by = call.text('by');
  const setting: CodeSetting = {
    office: call.arg(0),
    ...(by !== undefined && { by }),
    ...(call.has('lost') && { lost: { second: call.text('second') } }),
  };
  // Nobody types a code for what would be refused anyway.
  const plan = orStop(await planCode(desk, setting));
  if (call.has('dry-run')) {
    return { schema: 'code-plan', data: plan, text: () => `${codeLabels.wouldBeFit}\n` };
  }
  const own = await ownCodes(call, setting.office, plan);
  const fresh = await freshCode(call, setting.office);
  const sheet = orStop(await setCode(desk, moment, setting, { fresh, own }));
  return { schema: 'kept', data: sheet, text: (options) => codeSetText(sheet, options) };
}

/** The codes that have to be given before the new one, each on its own line. */
async function ownCodes(call: Call, office: string, plan: CodePlan): Promise<ReadonlyMap<string, string>> {
  const own = new Map<string, string>();
  for (const each of plan.asks) {
    const prompt = each === office ? codeLabels.old(each) : codeLabels.own(each);
    own.set(each, await needCode(call, { office: each, prompt, what: 'asked' }));
  }
  return own;
}

/** Typed twice, for nobody sees what was typed; a line of a program is what it is. */
async function freshCode(call: Call, office: string): Promise<string> {
  const code = await needCode(call, { office, prompt: codeLabels.fresh(office), what: 'set' });
  if (!call.mayAsk()) return code;
  const again = await needCode(call, { office, prompt: codeLabels.again, what: 'set' });
  if (again !== code) throw stopWithCode(EXIT.wrongUse, 'code-twice-unlike', { office });
  return code;
}

async function needCode(
  call: Call,
  { office, prompt, what }: { readonly office: string; readonly prompt: string; readonly what: string },
): Promise<string> {
  const typed = await askCode(call, prompt);
  if (typeof typed === 'object') return typed.code;
  throw stopWithCode(EXIT.wrongUse, 'code-not-given', { office, what });
}

function stopWithCode(
  exit: typeof EXIT.wrongUse,
  code: 'code-not-given' | 'code-twice-unlike',
  data: Readonly<Record<string, string>>,
): CliProblem {
  return new CliProblem(exit, [{ code, severity: 'error', where: {}, data, entries: [] }]);
}
