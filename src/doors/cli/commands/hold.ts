// `hold list`, `hold show` and every act on a hold.
import {
  type Desk,
  type HoldAct,
  holdAct,
  holdList,
  holdShow,
  type MedicsKey,
  type Moment,
  openedByMedic,
} from '../../../desk/index.ts';
import { codeLabels, holdsText, holdText, keptText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { circumstancesOf } from '../keep.ts';
import { namesOf } from '../names-of.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { askCode } from '../own-code.ts';
import { orStop, wrongUse } from '../problem.ts';
import { sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  const word = call.command.path[1] ?? '';
  if (word === 'list') return list(call);
  if (word === 'show') return show(call);
  const act = acts[word];
  if (act === undefined) throw new Error(`no act is called ${call.command.path.join(' ')}`);
  return keep(call, act(call));
}

function list(call: Call): Promise<Outcome> {
  return withBook(call, { write: false }, async ({ desk, moment }) => {
    const sheet = orStop(await holdList(desk, await sightOf(call, desk, moment), moment));
    return { schema: 'holds', data: sheet, text: (options) => holdsText(sheet, options) };
  });
}

function show(call: Call): Promise<Outcome> {
  const drank = call.has('drank');
  // A try of a code is counted in the book file.
  return withBook(call, { write: drank }, async ({ desk, moment }) => {
    const sight = await sightOf(call, desk, moment);
    const query = { hold: call.arg(0), drank, ...(drank && { key: medicsKey(call, desk, moment) }) };
    const sheet = orStop(await holdShow(desk, query, sight, moment));
    return {
      schema: 'hold',
      data: sheet,
      text: (options) => holdText(sheet, options),
      findings: sheet.findings,
    };
  });
}

/** Opens with the code of the medic, which is asked for and stands in no flag; a wrong one ends the command. */
function medicsKey(call: Call, desk: Desk, moment: Moment): MedicsKey {
  return {
    opens: async () => {
      const typed = await askCode(call, codeLabels.confirm('medic'));
      return typeof typed === 'object' && orStop(await openedByMedic(desk, typed.code, moment));
    },
  };
}

function keep(call: Call, request: HoldAct): Promise<Outcome> {
  return withBook(call, { write: !call.has('dry-run') }, async ({ desk, moment }) => {
    const sheet = orStop(await holdAct(desk, moment, request, circumstancesOf(call, undefined)));
    return { schema: 'kept', data: sheet, text: (options) => keptText(sheet, options) };
  });
}

const acts: Readonly<Record<string, (call: Call) => HoldAct>> = {
  add: (call) => ({
    act: 'add',
    ...given(call, 'sample', 'reason', 'name'),
    ...(call.args.length > 0 && { stores: call.args }),
    ...(call.has('only') && { only: namesOf(call.text('only')) }),
    ...(call.has('conditional') && { conditional: namesOf(call.text('conditional')) }),
  }),
  release: releaseOf,
  waive: (call) => ({
    act: 'waive',
    hold: call.arg(0),
    stores: call.args.slice(1),
    reason: needed(call, 'reason', 'A waiver says why.'),
    until: needed(call, 'until', 'A waiver has an end.'),
  }),
  downgrade: (call) => ({
    act: 'downgrade',
    ...(call.args.length > 1 ? { hold: call.arg(0), store: call.arg(1) } : { store: call.arg(0) }),
    ...given(call, 'grade'),
  }),
  treat: (call) => ({ act: 'treat', store: call.arg(0), ...given(call, 'recipe', 'dose') }),
  park: (call) => ({
    act: 'park',
    hold: call.arg(0),
    owner: needed(call, 'owner', 'Somebody looks after parked water.'),
    until: needed(call, 'until', 'Parked water has a day on which it is decided.'),
    ...given(call, 'reason'),
  }),
  aside: (call) => ({
    act: 'aside',
    sample: call.arg(0),
    ...(call.args[1] !== undefined && { parameter: call.arg(1) }),
    reason: needed(call, 'reason', 'A result is set aside for a reason.'),
  }),
};

function releaseOf(call: Call): HoldAct {
  return {
    act: 'release',
    of: call.args,
    ...given(call, 'until'),
    ...(call.has('samples') && { samples: namesOf(call.text('samples')) }),
  };
}

function needed(call: Call, flag: string, because: string): string {
  const text = call.text(flag);
  if (text !== undefined) return text;
  throw wrongUse('flag-needed', { flag: `--${flag}`, command: call.command.path.join(' '), because });
}

/** The flags that were given, by name. */
function given<const Name extends string>(
  call: Call,
  ...names: readonly Name[]
): { readonly [K in Name]?: string } {
  const found = names.flatMap((name) => {
    const text = call.text(name);
    return text === undefined ? [] : [[name, text] as const];
  });
  return Object.fromEntries(found) as { readonly [K in Name]?: string };
}
