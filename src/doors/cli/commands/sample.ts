// `sample add`, `sample result`, `sample list` and `sample show`.
import {
  type Answer,
  addResult,
  addSample,
  type RequestWith,
  type ResultRequest,
  type SampleRequest,
  sampleList,
  sampleShow,
} from '../../../desk/index.ts';
import {
  keptText,
  type ResultSheet,
  sampleResultText,
  samplesText,
  sampleText,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { EXIT } from '../exit-code.ts';
import { circumstancesOf } from '../keep.ts';
import { namesOf } from '../names-of.ts';
import { type OpenBook, withBook } from '../open-book.ts';
import type { Outcome, Sheet } from '../outcome.ts';
import { CliProblem, orStop, Stopped, wrongUse } from '../problem.ts';
import { saysYes } from '../says-yes.ts';
import { sightOf } from '../sight.ts';
import { textOptions } from '../text-options.ts';

export function run(call: Call): Promise<Outcome> {
  const act = acts[call.command.path[1] ?? ''];
  if (act === undefined) throw new Error(`no act is called ${call.command.path.join(' ')}`);
  return act(call);
}

const acts: Readonly<Record<string, (call: Call) => Promise<Outcome>>> = {
  list: (call) => {
    const most = call.wholeNumber('most', { least: 1, most: 100_000 });
    return withBook(call, { write: false }, async ({ desk, moment }) => {
      const query = most === undefined ? {} : { most };
      const sheet = orStop(await sampleList(desk, query, await sightOf(call, desk, moment), moment));
      return { schema: 'samples', data: sheet, text: (options) => samplesText(sheet, options) };
    });
  },
  show: (call) =>
    withBook(call, { write: false }, async ({ desk, moment }) => {
      const query = { sample: call.arg(0) };
      const sheet = orStop(await sampleShow(desk, query, await sightOf(call, desk, moment), moment));
      return { schema: 'sample', data: sheet, text: (options) => sampleText(sheet, options) };
    }),
  add: (call) => {
    const request = sampleOf(call);
    return withBook(call, { write: !call.has('dry-run') }, async ({ desk, moment }) => {
      const how = circumstancesOf(call, undefined);
      const answer = await addSample(desk, moment, request, how);
      const sheet = await asked(call, answer, () => addSample(desk, moment, request, { ...how, sure: true }));
      return { schema: 'kept', data: sheet, text: (options) => keptText(sheet, options) };
    });
  },
  result: (call) => {
    const request = resultOf(call);
    return withBook(call, { write: !call.has('dry-run') }, (open) => keepResult(open, request));
  },
};

function sampleOf(call: Call): SampleRequest {
  const text = (name: string) => call.text(name);
  const [sample, volume, drawnFrom] = [text('name'), text('volume'), text('drawn-from')];
  const [batch, duplicateOf] = [text('batch'), text('duplicate-of')];
  return {
    of: call.args,
    ...(sample !== undefined && { sample }),
    ...(volume !== undefined && { volume }),
    ...(drawnFrom !== undefined && { drawnFrom }),
    ...(batch !== undefined && { batch }),
    ...(duplicateOf !== undefined && { duplicateOf }),
    ...(call.has('tests') && { tests: namesOf(text('tests')) }),
    ...(call.has('bottles') && { bottles: namesOf(text('bottles')) }),
  };
}

function resultOf(call: Call): ResultRequest {
  const hold = call.oneOf('hold', ['all', 'only']);
  const [of = '', ...stores] = call.args;
  const [extra] = stores;
  if (hold !== 'only' && extra !== undefined)
    throw wrongUse('argument-extra', {
      received: extra.slice(0, 60),
      command: 'sample result',
      example: 'waterwright sample result SAMPLE --hold only STORE --reason REASON --second OFFICE',
    });
  const text = (name: string) => call.text(name);
  const [method, taken, store, reason, holdName] = ['method', 'taken', 'store', 'reason', 'name'].map(text);
  const custody = call.oneOf('custody', ['kept', 'broken']);
  const degassed = call.oneOf('degassed', ['yes', 'no']);
  return {
    of,
    figures: Object.fromEntries(call.fields),
    values: call.texts('value'),
    ...(method !== undefined && { method }),
    ...(taken !== undefined && { taken }),
    ...(store !== undefined && { store }),
    ...(reason !== undefined && { reason }),
    ...(holdName !== undefined && { holdName }),
    ...(custody !== undefined && { custody }),
    ...(degassed !== undefined && { degassed: degassed === 'yes' }),
    ...(call.has('laboratory') && { madeAt: 'laboratory' }),
    ...(call.has('preliminary') && { preliminary: true }),
    ...(hold !== undefined && { hold: hold === 'all' ? 'all' : stores }),
  };
}

/** What would be asked first is asked, where somebody sits in front of it. */
async function asked<T>(call: Call, answer: Answer<T>, again: () => Promise<Answer<T>>): Promise<T> {
  if (answer.ok || answer.problem !== 'ask first' || !call.mayAsk()) return orStop(answer);
  if (!(await saysYes(call, answer.findings)))
    throw new CliProblem(EXIT.wrongUse, [], ['Nothing was written.']);
  return orStop(await again());
}

async function keepResult(open: OpenBook, request: ResultRequest): Promise<Sheet> {
  const { desk, moment, call } = open;
  const how = circumstancesOf(call, undefined);
  const tried = await addResult(desk, moment, request, how);
  const isAsked = !tried.ok && tried.problem === 'ask first';
  const sure: RequestWith = isAsked ? { ...how, sure: true } : how;
  const answer = isAsked && call.mayAsk() ? await afterYes(open, request, { tried, sure }) : tried;
  if (answer.ok || !isUndecided(answer)) return sheetOf(orStop(answer));
  const tree = orStop(await addResult(desk, moment, request, { ...sure, dryRun: true }));
  if (!call.mayAsk()) throw new CliProblem(EXIT.refused, answer.findings, linesOf(call, tree));
  return sheetOf(await chosen(open, request, { tree, sure }));
}

async function afterYes(
  { desk, moment, call }: OpenBook,
  request: ResultRequest,
  { tried, sure }: { readonly tried: Answer<ResultSheet>; readonly sure: RequestWith },
): Promise<Answer<ResultSheet>> {
  if (tried.ok) return tried;
  if (!(await saysYes(call, tried.findings)))
    throw new CliProblem(EXIT.wrongUse, [], ['Nothing was written.']);
  return await addResult(desk, moment, request, sure);
}

function isUndecided(answer: Answer<ResultSheet>): boolean {
  return !answer.ok && answer.findings.some(({ code }) => code === 'hold-undecided');
}

function sheetOf(sheet: ResultSheet): Sheet {
  return {
    schema: 'result',
    data: sheet,
    text: (options) => sampleResultText(sheet, options),
    findings: sheet.entry.findings,
  };
}

/** The tree, for whoever is asked or refused. */
function linesOf(call: Call, tree: ResultSheet): readonly string[] {
  return ['', ...sampleResultText(tree, textOptions(call, 'stderr')).trimEnd().split('\n')];
}

const CHOICES = [
  '  1  hold all of it',
  '  2  hold fewer: name the stores, and say why; needs --second OFFICE',
  '  3  cancel: nothing is written',
] as const;

/** The three ways, of which nothing but a typed word takes one. */
async function chosen(
  open: OpenBook,
  request: ResultRequest,
  { tree, sure }: { readonly tree: ResultSheet; readonly sure: RequestWith },
): Promise<ResultSheet> {
  const { desk, moment, call } = open;
  const { stderr } = call.terminal;
  for (const line of [...linesOf(call, tree), '', ...CHOICES]) stderr.write(`${line}\n`);
  const word = await ask(call, '1, 2 or 3: ');
  if (word === '1') return orStop(await addResult(desk, moment, { ...request, hold: 'all' }, sure));
  if (word !== '2') throw new Stopped(['Nothing was written.']);
  const stores = namesOf((await ask(call, 'Hold only (commas between): ')).replace(/\s+/g, ','));
  const reason = await ask(call, 'Why fewer: ');
  return orStop(await addResult(desk, moment, { ...request, hold: stores, reason }, sure));
}

async function ask(call: Call, question: string): Promise<string> {
  const reply = await call.terminal.ask(question);
  if (typeof reply !== 'object') throw new Stopped(['', 'Nothing was written.']);
  return reply.said.trim();
}
