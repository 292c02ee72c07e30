// Grades whose run-out is asked about.
import { isDrawnOn, type Position } from '../account/index.ts';

/** Those that somebody draws on by a port or a unit. */
export function coveredGrades(position: Position): readonly string[] {
  const { outpost } = position.index;
  return outpost.grades.filter(isDrawnOn).map((grade) => grade.id);
}
