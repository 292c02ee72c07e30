// `quality limits` and what goes on with it: what is in force, the sets, a choice and a typed figure.
import {
  type Answer,
  chooseLimits,
  limitSetShow,
  limitSets,
  limitsInForce,
  type RequestWith,
  typeLimit,
} from '../../../desk/index.ts';
import { parseQuantity } from '../../../ground/units/index.ts';
import {
  limitSetsText,
  limitSetText,
  limitsChosenText,
  limitsText,
  limitTypedText,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { EXIT } from '../exit-code.ts';
import { circumstancesOf } from '../keep.ts';
import { ownLimitFiles } from '../limit-files.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { CliProblem, orStop, wrongUse } from '../problem.ts';
import { saysYes } from '../says-yes.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  const act = acts[call.command.path[2] ?? ''];
  if (act === undefined) throw new Error(`no act is called ${call.command.path.join(' ')}`);
  return act(call);
}

const acts: Readonly<Record<string, (call: Call) => Promise<Outcome>>> = {
  '': (call) =>
    withBook(call, { write: false }, async ({ desk, moment }) => {
      const sight = await sightOf(call, desk, moment);
      const sheet = orStop(await limitsInForce(desk, sight, moment));
      return { schema: 'limits', data: sheet, text: (options) => limitsText(sheet, options) };
    }),
  list: (call) =>
    withBook(call, { write: false }, async ({ desk, moment }) => {
      const sheet = orStop(await limitSets(desk, moment));
      return { schema: 'limit-sets', data: sheet, text: (options) => limitSetsText(sheet, options) };
    }),
  show: (call) =>
    withBook(call, { write: false }, async ({ desk, moment }) => {
      const sheet = orStop(await limitSetShow(desk, call.arg(0), moment));
      return { schema: 'limit-set', data: sheet, text: (options) => limitSetText(sheet, options) };
    }),
  choose,
  type,
};

async function choose(call: Call): Promise<Outcome> {
  const files = await ownLimitFiles(call);
  const [rows, reason] = [call.text('rows'), call.text('reason')];
  const exposureDays = readDays(call);
  if (reason === undefined && !call.has('dry-run'))
    throw needed('reason', 'Limits are chosen for a reason.', call);
  const choice = {
    sets: call.args,
    files,
    ...(rows !== undefined && { rows: namesIn(rows) }),
    ...(reason !== undefined && { reason }),
    ...(exposureDays !== undefined && { exposureDays }),
    ...(call.has('only') && { only: true }),
  };
  return withBook(call, { write: !call.has('dry-run') }, async ({ desk, moment }) => {
    const sheet = await ifSure(call, (more) => chooseLimits(desk, moment, choice, more));
    return { schema: 'limits-chosen', data: sheet, text: (options) => limitsChosenText(sheet, options) };
  });
}

async function type(call: Call): Promise<Outcome> {
  const [copy, atLeast, atMost, basis] = ['copy', 'at-least', 'at-most', 'basis'].map((name) =>
    call.text(name),
  );
  if (copy === undefined) throw needed('copy', 'A limit is typed from a copy: title, edition, page.', call);
  const typed = {
    ...{ set: call.arg(0), row: call.arg(1), copy, files: await ownLimitFiles(call) },
    ...(atLeast !== undefined && { atLeast }),
    ...(atMost !== undefined && { atMost }),
    ...(basis !== undefined && { basis }),
  };
  return withBook(call, { write: !call.has('dry-run') }, async ({ desk, moment }) => {
    const sheet = await ifSure(call, (more) => typeLimit(desk, moment, typed, more));
    return { schema: 'limit-typed', data: sheet, text: (options) => limitTypedText(sheet, options) };
  });
}

/** What would be asked first is asked, where somebody sits in front of it. */
async function ifSure<T>(call: Call, act: (more: RequestWith) => Promise<Answer<T>>): Promise<T> {
  const how = circumstancesOf(call, undefined);
  const answer = await act(how);
  if (answer.ok || answer.problem !== 'ask first' || !call.mayAsk()) return orStop(answer);
  if (!(await saysYes(call, answer.findings)))
    throw new CliProblem(EXIT.wrongUse, [], ['Nothing was written.']);
  return orStop(await act({ ...how, sure: true }));
}

function needed(flag: string, because: string, call: Call): Error {
  return wrongUse('flag-needed', { flag: `--${flag}`, command: call.command.path.join(' '), because });
}

const namesIn = (text: string): readonly string[] =>
  text
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');

/** `180d`: days of drinking. */
function readDays(call: Call): number | undefined {
  const text = call.text('exposure');
  if (text === undefined) return undefined;
  const read = parseQuantity(text, { units: ['d'], where: { field: 'exposure' } });
  if (!read.ok) throw new CliProblem(EXIT.badInput, [read.finding]);
  const { value } = read.quantity;
  if (value > 0) return value;
  throw wrongUse('flag-value-wrong', { flag: '--exposure', received: text, wanted: ['180d'], nearest: [] });
}
