// The foot of every view: what the book is at, how ± is meant, what this is and is not; the same lines stand on paper.
import type { SheetHead } from '../../../papers/index.ts';
import { useSheet } from '../api/cache.ts';
import { bookSeal } from '../api/changes.ts';
import { words } from '../language.ts';
import { openSheet, savedAt } from '../open.ts';
import { hrefOf, sheetPath, usePlace } from '../place.ts';

export function Footer() {
  const place = usePlace();
  const { data } = useSheet<{ readonly head: SheetHead }>(sheetPath('today', place));
  const saved = savedAt.use();
  const seal = bookSeal.use();
  const { frame, pages, print } = words();
  const head = data?.head;
  return (
    <footer className="foot">
      {saved !== null && <span>{frame.saved(saved)}</span>}
      {head !== undefined && (
        <>
          <span>{frame.entries(head.entries)}</span>
          <span>{head.closedToDay === null ? frame.notClosed : frame.closedTo(head.closedToDay)}</span>
          <span>{frame.people(head.peopleAboard)}</span>
        </>
      )}
      {seal !== null && <span className="seal">{print.seal(seal.slice(0, 16))}</span>}
      <span>{frame.doubt}</span>
      <span>{frame.modest}</span>
      <span className="foot-acts no-print">
        <button type="button" className="link" onClick={() => window.print()}>
          {frame.print}
        </button>
        <button type="button" className="link" onClick={() => openSheet({ kind: 'keys' })}>
          {frame.keys}
        </button>
        <button type="button" className="link" onClick={() => openSheet({ kind: 'device' })}>
          {frame.device}
        </button>
        <a className="link" href={hrefOf({ page: 'parts' })}>
          {pages.parts}
        </a>
      </span>
    </footer>
  );
}
