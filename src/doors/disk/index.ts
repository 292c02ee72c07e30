// The door of the disk: what other rooms may use.
export { type Backup, backupBook, copyBook } from './backup.ts';
export { checkBookFile, type FileCheck } from './check-file.ts';
export { createBook } from './create.ts';
export { DiskBook } from './disk-book.ts';
export { changeDurably, writeDurably } from './durable-file.ts';
export { nodeHash } from './hash.ts';
export { type OpenOptions, openBook } from './open.ts';
export { BookBusy, type DiskFinding, DiskProblem, type Owner, StoreProblem } from './problem.ts';
export { findServer, forgetServer, noteServer, type ServerNote } from './server-note.ts';
export type { Settings } from './settings.ts';
