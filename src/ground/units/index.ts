// The door of ground/units: what other rooms may use.
export type { Finding, FindingData, Severity, Where } from './finding.ts';
