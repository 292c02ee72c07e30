// Starts a tool that npm installed, under the Node that runs this, and hears what it says.
import { spawn } from 'node:child_process';
import { join } from 'node:path';

export const ROOT = join(import.meta.dirname, '..', '..');

const FILES = {
  biome: 'node_modules/@biomejs/biome/bin/biome',
  knip: 'node_modules/knip/bin/knip.js',
  tsc: 'node_modules/typescript/bin/tsc',
  vitest: 'node_modules/vitest/vitest.mjs',
};

export interface Outcome {
  readonly status: number;
  readonly output: string;
}

export interface HowToRun {
  /** Whether the tool talks to the terminal itself; its output is then empty here. */
  readonly aloud?: boolean;
  readonly env?: Readonly<Record<string, string>>;
}

export function runTool(
  tool: keyof typeof FILES,
  words: readonly string[],
  { aloud = false, env = {} }: HowToRun = {},
): Promise<Outcome> {
  return new Promise((done, refuse) => {
    const child = spawn(process.execPath, [join(ROOT, FILES[tool]), ...words], {
      cwd: ROOT,
      stdio: aloud ? 'inherit' : ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...env },
    });
    let output = '';
    const hear = (text: Buffer): void => {
      output += text.toString();
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.on('error', refuse);
    child.on('close', (status) => done({ status: status ?? 1, output: output.trim() }));
  });
}
