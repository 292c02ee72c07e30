// Making a finding of the desk.
import type { Finding, FindingData, Severity, Where } from '../ground/units/index.ts';
import type { DeskFindingCode } from '../papers/index.ts';

export function deskFinding(
  code: DeskFindingCode,
  data: FindingData = {},
  more: { readonly where?: Where; readonly severity?: Severity; readonly entries?: readonly string[] } = {},
): Finding<DeskFindingCode> {
  return {
    code,
    severity: more.severity ?? 'error',
    where: more.where ?? {},
    data,
    entries: more.entries ?? [],
  };
}
