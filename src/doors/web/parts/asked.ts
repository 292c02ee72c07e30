// Whether an answer of the server is a question ("is it so?") and no refusal: what is asked first is told as no error.
import type { Problem } from '../entering.ts';

export function askedAbout({ status, findings }: Pick<Problem, 'status' | 'findings'>): boolean {
  return status === 409 && findings.length > 0 && findings.every(({ severity }) => severity !== 'error');
}
