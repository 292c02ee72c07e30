// Making a finding about a code.
import type { Finding, FindingData } from '../../ground/units/index.ts';
import type { CodeFindingCode } from '../../papers/index.ts';

export function codeFinding(code: CodeFindingCode, data: FindingData = {}): Finding<CodeFindingCode> {
  return { code, severity: 'error', where: {}, data, entries: [] };
}
