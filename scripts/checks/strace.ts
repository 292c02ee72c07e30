// Sees to it that strace is there and works: the power-cut tests rebuild a disk from the system calls that it records.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const INSTALL = 'apt-get update && apt-get install -y --no-install-recommends strace';

/** Installs strace where that can be done; says what is missing where it cannot. */
export function makeSureOfStrace(): string | undefined {
  if (process.platform !== 'linux')
    return 'The tests of injected faults need Linux: they record system calls with strace.';
  if (!isThere() && canInstall()) install();
  if (!isThere()) return `strace is not to be found. Install it, as root: ${INSTALL}`;
  const trial = spawnSync('strace', ['-f', '-o', '/dev/null', 'true'], { encoding: 'utf8' });
  return trial.status === 0
    ? undefined
    : `strace may not trace here; the system has to allow ptrace. It said: ${trial.stderr.trim()}`;
}

function isThere(): boolean {
  return spawnSync('strace', ['-V']).status === 0;
}

function canInstall(): boolean {
  return process.getuid?.() === 0 && existsSync('/etc/debian_version');
}

function install(): void {
  console.error(`Installing strace: ${INSTALL}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const { status, stderr } = spawnSync('sh', ['-c', INSTALL], { encoding: 'utf8', env });
  if (status !== 0) console.error(stderr.trim());
}
