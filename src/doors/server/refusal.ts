// What a request ends with when it is not carried out: a status and its findings.
import type { Answer, Problem } from '../../desk/index.ts';
import type { Finding, FindingData, Where } from '../../ground/units/index.ts';
import type { CodeFindingCode, ServerFindingCode } from '../../papers/index.ts';
import { DiskProblem } from '../disk/index.ts';
import { PACE, TooManyCodes } from './code-pace.ts';
import { TooManyWaiting } from './in-turn.ts';

export type RefusalStatus = 400 | 401 | 403 | 404 | 405 | 409 | 413 | 415 | 421 | 422 | 423 | 429 | 500 | 503;

export interface Refusal {
  readonly status: RefusalStatus;
  readonly findings: readonly Finding[];
  /** Header lines that belong to it. */
  readonly headers?: Readonly<Record<string, string>>;
}

export function serverFinding(
  code: ServerFindingCode,
  data: FindingData = {},
  where: Where = {},
): Finding<ServerFindingCode> {
  return { code, severity: 'error', where, data, entries: [] };
}

export function refusal(
  status: RefusalStatus,
  code: ServerFindingCode,
  data: FindingData = {},
  where: Where = {},
): Refusal {
  return { status, findings: [serverFinding(code, data, where)] };
}

/** What was asked for could not be read: the request is at fault. What was to be kept could not: its data are. */
export function refusalOfAnswer(answer: Extract<Answer<never>, { ok: false }>, isWrite: boolean): Refusal {
  const status = answer.problem === 'bad input' && isWrite ? 422 : ofProblem[answer.problem];
  return { status, findings: answer.findings };
}

const ofProblem: Readonly<Record<Problem, RefusalStatus>> = {
  'bad input': 400,
  'wrong use': 400,
  'not in book': 404,
  refused: 409,
  'ask first': 409,
  'check failed': 409,
};

/** A fault of the program is told as one; what it says stays with the server, for it may name files of this machine. */
export function refusalOfError(error: unknown): Refusal {
  if (error instanceof TooManyCodes) return refusalOfPace(error);
  if (error instanceof TooManyWaiting) return refusal(503, 'server-crowded');
  if (error instanceof DiskProblem)
    return { status: error.code === 'book-busy' ? 423 : 500, findings: [withoutFolders(error.finding)] };
  return refusal(500, 'server-failed', { says: error instanceof Error ? error.name : 'unknown' });
}

/** Too many codes; and when there may be more. */
function refusalOfPace({ leftMs }: TooManyCodes): Refusal {
  const code: CodeFindingCode = 'code-too-often';
  const data = { leftMs, most: PACE.most };
  return {
    status: 429,
    findings: [{ code, severity: 'error', where: {}, data, entries: [] }],
    headers: { 'Retry-After': `${Math.ceil(leftMs / 1000)}` },
  };
}

/** A page learns the name of a file and not where it lies. */
function withoutFolders(finding: Finding): Finding {
  const bare = (text: string) => text.replaceAll(/(?:[A-Za-z]:)?(?:[\\/][^\\/\s"]+)+[\\/]/g, '');
  const { where, data } = finding;
  const plain = Object.entries(data).map(([key, value]) => [
    key,
    typeof value === 'string' ? bare(value) : value,
  ]);
  return {
    ...finding,
    where: where.file === undefined ? where : { ...where, file: bare(where.file) },
    data: Object.fromEntries(plain) as FindingData,
  };
}
