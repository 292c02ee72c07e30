// `book check`: pages, chains, receipt, and the account rebuilt from the first entry.
import { positionAt } from '../../../desk/index.ts';
import type { Finding } from '../../../ground/units/index.ts';
import { type CheckedSheet, checkedText, wordFinding } from '../../../papers/index.ts';
import { checkBookFile, DiskBook, type FileCheck } from '../../disk/index.ts';
import type { Call } from '../call.ts';
import { type OpenBook, withBook, wordsContext } from '../open-book.ts';
import type { Outcome } from '../outcome.ts';
import { shownPath, withShownPaths } from '../shown-path.ts';

export function run(call: Call): Promise<Outcome> {
  return withBook(call, { write: false }, async (open) => {
    const check = await checkOf(open.book);
    const isWhole = check.findings.length === 0 && check.isReadToEnd;
    // Over a broken chain an account would say nothing that anybody may rely on.
    const closureMg = isWhole ? await rebuild(open) : null;
    const context = isWhole ? await wordsContext(open.desk) : {};
    const data: CheckedSheet = {
      book: shownPath(call.terminal.cwd, open.book.path),
      entries: check.entries,
      heads: check.heads,
      digest: check.digest,
      closureMg,
      isReadToEnd: check.isReadToEnd,
      findings: check.findings.map((finding: Finding) =>
        wordFinding(withShownPaths(call.terminal.cwd, finding), context),
      ),
    };
    return {
      schema: 'checked',
      data,
      text: (options) => checkedText(data, options),
      findings: data.findings,
      ...(isWhole && (closureMg ?? 0) === 0 ? {} : { failed: true as const }),
    };
  });
}

function checkOf(book: OpenBook['book']): Promise<FileCheck> {
  return book instanceof DiskBook ? checkBookFile(book) : book.check();
}

async function rebuild({ desk, moment }: OpenBook): Promise<number | null> {
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  return seen.ok ? seen.value.closureMg : null;
}
