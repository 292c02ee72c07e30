// Sees to it that the programs of others are there against which the physics is held: Debian's Python and three packages.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { python } from '../oracles/ask-script.ts';

const MODULES = ['iapws', 'fluids', 'uncertainties'];
const PACKAGES = MODULES.map((name) => `python3-${name}`).join(' ');
const INSTALL = `apt-get update && apt-get install -y --no-install-recommends ${PACKAGES}`;

/** Installs them where that can be done; says what is missing where it cannot. */
export function makeSureOfOracles(): string | undefined {
  if (missing().length > 0 && canInstall()) install();
  const left = missing();
  if (left.length === 0) return undefined;
  return (
    `${python()} cannot import: ${left.join(', ')}. On Debian, as root: ${INSTALL}\n` +
    'Elsewhere, set WATERWRIGHT_PYTHON to a Python that has them.'
  );
}

function missing(): readonly string[] {
  const imports = (names: readonly string[]): boolean =>
    spawnSync(python(), ['-c', `import ${names.join(', ')}`]).status === 0;
  return imports(MODULES) ? [] : MODULES.filter((name) => !imports([name]));
}

function canInstall(): boolean {
  return process.getuid?.() === 0 && existsSync('/etc/debian_version');
}

function install(): void {
  console.error(`Installing what the physics is held against: ${INSTALL}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const { status, stderr } = spawnSync('sh', ['-c', INSTALL], { encoding: 'utf8', env });
  if (status !== 0) console.error(stderr.trim());
}
