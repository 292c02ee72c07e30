// The codes of why something may not follow in a run: refused as an intention, reported as a fact.
import type { Finding, FindingData } from '../ground/units/index.ts';

export type RunFindingCode =
  | 'run-not-begun'
  | 'run-begun-twice'
  | 'run-other-card'
  | 'run-ended'
  | 'run-stopped'
  | 'run-paused'
  | 'run-not-paused'
  | 'run-line-unknown'
  | 'run-line-closed'
  | 'run-line-order'
  | 'run-line-off'
  | 'run-line-not-off'
  | 'run-found-kind'
  | 'run-same-person'
  | 'run-second-missing'
  | 'run-must-pass'
  | 'run-must-pass-unknown'
  | 'run-skip-not-here'
  | 'run-reason-missing'
  | 'run-moved-missing'
  | 'run-lines-open';

export type RunFinding = Finding<RunFindingCode>;

export function runFinding(
  code: RunFindingCode,
  event: { readonly run: string; readonly id: string },
  data: FindingData = {},
): RunFinding {
  return {
    code,
    severity: 'error',
    where: { entry: event.id },
    data: { run: event.run, ...data },
    entries: [event.id],
  };
}
