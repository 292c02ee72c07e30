// What stops a command: findings with an exit code.
import type { Answer, Problem } from '../../desk/index.ts';
import type { Finding, FindingData, Where } from '../../ground/units/index.ts';
import type { CliFindingCode, DeskFindingCode, WordsContext } from '../../papers/index.ts';
import { EXIT, type ExitCode, exitOfProblem } from './exit-code.ts';

/** Thrown by a command that cannot go on; the frame puts it into words. */
export class CliProblem extends Error {
  override readonly name = 'CliProblem';
  readonly exitCode: ExitCode;
  readonly findings: readonly Finding[];
  /** Lines after the findings: a list of what there is to choose from. */
  readonly after: readonly string[];
  /** What the words need to know; set by whoever has the book open. */
  context: Partial<WordsContext> = {};

  constructor(exitCode: ExitCode, findings: readonly Finding[], after: readonly string[] = []) {
    super(findings.map(({ code }) => code).join(' '));
    this.exitCode = exitCode;
    this.findings = findings;
    this.after = after;
  }
}

/** Ctrl-C at a prompt. */
export class Stopped extends Error {
  override readonly name = 'Stopped';
  readonly said: readonly string[];

  constructor(said: readonly string[] = []) {
    super('stopped');
    this.said = said;
  }
}

export function cliFinding(
  code: CliFindingCode,
  data: FindingData = {},
  where: Where = {},
): Finding<CliFindingCode> {
  return { code, severity: 'error', where, data, entries: [] };
}

export function wrongUse(code: CliFindingCode, data: FindingData = {}, where: Where = {}): CliProblem {
  return new CliProblem(EXIT.wrongUse, [cliFinding(code, data, where)]);
}

export function badInput(code: CliFindingCode, data: FindingData = {}, where: Where = {}): CliProblem {
  return new CliProblem(EXIT.badInput, [cliFinding(code, data, where)]);
}

/** What the desk would say no to, found at the door. */
export function stopWith(
  problem: Problem,
  code: DeskFindingCode,
  data: FindingData,
  where: Where = {},
): CliProblem {
  return new CliProblem(exitOfProblem(problem), [{ code, severity: 'error', where, data, entries: [] }]);
}

/** The value of an answer, or the problem that it is. */
export function orStop<T>(answer: Answer<T>): T {
  if (answer.ok) return answer.value;
  throw new CliProblem(exitOfProblem(answer.problem), answer.findings);
}
