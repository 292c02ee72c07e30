// One evening of the study: the log up to then is read and folded as an import does it, and what is asked is noted.
import { applyEntry, Fold, positionOf } from '../../../src/account/index.ts';
import type { AnyEntry } from '../../../src/book/index.ts';
import { readFieldLog } from '../../../src/desk/index.ts';
import { eveningOf, OUTPOST, type Written } from './field-log.ts';

/** Something that a person is asked, or told to act upon: by the reader of the log, or by the account. */
export interface Asked {
  readonly by: 'reader' | 'account';
  readonly code: string;
  /** What tells it from others: code, line, store, field. */
  readonly key: string;
  /** What sort of the code it is, where it has sorts. */
  readonly why: string;
  /** Ids of the log lines that it names. */
  readonly lines: readonly string[];
  readonly store: string | null;
  readonly instrument: string | null;
}

export interface Evening {
  readonly asked: readonly Asked[];
  readonly entries: number;
}

/** Questions that a control leaves out: some codes, or all that the account asks. */
export type Without = ReadonlySet<string> | 'the account';

/** Reads and folds what was written until an evening. Only what asks is listed: what is merely good to know is not. */
export function evening(
  book: readonly Written[],
  eveningMs: number,
  without: Without = new Set(),
  outpost = OUTPOST,
): Evening {
  const lines = book.filter(({ writtenMs }) => eveningOf(writtenMs) <= eveningMs).map(({ line }) => line);
  const read = readFieldLog(
    lines.map((line) => JSON.stringify(line)),
    { outpost, file: 'log', nowMs: eveningMs },
  );
  const refOfLine = (line: number | undefined) => (line === undefined ? [] : [lines[line - 1]?.id ?? '']);
  const refused = read.findings
    .filter(({ severity, code }) => severity !== 'know' && !isLeftOut('reader', code, without))
    .map(({ code, where }): Asked => {
      const key = `${code} ${refOfLine(where.line).join('')} ${where.field ?? ''}`;
      return {
        by: 'reader',
        code,
        key,
        why: '',
        lines: refOfLine(where.line),
        store: null,
        instrument: null,
      };
    });
  const refs = new Map(read.drafts.map((draft) => [draft.id, draft.origin?.ref ?? '']));
  const fold = new Fold(outpost.outpost, { index: outpost });
  const entries = read.drafts.map((draft, k) => ({ ...draft, site: 'corrie', number: k + 1 }) as AnyEntry);
  entries.sort((a, b) => a.happenedAtMs - b.happenedAtMs || a.number - b.number);
  for (const entry of entries) applyEntry(fold, entry);
  const told = positionOf(fold, Math.max(eveningMs, fold.lastEntryMs ?? 0)).findings;
  const asked = told
    .filter(({ severity, code }) => severity !== 'know' && !isLeftOut('account', code, without))
    .map(({ code, where, data, entries: ids }): Asked => {
      const named = ids.map((id) => refs.get(id) ?? '');
      const main = where.entry === undefined ? '' : (refs.get(where.entry) ?? '');
      const why = String(data['why'] ?? data['against'] ?? '');
      const key = `${code} ${main} ${where.store ?? ''} ${where.field ?? ''} ${why}`;
      return {
        by: 'account',
        code,
        key,
        why,
        lines: named,
        store: where.store ?? null,
        instrument: where.field ?? null,
      };
    });
  return { asked: [...refused, ...asked], entries: entries.length };
}

function isLeftOut(by: Asked['by'], code: string, without: Without): boolean {
  return without === 'the account' ? by === 'account' : without.has(code);
}
