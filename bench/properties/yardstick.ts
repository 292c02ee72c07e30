// The same properties by python3-iapws, in the same run; null where that package is not to be had.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

export interface States {
  readonly states: readonly (readonly [temperatureK: number, pressurePa: number])[];
  readonly densityKgPerM3: number;
}

export interface Measured {
  readonly nsPerCall: number;
  readonly values: readonly number[];
}

/** That of Debian, for which its packages are; another Python may stand before it on the path. */
const OF_DEBIAN = '/usr/bin/python3';

export function measuredInPython(work: States): Readonly<Record<string, Measured>> | null {
  const python = existsSync(OF_DEBIAN) ? OF_DEBIAN : 'python3';
  const script = join(import.meta.dirname, 'properties.py');
  const run = spawnSync(python, ['-B', script], {
    input: JSON.stringify(work),
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  if (run.error !== undefined || /No module named/.test(run.stderr)) return null;
  // A package that is there and does not answer is a fault, not a reason to measure something else.
  if (run.status !== 0) throw new Error(`properties.py ended with ${run.status}: ${run.stderr}`);
  return JSON.parse(run.stdout) as Record<string, Measured>;
}
