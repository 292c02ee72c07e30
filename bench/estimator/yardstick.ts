// The same updates outside the product: in C if there is a compiler, else in numpy, else not at all.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Work {
  readonly means: readonly number[];
  /** The lower triangle of the covariance, row after row. */
  readonly triangle: readonly number[];
  readonly readings: readonly { readonly place: number; readonly value: number; readonly u: number }[];
  readonly rounds: number;
}

export interface Yardstick {
  readonly name: string;
  readonly nsPerReading: number;
  /** Means, then the triangle, after the readings. */
  readonly result: readonly number[];
}

/** Null where neither is to be had. */
export function measuredOutside(work: Work): Yardstick | null {
  return inC(work) ?? inNumpy(work);
}

function inC(work: Work): Yardstick | null {
  const folder = mkdtempSync(join(tmpdir(), 'waterwright-bench-'));
  try {
    const program = join(folder, 'update');
    const source = join(import.meta.dirname, 'update.c');
    const compiled = spawnSync('gcc', ['-O2', '-o', program, source, '-lm'], { encoding: 'utf8' });
    if (compiled.error !== undefined) return null;
    // A compiler that is there and does not take the source is a fault, not a reason to measure something else.
    if (compiled.status !== 0) throw new Error(`gcc ended with ${compiled.status}: ${compiled.stderr}`);
    return outcome('the same update in C (gcc -O2)', spawnSync(program, optionsFor(work)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function inNumpy(work: Work): Yardstick | null {
  const ran = spawnSync('python3', [join(import.meta.dirname, 'update.py')], optionsFor(work));
  return ran.status === 0 ? outcome('the same update in numpy', ran) : null;
}

function optionsFor({ means, triangle, readings, rounds }: Work) {
  const numbers = [means.length, rounds, readings.length, ...means, ...triangle];
  for (const { place, value, u } of readings) numbers.push(place, value, u);
  return { input: numbers.join('\n'), encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 } as const;
}

function outcome(name: string, ran: { readonly status: number | null; readonly stdout: string }): Yardstick {
  if (ran.status !== 0) throw new Error(`${name} ended with ${ran.status}`);
  const [nsPerReading = Number.NaN, ...result] = ran.stdout.trim().split('\n').map(Number);
  return { name, nsPerReading, result };
}
