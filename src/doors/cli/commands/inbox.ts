// `inbox list`, `inbox show`, `inbox take` and `inbox drop`: lines that wait, and every way out for one.
import { inboxDrop, inboxList, inboxShow, inboxTake, type TakeFields } from '../../../desk/index.ts';
import { droppedText, inboxLineText, inboxText, takenText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { withBook } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { readPairs } from '../pairs.ts';
import { orStop, wrongUse } from '../problem.ts';

export function run(call: Call): Promise<Outcome> {
  const act = acts[call.command.path[1] ?? ''];
  if (act === undefined) throw new Error(`no act is called ${call.command.path.join(' ')}`);
  return act(call);
}

const acts: Readonly<Record<string, (call: Call) => Promise<Outcome>>> = {
  list: (call) =>
    withBook(call, { write: false }, async ({ desk }) => {
      const sheet = orStop(await inboxList(desk, { all: call.has('all') }));
      return { schema: 'inbox', data: sheet, text: (options) => inboxText(sheet, options) };
    }),
  show: (call) =>
    withBook(call, { write: false }, async ({ desk }) => {
      const line = orStop(await inboxShow(desk, call.arg(0)));
      return { schema: 'inbox-line', data: line, text: (options) => inboxLineText(line, options) };
    }),
  take: (call) => {
    const fields = fieldsOf(call);
    return withBook(call, { write: !call.has('dry-run') }, async ({ desk, moment }) => {
      const sheet = orStop(await inboxTake(desk, moment, { ref: call.arg(0), fields }));
      return { schema: 'inbox-taken', data: sheet, text: (options) => takenText(sheet, options) };
    });
  },
  drop: (call) => {
    const reason = call.text('reason');
    if (reason === undefined)
      throw wrongUse('flag-needed', {
        flag: '--reason',
        command: 'inbox drop',
        because: 'A line is dropped for a reason.',
      });
    return withBook(call, { write: !call.has('dry-run') }, async ({ desk, moment }) => {
      const asked = { ref: call.arg(0), reason, dryRun: call.has('dry-run') };
      const sheet = orStop(await inboxDrop(desk, moment, asked));
      return { schema: 'inbox-dropped', data: sheet, text: (options) => droppedText(sheet, options) };
    });
  },
};

/** Flags that are cells by their meaning. */
const CELLS = ['store', 'from', 'to', 'port', 'act', 'amount', 'grade'] as const;

function fieldsOf(call: Call): TakeFields {
  const [unit, happened, late, at] = ['unit', 'happened', 'late', 'at'].map((name) => call.text(name));
  const named = CELLS.flatMap((name) => {
    const text = call.text(name);
    return text === undefined ? [] : [[name, text] as const];
  });
  const cells = {
    ...Object.fromEntries(named),
    ...(at !== undefined && { time: at }),
    ...readPairs(call.texts('set'), '--set'),
  };
  return {
    cells,
    ...(unit !== undefined && { unit }),
    ...(happened !== undefined && { happened }),
    ...(late !== undefined && { late }),
    ...(call.has('dry-run') && { dryRun: true }),
  };
}
