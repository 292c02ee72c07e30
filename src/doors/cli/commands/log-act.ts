// `log drink`, `log fill` and the other acts that have a command of their own.
import { type LogRequest, USES } from '../../../desk/index.ts';
import type { Call } from '../call.ts';
import { keepFor } from '../keep.ts';
import type { Outcome } from '../outcome.ts';
import { readPairs } from '../pairs.ts';
import { wrongUse } from '../problem.ts';

export function run(call: Call): Promise<Outcome> {
  const act = acts[call.command.path[1] ?? ''];
  if (act === undefined) throw new Error(`no act is called ${call.command.path.join(' ')}`);
  return keepFor(call, act(call));
}

const acts: Readonly<Record<string, (call: Call) => LogRequest>> = {
  drink: (call) => ({ what: 'drink', amount: call.arg(0), ...given(call, 'from', 'person') }),
  fill: (call) => ({
    what: 'fill',
    store: call.arg(0),
    ...second(call, 'amount'),
    ...given(call, 'from', 'hose', 'method'),
    also: call.texts('also'),
  }),
  move: (call) => ({
    what: 'move',
    amount: call.arg(0),
    ...given(call, 'from', 'to', 'hose', 'method'),
    also: call.texts('also'),
  }),
  use: (call) => ({
    what: 'use',
    amount: call.arg(0),
    use: call.oneOf('for', USES) ?? needed(call, 'for', `USE is one of: ${USES.join(', ')}.`),
    ...given(call, 'from', 'person'),
  }),
  make: (call) => ({ what: 'make', amount: call.arg(0), ...given(call, 'from', 'to') }),
  weigh: (call) => ({ what: 'weigh', store: call.arg(0), amount: call.arg(1) }),
  gauge: (call) => ({ what: 'gauge', store: call.arg(0), amount: call.arg(1) }),
  empty: emptyOf,
  full: (call) => ({ what: 'full', store: call.arg(0), ...second(call, 'amount') }),
  hookup: (call) => ({ what: 'hookup', store: call.arg(0), port: call.arg(1) }),
  relabel: (call) => ({ what: 'relabel', store: call.arg(0), grade: call.arg(1), ...given(call, 'photo') }),
  undo: (call) => ({
    what: 'undo',
    ...(call.args[0] !== undefined && { entry: call.args[0] }),
    ...given(call, 'reason'),
  }),
  correct: (call) => ({
    what: 'correct',
    entry: call.arg(0),
    ...correctedOf(call),
    reason: call.text('reason') ?? needed(call, 'reason', 'A correction says why.'),
  }),
  decide: (call) => ({
    what: 'decide',
    first: call.arg(0),
    second: call.arg(1),
    decision: decisionOf(call.arg(2)),
  }),
};

/** One amount, or readings of a line of meters. */
function correctedOf(call: Call): { value: string } | { readings: Readonly<Record<string, string>> } {
  call.holdApart('value', 'set');
  if (call.has('set')) return { readings: readPairs(call.texts('set'), '--set') };
  return {
    value:
      call.text('value') ??
      needed(call, 'value', 'The right amount, with its unit; of a line of meters --set NAME=VALUE.'),
  };
}

function emptyOf(call: Call): LogRequest {
  call.holdApart('flow-stopped', 'flow-goes-on');
  const left = call.text('left');
  const flow = call.has('flow-stopped') ? true : call.has('flow-goes-on') ? false : undefined;
  const counters = readPairs(call.texts('counter'), '--counter');
  return {
    what: 'empty',
    store: call.arg(0),
    ...(left !== undefined && { residual: left }),
    ...(flow !== undefined && { flowStopped: flow }),
    ...(Object.keys(counters).length > 0 && { counters }),
  };
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

function second<const Name extends string>(call: Call, name: Name): { readonly [K in Name]?: string } {
  const [, text] = call.args;
  return (text === undefined ? {} : { [name]: text }) as { readonly [K in Name]?: string };
}

function needed(call: Call, flag: string, because: string): never {
  throw wrongUse('flag-needed', { flag: `--${flag}`, command: call.command.path.join(' '), because });
}

function decisionOf(word: string): 'merge' | 'both are true' {
  if (word === 'merge') return 'merge';
  if (word === 'both') return 'both are true';
  const data = { flag: 'DECISION', received: word.slice(0, 60), wanted: ['merge', 'both'], nearest: [] };
  throw wrongUse('flag-value-wrong', data);
}
