// What acts on a whole book end with: a book begun, lines imported, a check, a copy.
import type { WordedFinding } from './finding.ts';

export interface BegunSheet {
  readonly outpost: string;
  readonly book: string;
  readonly site: string;
  readonly practice: boolean;
  readonly entries: number;
}

export interface ImportedSheet {
  readonly format: string;
  readonly understood: number;
  readonly added: number;
  readonly alreadyKept: number;
  /** Lines that were not taken, and why. */
  readonly notTaken: readonly WordedFinding[];
  readonly findings: readonly WordedFinding[];
  readonly dryRun: boolean;
  /** Set when the import made the book. */
  readonly made: string | null;
}

export interface CheckedSheet {
  readonly book: string;
  readonly entries: number;
  readonly heads: readonly { readonly site: string; readonly number: number; readonly seal: string }[];
  /** Of all chains together: two books with one digest hold the same entries. */
  readonly digest: string;
  /** What the account does not close by; null where it could not be reckoned. */
  readonly closureMg: number | null;
  readonly isReadToEnd: boolean;
  readonly findings: readonly WordedFinding[];
}

export interface CopiedSheet {
  readonly path: string;
  readonly entries: number;
  readonly digest: string;
}
