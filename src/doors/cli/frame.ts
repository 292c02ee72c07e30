// The frame of every command: splits the words, runs the command, prints what it ends with, and turns problems into codes.
import { Call } from './call.ts';
import { EXIT, type ExitCode } from './exit-code.ts';
import { findCommand } from './find-command.ts';
import { loadCommand } from './load-command.ts';
import type { Outcome, Sheet } from './outcome.ts';
import { holdOutput, writeData } from './output.ts';
import { shownPath } from './shown-path.ts';
import type { Terminal } from './terminal.ts';
import { readTyped, type Typed } from './typed.ts';

/** Runs one command line and gives its exit code. */
export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  if (args[0] === '--complete') return completed(args.slice(1), terminal);
  const typed = readTyped(args);
  let call: Call | undefined;
  try {
    const early = await answerEarly(typed, terminal);
    if (early !== null) return early;
    const found = findCommand(typed);
    call = new Call(terminal, found, typed);
    await holdBefore(call);
    const { run } = await loadCommand(found.command);
    return await print(call, await run(call));
  } catch (error) {
    const { reportProblem } = await import('./report.ts');
    return reportProblem(error, { typed, terminal, call });
  }
}

/** A shell asks while somebody types: what goes wrong is nobody's business then. */
async function completed(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  try {
    const { complete } = await import('./complete/complete.ts');
    terminal.stdout.write(await complete(words, terminal));
    return EXIT.done;
  } catch {
    return EXIT.failure;
  }
}

/** Help and version, before anything else is looked at. */
async function answerEarly(typed: Typed, terminal: Terminal): Promise<ExitCode | null> {
  if (typed.flags.has('version')) {
    const { versionLine } = await import('./version.ts');
    terminal.stdout.write(versionLine());
    return EXIT.done;
  }
  if (typed.words.length > 0 && !typed.flags.has('help')) return null;
  const { helpFor } = await import('./help.ts');
  terminal.stdout.write(await helpFor(typed.words));
  return EXIT.done;
}

/** What can be wrong with how it is to be printed is found before anything is done. */
async function holdBefore(call: Call): Promise<void> {
  call.oneOf('fail-on', LEVELS);
  if (call.has('units') || call.has('width')) {
    const { textOptions } = await import('./text-options.ts');
    textOptions(call, 'stdout');
  }
  holdOutput(call);
}

async function print(call: Call, outcome: Outcome): Promise<ExitCode> {
  if ('raw' in outcome) {
    const path = await writeData(call, outcome.raw, outcome.fileName);
    // A plot is not seen where it goes to a file, and in a folder nobody typed its name.
    if (path !== undefined && outcome.fileName !== undefined) call.notes.push(writtenTo(call, path));
  }
  if ('schema' in outcome) await writeData(call, [await sheetText(call, outcome)]);
  if (!call.has('json')) await talk(call, outcome);
  return 'schema' in outcome ? codeOf(call, outcome) : EXIT.done;
}

function writtenTo({ terminal }: Call, path: string): string {
  return `Written: ${shownPath(terminal.cwd, path)}`;
}

async function talk(call: Call, outcome: Outcome): Promise<void> {
  const { stderr } = call.terminal;
  const beside = 'beside' in outcome ? (outcome.beside ?? []) : [];
  if (beside.length > 0) {
    const [{ findingsText }, { textOptions }] = await Promise.all([
      import('../../papers/index.ts'),
      import('./text-options.ts'),
    ]);
    stderr.write(findingsText(beside, textOptions(call, 'stderr')));
  }
  if (call.has('quiet')) return;
  for (const line of [...call.notes, ...(outcome.talk ?? [])]) stderr.write(`${line}\n`);
}

async function sheetText(call: Call, { schema, data, text }: Sheet): Promise<string> {
  if (call.has('json')) return `${JSON.stringify({ schema, version: 1, data })}\n`;
  const { textOptions } = await import('./text-options.ts');
  return text(textOptions(call, 'stdout'));
}

/** Levels from the lightest on. */
const LEVELS = ['know', 'act-today', 'act-now'] as const;

function codeOf(call: Call, { failed, findings = [] }: Sheet): ExitCode {
  if (failed === true) return EXIT.checkFailed;
  const level = call.oneOf('fail-on', LEVELS);
  if (level === undefined) return EXIT.done;
  const grave: readonly string[] = ['error', ...LEVELS.slice(LEVELS.indexOf(level))];
  return findings.some(({ severity }) => grave.includes(severity)) ? EXIT.checkFailed : EXIT.done;
}
