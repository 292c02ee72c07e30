// How strace is asked to record every change that a process makes to files.
import { RECORDED } from './system-calls.ts';

/** Bytes of a string that are recorded: more than any call writes. */
const LONGEST_STRING = '16777216';

export function straceWords(log: string): readonly string[] {
  return [
    ...['strace', '-f', '-qq', '-xx', '-s', LONGEST_STRING],
    ...['-e', `trace=${RECORDED}`, '-e', 'signal=none', '-o', log],
  ];
}
