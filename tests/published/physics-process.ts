// What the tables of electrolysis, heating, solutions and beds are held against.
import { ELECTROLYSIS } from './physics-electrolysis.ts';
import { SOLUTION } from './physics-solution.ts';
import type { Subject } from './subject.ts';

export const PHYSICS_PROCESS: Readonly<Record<string, Subject>> = {
  ...ELECTROLYSIS,
  ...SOLUTION,
};
