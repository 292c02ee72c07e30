// What the tables of electrolysis, heating and solutions are held against.
import { ELECTROLYSIS } from './physics-electrolysis.ts';
import { HEAT } from './physics-heat.ts';
import { SOLUTION } from './physics-solution.ts';
import type { Subject } from './subject.ts';

export const PHYSICS_PROCESS: Readonly<Record<string, Subject>> = { ...ELECTROLYSIS, ...HEAT, ...SOLUTION };
