// From bytes to text: UTF-8, or UTF-16 where a byte order mark says so; anything else is refused, never patched.
import { firstBadLine } from './first-bad-line.ts';
import { TableFault } from './table-fault.ts';

export function decoded(bytes: Uint8Array): string {
  const [encoding, from] = encodingOf(bytes);
  const text = strictly(bytes.subarray(from), encoding);
  const nul = text.indexOf('\0');
  if (nul >= 0) throw new TableFault('table-no-text', { says: 'zero bytes' }, { line: lineAt(text, nul) });
  return text;
}

function encodingOf(bytes: Uint8Array): readonly [encoding: 'utf-8' | 'utf-16le' | 'utf-16be', from: number] {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return ['utf-8', 3];
  if (first === 0xff && second === 0xfe) return ['utf-16le', 2];
  if (first === 0xfe && second === 0xff) return ['utf-16be', 2];
  return ['utf-8', 0];
}

function strictly(bytes: Uint8Array, encoding: 'utf-8' | 'utf-16le' | 'utf-16be'): string {
  try {
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    const where = encoding === 'utf-8' ? { line: firstBadLine(bytes) } : {};
    throw new TableFault('table-no-text', { says: `no ${encoding.toUpperCase()}` }, where);
  }
}

/** The number of the line in which a place of a text lies. */
export function lineAt(text: string, place: number): number {
  let line = 1;
  for (let at = text.indexOf('\n'); at >= 0 && at < place; at = text.indexOf('\n', at + 1)) line += 1;
  return line;
}
