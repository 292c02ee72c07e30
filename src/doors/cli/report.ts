// Puts what stopped a command into words on standard error, and gives its exit code.
import type { Finding } from '../../ground/units/index.ts';
import { findingsText, type TextOptions, type WordsContext, wordFinding } from '../../papers/index.ts';
import { StoreProblem } from '../disk/index.ts';
import { Call } from './call.ts';
import { EXIT, type ExitCode, exitOfDisk } from './exit-code.ts';
import { CliProblem, cliFinding, Stopped } from './problem.ts';
import { withShownPaths } from './shown-path.ts';
import type { Terminal } from './terminal.ts';
import { textOptions } from './text-options.ts';
import type { Typed } from './typed.ts';

interface Reported {
  readonly typed: Typed;
  readonly terminal: Terminal;
  /** Absent when the words named no command. */
  readonly call: Call | undefined;
}

export function reportProblem(error: unknown, about: Reported): ExitCode {
  const { terminal, call, typed } = about;
  if (error instanceof Stopped) {
    for (const line of error.said) terminal.stderr.write(`${line}\n`);
    return EXIT.stopped;
  }
  const { exitCode, findings, after, context } = problemOf(error);
  const worded = findings.map((finding) => wordFinding(withShownPaths(terminal.cwd, finding), context));
  if (typed.flags.has('json')) {
    terminal.stderr.write(`${JSON.stringify({ schema: 'error', version: 1, data: worded })}\n`);
  } else {
    for (const note of call?.notes ?? []) terminal.stderr.write(`${note}\n`);
    terminal.stderr.write(findingsText(worded, optionsOf(about)));
    for (const line of after) terminal.stderr.write(`${line}\n`);
  }
  if (typed.flags.has('verbose') && exitCode === EXIT.failure && error instanceof Error) {
    terminal.stderr.write(`${error.stack ?? ''}\n`);
  }
  return exitCode;
}

interface Problem {
  readonly exitCode: ExitCode;
  readonly findings: readonly Finding[];
  readonly after: readonly string[];
  readonly context: Partial<WordsContext>;
}

function problemOf(error: unknown): Problem {
  if (error instanceof CliProblem) return error;
  const nothing = { after: [], context: {} };
  if (error instanceof StoreProblem) {
    return { exitCode: exitOfDisk(error.finding.code), findings: [error.finding], ...nothing };
  }
  const says = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  const findings = [cliFinding('program-failed', { says: says.slice(0, 500) })];
  return { exitCode: EXIT.failure, findings, ...nothing };
}

/** The options of the call, unless they are themselves what is wrong. */
function optionsOf({ terminal, call, typed }: Reported): TextOptions {
  try {
    return textOptions(call ?? new Call(terminal, null, typed), 'stderr');
  } catch {
    return { width: 80, style: 'ascii', colour: false, units: 'L' };
  }
}
