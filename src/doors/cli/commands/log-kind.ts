// `log KIND`: an entry of any kind that has no command of its own, field by field or from a file.
import { COMMAND_OF_KIND, formKinds, formOf } from '../../../desk/index.ts';
import { nearest } from '../../../ground/units/index.ts';
import type { Call } from '../call.ts';
import { EXIT } from '../exit-code.ts';
import { secondWords } from '../find-command.ts';
import { readInput } from '../input-file.ts';
import { keepFor } from '../keep.ts';
import { fieldList } from '../kind-fields.ts';
import type { Sheet } from '../outcome.ts';
import { badInput, CliProblem, wrongUse } from '../problem.ts';

export async function run(call: Call): Promise<Sheet> {
  const kind = call.arg(0);
  holdKind(call, kind);
  const fields = await fieldsOf(call, kind);
  try {
    return await keepFor(call, { what: 'told', kind, fields });
  } catch (error) {
    const isMissing =
      error instanceof CliProblem &&
      error.exitCode === EXIT.wrongUse &&
      error.findings.every(({ code }) => code === 'field-needed');
    if (!isMissing) throw error;
    const problem = new CliProblem(EXIT.wrongUse, error.findings, [`Fields of ${kind}:`, ...fieldList(kind)]);
    problem.context = error.context;
    throw problem;
  }
}

function holdKind(call: Call, kind: string): void {
  const own = formOf(kind) === null ? undefined : COMMAND_OF_KIND[kind as keyof typeof COMMAND_OF_KIND];
  if (own !== undefined) throw wrongUse('kind-has-command', { kind, command: own });
  if (formOf(kind) === null) {
    const names = [...new Set<string>([...secondWords('log'), ...formKinds])];
    const near = nearest(kind, names).map((word) => `log ${word}`);
    throw wrongUse('command-unknown', { name: `log ${kind.slice(0, 60)}`, nearest: near });
  }
  const [, extra] = call.args;
  if (extra === undefined) return;
  const data = {
    received: extra.slice(0, 60),
    command: `log ${kind}`,
    example: `waterwright help log ${kind}`,
  };
  throw wrongUse('argument-extra', data);
}

/** `--from` names a file, unless the kind has a place that the water comes from. */
async function fieldsOf(call: Call, kind: string): Promise<Readonly<Record<string, unknown>>> {
  const typed = Object.fromEntries(call.fields);
  const flag = formOf(kind)?.some(({ name }) => name === 'from') === true ? 'from-file' : 'from';
  const { [flag]: file, ...rest } = typed;
  if (file === undefined) {
    holdFields(kind, Object.keys(rest));
    return rest;
  }
  const [other] = Object.keys(rest);
  if (other !== undefined) throw wrongUse('flags-clash', { first: `--${flag}`, second: `--${other}` });
  return readObject(await readInput(call, file));
}

function holdFields(kind: string, typed: readonly string[]): void {
  const names = (formOf(kind) ?? []).map(({ name }) => name);
  const unknown = typed.find((name) => !names.includes(name));
  if (unknown === undefined) return;
  const near = nearest(unknown, names).map((name) => `--${name}`);
  throw wrongUse('flag-unknown', {
    flag: `--${unknown.slice(0, 60)}`,
    command: `log ${kind}`,
    nearest: near,
  });
}

function readObject({
  name,
  text,
}: {
  readonly name: string;
  readonly text: string;
}): Readonly<Record<string, unknown>> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw badInput('json-unreadable', { received: (error as Error).message.slice(0, 120) }, { file: name });
  }
  if (typeof value === 'object' && value !== null && !Array.isArray(value))
    return value as Record<string, unknown>;
  throw badInput(
    'json-unreadable',
    { received: Array.isArray(value) ? 'a list' : typeof value },
    { file: name },
  );
}
