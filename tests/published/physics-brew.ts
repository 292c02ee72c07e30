// What the tables of electrolysis, heating, solutions and beds are held against.
import { ELECTROLYSIS } from './physics-electrolysis.ts';
import { SOLUTION } from './physics-solution.ts';
import type { Subject } from './subject.ts';

export const ELECTROLYSIS_HEAT_SOLUTION_BED: Readonly<Record<string, Subject>> = {
  ...ELECTROLYSIS,
  ...SOLUTION,
};
