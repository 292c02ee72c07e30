// The door of the desk: one function for each thing that a person may ask or do.

export type { OutpostReader } from '../account/index.ts';
export { readOutpost, USES } from '../outpost/index.ts';
export type { Answer, Problem } from './answer.ts';
export { bedList, bedShow } from './beds.ts';
export type { CodeCheck, CodeHolder, CodeKeeper, TryTerms } from './codes/code-keeper.ts';
export { codeList } from './codes/code-list.ts';
export {
  askedAtLast,
  confirmedBy,
  confirmSecond,
  momentWithSecond,
  openedByMedic,
  type SecondNamed,
} from './codes/confirm.ts';
export { type CodePlan, type CodeSetting, planCode, setCode } from './codes/set-code.ts';
export { type CondensateQuery, condensateSheet } from './condensate.ts';
export { countInBook, finishCount } from './count-finish.ts';
export { type CountReading, readCounted } from './count-reading.ts';
export { beginCount, type CountUnderWay, countSheet } from './count-sheet.ts';
export { allFindings, type BookQuery, closeDay, showBook } from './daybook.ts';
export {
  Desk,
  type DeskTools,
  dayRuleOf,
  type Moment,
  type NamedText,
  positionAt,
  type Sight,
} from './desk.ts';
export {
  checkWhole,
  digestOf,
  exportBook,
  exportHeader,
  type ImportRequest,
  type ImportResult,
  importLines,
  MANY_ENTRIES,
} from './exchange.ts';
export { readFieldLog } from './field-log/index.ts';
export { isTable } from './inbox/file-kind.ts';
export { importTable, type TableImport } from './inbox/import-table.ts';
export { inboxDrop, inboxList, inboxShow } from './inbox/inbox.ts';
export { readZone } from './inbox/meaning.ts';
export type { TableOptions } from './inbox/options.ts';
export type { Table, TableRow } from './inbox/table.ts';
export { inboxTake, type TakeFields } from './inbox/take-line.ts';
export { chooseLimits, type LimitsChoice } from './limits/choose.ts';
export { limitSetShow, limitSets, limitsInForce } from './limits/limits.ts';
export { type TypedRow, typeLimit } from './limits/type.ts';
export { type DayForm, type DayFormItem, dayForm } from './log/day-form.ts';
export { COMMAND_OF_KIND, findForm, formKinds, formOf, type KindField } from './log/kind-form.ts';
export { log } from './log/log.ts';
export type { LogRequest, RequestWith } from './log/request.ts';
export { type BookNames, bookNames } from './names.ts';
export { openFindings } from './open-findings.ts';
export { PAPER_NAMES, type PaperName, type PaperQuery, paper } from './papers/papers.ts';
export { holdAct } from './quality/hold-acts.ts';
export type { HoldAct } from './quality/hold-request.ts';
export { type HoldQuery, holdList, holdShow, type MedicsKey } from './quality/holds.ts';
export { qualityToday } from './quality/queue.ts';
export { addResult, type ResultRequest } from './quality/result-add.ts';
export { addSample, type SampleRequest } from './quality/sample-add.ts';
export { sampleList, sampleShow } from './quality/samples.ts';
export { qualityTrend } from './quality/trend.ts';
export type { TrendQuery } from './quality/trend-names.ts';
export { quirks } from './quirks.ts';
export { reckonOver } from './reckon/ask.ts';
export { reckonForms } from './reckon/forms.ts';
export { type ReckonRequest, reckon } from './reckon/reckon.ts';
export { readPastTime, readSight, type TypedTime } from './sight.ts';
export { type Look, lastEnteredMs, lookNow, since } from './since.ts';
export { outpostText, putOutpostFile, readOutpostFile, startBook, startPractice } from './start.ts';
export { type StoreQuery, storeList, storeShow } from './stores.ts';
export { today, todaySheet } from './today.ts';
export { bestReadings, worthOf } from './worth.ts';
