// The door of the book: what other rooms may use.
export { type Amendments, amend, amendmentKinds, isAmendmentKind, readAmendments } from './amendments.ts';
export { holdAppend } from './append-rules.ts';
export { canonicalJson, type Json } from './canonical.ts';
export { againstReceipt, type CheckResult, checkBook, isCanonical } from './check.ts';
export type { DiskFindingCode } from './disk-finding.ts';
export {
  type AnyDraft,
  type AnyEntry,
  type Circumstances,
  type Draft,
  EARLIEST_INSTANT_MS,
  type Entry,
  LATEST_INSTANT_MS,
  type SecondPerson,
} from './entry.ts';
export { entryId, entryIdPattern, entryIdTimeMs } from './entry-id.ts';
export {
  type AcceptOutcome,
  acceptLines,
  EXPORT_FORMAT,
  EXPORT_VERSION,
  type ExportHeader,
  exportLines,
  type HeaderOutcome,
  objectInLine,
  readHeader,
  type Since,
} from './exchange.ts';
export { receivedAt, type Wanted, wantedBy } from './field-fault.ts';
export type { BookFindingCode } from './finding-codes.ts';
export { contentOf, type KeepOutcome, type KeepResult, keepDrafts, rowOf } from './keep.ts';
export { type Amount, type CounterReading, LARGEST_AMOUNT_MG, type RawReading } from './kinds/amount.ts';
export { type Body, isKind, type Kind, kindNames, kinds, kindVersion } from './kinds/index.ts';
export { MemoryStore } from './memory-store.ts';
export { type Migration, MigrationMissing, migrated, migrations } from './migrations.ts';
export { compareOrder, type OrderKey } from './order.ts';
export {
  type BookInfo,
  type BookPort,
  HeadMoved,
  headOf,
  IdTaken,
  type KeptEntry,
  type ScanQuery,
} from './port.ts';
export { amendmentsOf, entryOf, readBook, type View } from './read.ts';
export { bookDigest, FIRST_SEAL, type Hash, type Head, plainHash, sealOf } from './seal.ts';
export { type BookFinding, readDraft } from './validate.ts';
