// Puts questions to a script in Debian's Python: points go in as lines of JSON, values come out.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Point, Value } from '../../tests/oracles/oracle.ts';

export interface Asked {
  readonly ask: string;
  readonly point: Point;
}

/** A value, or why there is none. */
export type Answer = Value | { readonly fault: string };

const FOLDER = import.meta.dirname;
/** That of Debian, for which its packages are; another Python may stand before it on the path. */
const OF_DEBIAN = '/usr/bin/python3';

export function python(): string {
  return process.env['WATERWRIGHT_PYTHON'] ?? (existsSync(OF_DEBIAN) ? OF_DEBIAN : 'python3');
}

/** Answers in the order of the questions; the script runs once for all of them. */
export function askScript(script: string, asked: readonly Asked[]): readonly Answer[] {
  const input = asked.map(({ ask, point }) => `${JSON.stringify({ ...point, ask })}\n`).join('');
  const { stdout, stderr, status, error } = spawnSync(python(), ['-B', join(FOLDER, script)], {
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const lines = (stdout ?? '').split('\n').filter((line) => line !== '');
  if (lines.length === asked.length && status === 0) return lines.map((line) => JSON.parse(line) as Answer);
  const last = (stderr ?? '').trim().split('\n').at(-1);
  const fault = `${script} gave ${lines.length} answers to ${asked.length} questions and ended with ${status}: ${error?.message ?? last}`;
  return asked.map(() => ({ fault }));
}
