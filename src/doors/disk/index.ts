// The door of the disk: what other rooms may use.
export { type Backup, backupBook } from './backup.ts';
export { checkBookFile, type FileCheck } from './check-file.ts';
export { createBook } from './create.ts';
export { DiskBook } from './disk-book.ts';
export { writeDurably } from './durable-file.ts';
export { nodeHash } from './hash.ts';
export { type OpenOptions, openBook } from './open.ts';
export { BookBusy, type DiskFinding, DiskProblem, type Owner } from './problem.ts';
export type { Settings } from './settings.ts';
