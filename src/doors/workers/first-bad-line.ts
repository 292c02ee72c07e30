// Where bytes stop being UTF-8: the number of the line, which is what a person looks for.

const LINE_END = 10;

/** Lines are counted from 1, and end where a byte says so in any reading. */
export function firstBadLine(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  for (let from = 0; from < bytes.length; line += 1) {
    const end = bytes.indexOf(LINE_END, from);
    const to = end < 0 ? bytes.length : end + 1;
    try {
      decoder.decode(bytes.subarray(from, to));
    } catch {
      return line;
    }
    from = to;
  }
  return line;
}
