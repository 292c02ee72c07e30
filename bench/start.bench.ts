// What a start costs: the launcher, Node and the help, beside Node with an empty program.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { type BenchRow, quantileOf, row } from './bench-row.ts';

const ROUNDS = 25;
const LAUNCHER = join(import.meta.dirname, '..', 'bin', 'waterwright');

/** Both are started in turn, so that what else the machine does falls on both alike. */
export function bench(): Promise<readonly BenchRow[]> {
  const bare: number[] = [];
  const help: number[] = [];
  timeOf(LAUNCHER, ['help']);
  for (let round = 0; round < ROUNDS; round += 1) {
    bare.push(timeOf(process.execPath, ['-e', '0']));
    help.push(timeOf(LAUNCHER, ['help']));
  }
  const bareMs = quantileOf(bare, 0.5);
  const helpMs = quantileOf(help, 0.5);
  return Promise.resolve([
    row({ name: 'empty program in Node, p50', value: bareMs, unit: 'ms' }),
    row({ name: 'help, p50', value: helpMs, unit: 'ms', goal: { most: 100 } }),
    row({ name: 'help, p90', value: quantileOf(help, 0.9), unit: 'ms' }),
    row({ name: 'help, p50', value: helpMs / bareMs, unit: '×', ratioOf: 'empty program in Node, p50' }),
  ]);
}

function timeOf(command: string, words: readonly string[]): number {
  const started = performance.now();
  const { status, stderr } = spawnSync(command, words, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${command} ${words.join(' ')} ended with ${status}: ${stderr.trim()}`);
  return performance.now() - started;
}
