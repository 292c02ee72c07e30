// The door of the papers: what other rooms may use.
export type { BookLine, BookSheet, KeptSheet } from './sheets/book.ts';
export type { Because, SheetFigure } from './sheets/figure.ts';
export type { WordedFinding } from './sheets/finding.ts';
export type { StoreEvent, StoreSheet, StoresSheet } from './sheets/store.ts';
export type { CoverFigure, SheetHead, StoreLine, StoreMark, SumLine, TodaySheet } from './sheets/today.ts';
export type { DeskFindingCode } from './words/desk-codes.ts';
export type { EntryContext } from './words/en/entries/context.ts';
export { entryInWords } from './words/en/entries.ts';
export { type StoreUse, storeAnswer } from './words/en/store-answer.ts';
export type { FieldLogFindingCode } from './words/field-log-codes.ts';
export type { Sentences, Words, WordsContext } from './words/shape.ts';
export { wordFinding } from './words/word-finding.ts';
