// What the tables of beds, electrolysis, heating and solutions are held against.
import { BED } from './physics-bed.ts';
import { ELECTROLYSIS } from './physics-electrolysis.ts';
import { HEAT } from './physics-heat.ts';
import { SOLUTION } from './physics-solution.ts';
import type { Subject } from './subject.ts';

export const PHYSICS_PROCESS: Readonly<Record<string, Subject>> = {
  ...BED,
  ...ELECTROLYSIS,
  ...HEAT,
  ...SOLUTION,
};
