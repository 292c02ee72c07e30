// Whether a day is closed, and what came in after its close.
import type { BookSheet, SheetHead } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { Phrased } from '../../parts/phrased.tsx';
import { type Place, sheetPath } from '../../place.ts';

export function ClosedPaper({
  place,
  day,
  head,
}: {
  readonly place: Place;
  readonly day: number;
  readonly head: SheetHead;
}) {
  const { daybook } = words();
  const closed = head.closedToDay !== null && day <= head.closedToDay;
  const closes = useSheet<BookSheet>(
    closed ? sheetPath('book', place, { kind: 'day-close', most: '500' }) : null,
  );
  const lines = useSheet<BookSheet>(
    closed ? sheetPath('book', place, { day: `D${day}`, most: '500' }) : null,
  );
  const late = lines.data?.lines.filter((line) => line.late).length ?? 0;
  if (!closed) return <p className="soft">{daybook.open}</p>;
  const close = closes.data?.lines.findLast(({ text }) => closesDay(text, day));
  return (
    <div className="notice plain-notice">
      <div>
        <p>{daybook.closed}</p>
        {close !== undefined && (
          <p className="xs">
            <b>{daybook.closedAt}:</b> <Phrased text={close.text} />, {close.by}, {close.entered} ({close.ref}
            )
          </p>
        )}
        {late > 0 && (
          <p className="xs">
            <b>{daybook.closedLate(late)}</b>
          </p>
        )}
      </div>
    </div>
  );
}

/** The words of a close name its day. */
function closesDay(text: string, day: number): boolean {
  return new RegExp(`\\bD(?:ay)?[\\u00A0 ]?${day}\\b`).test(text);
}
