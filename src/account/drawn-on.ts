// Grades whose run-out is a headline.
import type { Grade } from '../outpost/index.ts';

/** Grades that somebody draws on by a port or a unit: their run-out is a headline. */
export function isDrawnOn(grade: Grade): boolean {
  return !grade.terminal && !grade.emergencyOnly && grade.mayEnterUnits.length === 0;
}
