// Sees to it that the programs of others are there against which the physics is held: Debian's Python with three packages, and its R with one.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { python } from '../oracles/ask-script.ts';

const MODULES = ['iapws', 'fluids', 'uncertainties'];
/** A package of R, and what Debian calls it. */
const OF_R = 'survival';
const PACKAGES = [...MODULES.map((name) => `python3-${name}`), 'r-base-core', `r-cran-${OF_R}`].join(' ');
const INSTALL = `apt-get update && apt-get install -y --no-install-recommends ${PACKAGES}`;

/** Installs them where that can be done; says what is missing where it cannot. */
export function makeSureOfOracles(): string | undefined {
  if (missing().length > 0 && canInstall()) install();
  const left = missing();
  if (left.length === 0) return undefined;
  return (
    `${python()} or Rscript cannot load: ${left.join(', ')}. On Debian, as root: ${INSTALL}\n` +
    'Elsewhere, set WATERWRIGHT_PYTHON to a Python that has them, and have Rscript on the path.'
  );
}

function missing(): readonly string[] {
  const imports = (names: readonly string[]): boolean =>
    spawnSync(python(), ['-c', `import ${names.join(', ')}`]).status === 0;
  const ofPython = imports(MODULES) ? [] : MODULES.filter((name) => !imports([name]));
  const { status } = spawnSync('Rscript', ['--vanilla', '-e', `library(${OF_R})`]);
  return status === 0 ? ofPython : [...ofPython, OF_R];
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
