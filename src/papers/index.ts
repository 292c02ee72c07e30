// The door of the papers: what other rooms may use.
export { bedTable } from './csv/bed-table.ts';
export { documentTable } from './csv/document-table.ts';
export { gaugingTable } from './csv/gauging-table.ts';
export { trendTable } from './csv/trend-table.ts';
export {
  type BookSeal,
  type DocumentCell,
  type DocumentColumn,
  type DocumentPart,
  type DocumentTable,
  type PaperDocument,
  tablesOf,
} from './document/document.ts';
export { certificatePaper } from './document/quality/certificate.ts';
export { holdNoticePaper } from './document/quality/hold-notice.ts';
export { holdReleasePaper } from './document/quality/hold-release.ts';
export { sampleSheetPaper } from './document/quality/sample-sheet.ts';
export { trendSheetPaper } from './document/quality/trend-sheet.ts';
export { documentHtml } from './html/document.ts';
export type { PaperSize } from './html/style.ts';
export type { BegunSheet, CheckedSheet, CopiedSheet, ImportedSheet } from './sheets/acts.ts';
export { type Band, bandWithin } from './sheets/band.ts';
export type {
  BedAdvice,
  BedBand,
  BedCauseLine,
  BedChangeLine,
  BedDates,
  BedDay,
  BedDecision,
  BedFeed,
  BedLine,
  BedParameter,
  BedPlot,
  BedReading,
  BedSheet,
  BedsSheet,
  BedVerdict,
} from './sheets/beds.ts';
export type {
  BiocideAge,
  BiocideDays,
  BiocideResult,
  BiocideSheet,
  LifeSheet,
  RedoseSheet,
  StandingLine,
} from './sheets/biocide.ts';

export type { BookLine, BookSheet, KeptSheet } from './sheets/book.ts';
export type { CodeLine, CodesSheet } from './sheets/codes.ts';
export type {
  CondensateFound,
  CondensateLine,
  CondensateRun,
  CondensateSheet,
  CondensateVerdict,
} from './sheets/condensate.ts';
export type {
  CountedPart,
  CountedStore,
  CountItem,
  CountResult,
  CountSheet,
  CountTakenSheet,
  TakenReading,
} from './sheets/count.ts';
export type { Because, SheetFigure } from './sheets/figure.ts';
export type { WordedFinding } from './sheets/finding.ts';
export type {
  DrankLine,
  DrunkSum,
  EffectLine,
  HeldStore,
  HoldLine,
  HoldOrigin,
  HoldSheet,
  HoldsSheet,
  HoldTree,
  TouchFate,
  TouchHop,
  TouchLine,
  TraceSheet,
  WaitingOn,
} from './sheets/holds.ts';
export type {
  DroppedSheet,
  InboxLine,
  InboxSheet,
  PossibleReading,
  TableColumn,
  TableLine,
  TableSheet,
  TakenSheet,
} from './sheets/inbox.ts';
export type {
  LimitClash,
  LimitGrade,
  LimitHold,
  LimitLine,
  LimitSetLine,
  LimitSetLines,
  LimitSetSheet,
  LimitSetsSheet,
  LimitSides,
  LimitsChosenSheet,
  LimitsEffect,
  LimitsSheet,
  LimitTypedSheet,
} from './sheets/limits.ts';
export type {
  CertificateSheet,
  HoldNoticeSheet,
  HoldReleaseSheet,
  LeftHold,
  PaperFigure,
  PaperRow,
  PaperWord,
  SamplePaperSheet,
  TrendPaperSheet,
} from './sheets/papers-quality.ts';
export type { EndingLine, QualitySheet, WaitingStore } from './sheets/quality.ts';
export type {
  Trend,
  TrendChart,
  TrendLimit,
  TrendMark,
  TrendParameter,
  TrendPattern,
  TrendPlace,
  TrendPoint,
  TrendSheet,
  TrendSignal,
  TrendTold,
} from './sheets/quality-trend.ts';
export type { Quirk, QuirkFacts, QuirkKind, QuirksSheet } from './sheets/quirks.ts';
export type {
  ReckonCaution,
  ReckonField,
  ReckonForm,
  ReckonForms,
  ReckonFormula,
  ReckonGivenBy,
  ReckonInput,
  ReckonResult,
  ReckonSheet,
} from './sheets/reckon.ts';
export type {
  DueLine,
  FigureLine,
  FigureVerdict,
  ResultSheet,
  SampleLine,
  SampleSheet,
  SampleState,
  SamplesSheet,
} from './sheets/samples.ts';
export type { SinceSheet } from './sheets/since.ts';
export type { StoreEvent, StoreSheet, StoresSheet } from './sheets/store.ts';
export type { QualityWord, StoreQuality } from './sheets/store-quality.ts';
export type {
  EstimatePoint,
  FamilyNode,
  GaugingPoint,
  GaugingSheet,
  PlotMoment,
} from './sheets/store-story.ts';
export type { CoverFigure, SheetHead, StoreLine, StoreMark, SumLine, TodaySheet } from './sheets/today.ts';
export type { BeforeAndAfter, CoverAtRateFigure, ReadingWay, ReadingWorth } from './sheets/worth.ts';
export { bedPlot } from './svg/bed-plot.ts';
export { paperFileName, plotFileName } from './svg/file-name.ts';
export { gaugingPlot } from './svg/gauging-plot.ts';
export { plotRange } from './svg/plot-range.ts';
export { trendPlot } from './svg/trend-plot.ts';
export {
  begunText,
  checkedText,
  copiedText,
  exportedText,
  importedText,
  leftOutText,
  outpostPutText,
  startText,
} from './text/acts.ts';
export { saidAge, saidKnown } from './text/age.ts';
export { bedForecastText, bedsText, bedText } from './text/beds.ts';
export { bookText } from './text/book.ts';
export { codeSetText, codesText } from './text/codes.ts';
export { commandsIn, firstThought } from './text/commands.ts';
export { condensateSentences, condensateText } from './text/condensate.ts';
export { countResultText, countSheetText, countTakenText } from './text/count.ts';
export { documentText } from './text/document.ts';
export { fieldsOf } from './text/figures.ts';
export { findingsText } from './text/findings.ts';
export { holdsText, holdText } from './text/holds.ts';
export { seriesOf } from './text/ids.ts';
export { droppedText, inboxLineText, inboxText, tableText, takenText } from './text/inbox.ts';
export { keptText } from './text/kept.ts';
export { limitSetsText, limitSetText, limitsText } from './text/limits.ts';
export { limitsChosenText, limitTypedText } from './text/limits-choice.ts';
export type { TextOptions, TextStyle } from './text/options.ts';
export { painted } from './text/paint.ts';
export { qualityText } from './text/quality.ts';
export { qualityTrendText } from './text/quality-trend.ts';
export { quirksText } from './text/quirks.ts';
export { givenBy, inputName, inputText, reckonText, resultText, shareText } from './text/reckon.ts';
export { reportsText } from './text/reports.ts';
export { sampleResultText, samplesText, sampleText } from './text/samples.ts';
export { servedText, servingText, stoppedText } from './text/serving.ts';
export { signed } from './text/signs.ts';
export { sinceText } from './text/since.ts';
export { storeText } from './text/store.ts';
export { storesText } from './text/stores.ts';
export { type Column, type Table, table } from './text/table.ts';
export { todayText } from './text/today.ts';
export { type Need, needsOf } from './text/today-needs.ts';
export { todayShortText } from './text/today-short.ts';
export { sortStores } from './text/today-stores.ts';
export { sumFigures } from './text/today-sum.ts';
export { type TrendPaper, trendPaper } from './text/trend-paper.ts';
export { worthDoing, worthText } from './text/worth.ts';
export { wrap } from './text/wrap.ts';
export type { CliFindingCode } from './words/cli-codes.ts';
export type { CodeFindingCode } from './words/code-codes.ts';
export type { DeskFindingCode } from './words/desk-codes.ts';
export { aloud, LONGEST_ALOUD } from './words/en/aloud.ts';
export { becameInWords } from './words/en/became.ts';
export { adviceInWords, evidenceInWords } from './words/en/beds.ts';
export { codeLabels } from './words/en/codes.ts';
export { condensateLabels, saidPeople, saidVerdict } from './words/en/condensate.ts';
export {
  countedInWords,
  countLabels,
  inBookAlready,
  keptForLater,
  promptInWords,
} from './words/en/count.ts';
export type { EntryContext } from './words/en/entries/context.ts';
export { entryInWords } from './words/en/entries.ts';
export { holdReason, holdWays } from './words/en/holds.ts';
export { levels } from './words/en/labels.ts';
export { saidClash } from './words/en/limits-sheet.ts';
export { type PageWords, pageWords } from './words/en/page.ts';
export { quirkInWords } from './words/en/quirks.ts';
export { reckonLabels } from './words/en/reckon/page-labels.ts';
export {
  choiceLabel,
  inputLabel,
  reckonCautions,
  reckonFormulas,
  reckonSaying,
  reckonWords,
  resultLabel,
  sourceLabel,
} from './words/en/reckon.ts';
export { saidValue } from './words/en/said.ts';
export { type StoreUse, storeAnswer } from './words/en/store-answer.ts';
export { storeQualityWords } from './words/en/store-quality.ts';
export { saidDayRange, saidPart, saidRefs, storyLabels } from './words/en/store-story.ts';
export { sameReason, waitTalk } from './words/en/tables.ts';
export type { FieldLogFindingCode } from './words/field-log-codes.ts';
export type { InboxFindingCode } from './words/inbox-codes.ts';
export type { ServerFindingCode } from './words/server-codes.ts';
export type { Sentences, Words, WordsContext } from './words/shape.ts';
export type { TableFindingCode } from './words/table-codes.ts';
export { wordFinding } from './words/word-finding.ts';
