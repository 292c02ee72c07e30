// Files that people give: caps hold while bytes come, so that nothing too large is ever held; a wrong byte is told by its line.
import { expect, test } from 'vitest';
import { Call } from './call.ts';
import { linesOf, readInput } from './input-file.ts';
import { CliProblem } from './problem.ts';
import type { Terminal } from './terminal.ts';

/** Standard input that counts what was asked of it. */
function callWith(pieces: Iterable<Uint8Array>): { readonly call: Call; taken: () => number } {
  let taken = 0;
  const counted = function* () {
    for (const piece of pieces) {
      taken += piece.length;
      yield piece;
    }
  };
  const terminal = { env: {}, cwd: '/', readStdin: () => counted() } as unknown as Terminal;
  return { call: new Call(terminal, null, { flags: new Map() }), taken: () => taken };
}

const bytes = (text: string) => new TextEncoder().encode(text);
const problemOf = async (pieces: Iterable<Uint8Array>) => {
  const { call, taken } = callWith(pieces);
  const error = await readInput(call, '-').then(
    () => null,
    (caught: unknown) => caught,
  );
  const [finding] = error instanceof CliProblem ? error.findings : [];
  return { code: finding?.code, line: finding?.where.line, taken: taken() };
};

function* endless(piece: Uint8Array): Iterable<Uint8Array> {
  for (;;) yield piece;
}

test('text comes whole, letters that are split between pieces too, and a byte order mark is none of it', async () => {
  const whole = bytes('\uFEFF± é\n2\n');
  const { call } = callWith([...whole].map((byte) => Uint8Array.of(byte)));
  expect(await readInput(call, '-')).toEqual({ name: 'standard input', text: '± é\n2\n' });
  expect(linesOf('a\nb\n')).toEqual(['a', 'b']);
  expect(linesOf('a\n\nb')).toEqual(['a', '', 'b']);
});

test('an endless line ends the reading at a megabyte, endless lines at twenty', async () => {
  const long = await problemOf(endless(bytes('x'.repeat(100_000))));
  expect(long).toEqual({ code: 'line-of-file-too-long', line: 1, taken: 1_100_000 });
  const many = await problemOf(endless(bytes(`${'x'.repeat(99_999)}\n`)));
  expect(many.code).toBe('input-file-too-large');
  expect(many.taken).toBeLessThanOrEqual(20_100_000);
});

test('a byte that is no UTF-8 is told with its line', async () => {
  expect(await problemOf([bytes('a\nb\n'), Uint8Array.of(0xff, 0x0a), bytes('c\n')])).toMatchObject({
    code: 'file-not-text',
    line: 3,
  });
});
