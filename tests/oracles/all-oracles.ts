// Table of all that the physics is held against; a subject brings its list in a file of its own.
import { GAUGING_ORACLES } from './gauging.ts';
import type { Oracle } from './oracle.ts';
import { WATER_ORACLES } from './water.ts';

export const ORACLES: readonly Oracle[] = [...WATER_ORACLES, ...GAUGING_ORACLES];
