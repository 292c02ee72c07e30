// Table of all that the physics is held against; a subject brings its list in a file of its own.
import { FLOW_ORACLES } from './flow.ts';
import { LIQUID_ORACLES } from './liquid-water.ts';
import { MOIST_AIR_ORACLES } from './moist-air.ts';
import type { Oracle } from './oracle.ts';
import { WATER_ORACLES } from './water.ts';

export const ORACLES: readonly Oracle[] = [
  ...LIQUID_ORACLES,
  ...MOIST_AIR_ORACLES,
  ...WATER_ORACLES,
  ...FLOW_ORACLES,
];
