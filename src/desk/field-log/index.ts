// The reader of field logs, as the rest of the desk uses it.
export type { FieldLogFinding } from './log-finding.ts';
export type { EarlierLog } from './opening-facts.ts';
export { type FieldLogRead, type FieldLogRequest, readFieldLog, type UnreadLine } from './read-field-log.ts';
