// What is different in a text from the sound one that it was made of: the lines taken out and the lines put in.

const MOST_LINES = 6;
const LONGEST_LINE = 110;

/** `- ` before a line of the sound text, `+ ` before what stands there instead. */
export function changedLines(sound: string, text: string): readonly string[] {
  const [before, after] = [sound.split('\n'), text.split('\n')];
  let head = 0;
  while (head < before.length && head < after.length && before[head] === after[head]) head += 1;
  let tail = 0;
  const room = Math.min(before.length, after.length) - head;
  while (tail < room && before.at(-1 - tail) === after.at(-1 - tail)) tail += 1;
  const out = before.slice(head, before.length - tail);
  const put = after.slice(head, after.length - tail);
  // Nothing of the sound text is left: then the text itself is what was given.
  if (head === 0 && tail <= 1) return few(after.filter((line) => line !== ''));
  return [...few(out.map((line) => `- ${line}`)), ...few(put.map((line) => `+ ${line}`))];
}

/** The first lines, each short enough to read. */
export function few(lines: readonly string[], most = MOST_LINES): readonly string[] {
  const shown = lines.slice(0, most).map(short);
  return lines.length > most ? [...shown, `… ${lines.length - most} more lines`] : shown;
}

function short(line: string): string {
  if (line.length <= LONGEST_LINE) return line;
  return `${line.slice(0, LONGEST_LINE - 30)} … (${line.length} signs)`;
}
