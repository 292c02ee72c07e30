// What the tests of faults need of the machine: said with the command that brings it, and never passed over in silence.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const PACKAGES = {
  strace: 'strace',
  'mkfs.ext4': 'e2fsprogs',
  mount: 'mount',
  prlimit: 'util-linux',
} as const;

/** @throws Error that names the command to install a tool that is not there */
export function need(tool: keyof typeof PACKAGES): void {
  const found = spawnSync('sh', ['-c', `command -v ${tool}`], {
    env: { ...process.env, PATH: `${process.env['PATH']}:/usr/sbin:/sbin` },
  });
  if (found.status === 0) return;
  throw new Error(
    `${tool} is not to be found. Install it, as root: apt-get install -y --no-install-recommends ${PACKAGES[tool]}`,
  );
}

/** @throws Error where file systems cannot be mounted */
export function needRoot(): void {
  if (process.getuid?.() === 0) return;
  throw new Error('This test mounts small file systems, which only root may do: run it with sudo.');
}

export function system(command: string, words: readonly string[]): string {
  const env = { ...process.env, PATH: `${process.env['PATH']}:/usr/sbin:/sbin` };
  return execFileSync(command, words, { encoding: 'utf8', env });
}

/** A new folder in memory where the machine has one, because thousands of images are written and thrown away. */
export function ramFolder(name: string): string {
  const ram = '/dev/shm';
  return mkdtempSync(join(existsSync(ram) ? ram : tmpdir(), `waterwright-${name}-`));
}
