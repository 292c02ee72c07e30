// Table of all that the physics is held against; a subject brings its list in a file of its own.
import { BED_ORACLES } from './bed.ts';
import { CENSORED_ORACLES } from './censored.ts';
import { COUNTING_ORACLES } from './counting.ts';
import { FLOW_ORACLES } from './flow.ts';
import { GAUGING_ORACLES } from './gauging.ts';
import { HEAT_ORACLES } from './heat.ts';
import { LIQUID_ORACLES } from './liquid-water.ts';
import { MOIST_AIR_ORACLES } from './moist-air.ts';
import type { Oracle } from './oracle.ts';
import { SOLUTION_ORACLES } from './solution.ts';
import { WATER_ORACLES } from './water.ts';

export const ORACLES: readonly Oracle[] = [
  ...BED_ORACLES,
  ...COUNTING_ORACLES,
  ...CENSORED_ORACLES,
  ...FLOW_ORACLES,
  ...GAUGING_ORACLES,
  ...HEAT_ORACLES,
  ...SOLUTION_ORACLES,
  ...WATER_ORACLES,
  ...LIQUID_ORACLES,
  ...MOIST_AIR_ORACLES,
];
