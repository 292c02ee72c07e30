// A finding with its words: the one shape for findings and errors.
import type { Severity, Where } from '../../ground/units/index.ts';
import type { Sentences } from '../words/shape.ts';

export interface WordedFinding extends Sentences {
  readonly code: string;
  readonly severity: Severity;
  readonly where: Where;
  readonly entries: readonly string[];
}
