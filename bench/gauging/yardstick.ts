// The same gaugings by python3-uncertainties, timed by itself; null where it is not to be had.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import type { InjectionTold } from '../../src/ground/physics/index.ts';

export interface GaugedElsewhere {
  readonly name: string;
  readonly ms: number;
  /** Value and u of each, one after the other. */
  readonly figures: readonly number[];
}

/** Debian puts its packages with this interpreter, whatever else is first on the path. */
const PYTHONS = ['/usr/bin/python3', 'python3'];

export function gaugedInPython(told: readonly InjectionTold[]): GaugedElsewhere | null {
  const input = told.map((each) => JSON.stringify(each)).join('\n');
  for (const python of PYTHONS) {
    const script = join(import.meta.dirname, 'gauged.py');
    const ran = spawnSync(python, [script], { input, encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
    if (ran.status !== 0) continue;
    const { ms, figures } = JSON.parse(ran.stdout) as Omit<GaugedElsewhere, 'name'>;
    return { name: `${told.length} gaugings in python3-uncertainties, with every part`, ms, figures };
  }
  return null;
}
