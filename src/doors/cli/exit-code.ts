// Exit codes: what a script learns from the end of a command; the table stands in docs/command-line.md.
import type { Problem } from '../../desk/index.ts';

export const EXIT = {
  done: 0,
  failure: 1,
  wrongUse: 2,
  badInput: 3,
  refused: 4,
  notInBook: 5,
  checkFailed: 6,
  bookBusy: 75,
  stopped: 130,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];

const ofProblem: Readonly<Record<Problem, ExitCode>> = {
  'bad input': EXIT.badInput,
  refused: EXIT.refused,
  'not in book': EXIT.notInBook,
  'check failed': EXIT.checkFailed,
  'wrong use': EXIT.wrongUse,
  // Nobody could be asked: the command has to say yes by itself.
  'ask first': EXIT.wrongUse,
};

export function exitOfProblem(problem: Problem): ExitCode {
  return ofProblem[problem];
}

/** By the code of a finding of the disk; what is not named is a failure of the machine under the book. */
const ofDisk: ReadonlyMap<string, ExitCode> = new Map<string, ExitCode>([
  ['book-busy', EXIT.bookBusy],
  ['server-silent', EXIT.bookBusy],
  ['server-refused', EXIT.bookBusy],
  ['server-of-other-build', EXIT.bookBusy],
  ['book-missing', EXIT.wrongUse],
  ['folder-missing', EXIT.wrongUse],
  ['not-a-file', EXIT.wrongUse],
  ['book-exists', EXIT.wrongUse],
  ['backup-exists', EXIT.wrongUse],
  ['receipt-left', EXIT.wrongUse],
  ['not-a-book', EXIT.badInput],
  ['book-foreign', EXIT.badInput],
  ['book-empty', EXIT.badInput],
  ['book-newer', EXIT.badInput],
  ['book-damaged', EXIT.checkFailed],
  ['book-altered', EXIT.checkFailed],
  ['page-damaged', EXIT.checkFailed],
  ['receipt-foreign', EXIT.checkFailed],
  ['receipt-unreadable', EXIT.checkFailed],
  ['backup-not-equal', EXIT.checkFailed],
  ['writing-stopped', EXIT.checkFailed],
]);

export function exitOfDisk(code: string): ExitCode {
  return ofDisk.get(code) ?? EXIT.failure;
}
