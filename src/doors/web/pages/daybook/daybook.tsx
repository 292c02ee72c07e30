// The daybook: what was said, line by line; found, corrected, undone, closed; nothing is ever erased.
import { useEffect, useRef, useState } from 'react';
import type { BookSheet } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { openSheet } from '../../open.ts';
import { FailedView, Working } from '../../parts/states.tsx';
import { go, hrefOf, isPast, type Place, sheetPath } from '../../place.ts';
import { dayInSight, dayNumber } from '../day-steps.ts';
import { BookTable } from './book-table.tsx';
import { ClosedPaper } from './closed-paper.tsx';
import { longestWord, type Sieve, Sieves, sieved } from './sieves.tsx';

const MOST = 200;
const EVERY_LINE = 99_999;

export function Daybook({ place }: { readonly place: Place }) {
  const day = dayNumber(place.item);
  const all = place.item === 'all';
  const [most, setMost] = useState(MOST);
  const [sieve, setSieve] = useState<Sieve>({ text: '', store: '', kind: '' });
  const find = useSettled(longestWord(sieve.text));
  // Without a day in the address: the day of the last line.
  const newest = useSheet<BookSheet>(day === null && !all ? sheetPath('book', place, { most: '1' }) : null);
  const shownDay = day ?? newest.data?.head.day ?? null;
  const query = {
    ...(all ? {} : { day: `D${shownDay ?? 0}` }),
    ...(sieve.store !== '' && { store: sieve.store }),
    ...(sieve.kind !== '' && { kind: sieve.kind }),
    // Whoever searches means all lines, and not only those that happen to be loaded.
    ...(find === '' ? { most: `${most}` } : { find, most: `${EVERY_LINE}` }),
  };
  const sheet = useSheet<BookSheet>(all || shownDay !== null ? sheetPath('book', place, query) : null);
  // What stood there stays while other lines are on their way: whoever types is not thrown out of the field.
  const last = useRef<BookSheet>(undefined);
  const data = sheet.data ?? (sheet.failed === null ? last.current : undefined);
  useEffect(() => {
    if (data !== undefined) document.title = words().frame.title(words().pages.daybook, data.head.outpost);
  }, [data]);
  useEffect(() => {
    last.current = data;
  }, [data]);
  useEffect(() => dayInSight.set(shownDay), [shownDay]);
  const failed = sheet.failed ?? newest.failed;
  if (data === undefined)
    return failed === null ? (
      <Working />
    ) : (
      <FailedView name={words().pages.daybook} sheet={sheet.failed === null ? newest : sheet} />
    );
  return (
    <div data-ready="daybook">
      <Title place={place} day={all ? null : shownDay} head={data.head} />
      <Sieves sieve={sieve} onChange={setSieve} place={place} day={all ? null : shownDay} />
      {shownDay !== null && !all && <ClosedPaper place={place} day={shownDay} head={data.head} />}
      <Lines sheet={data} sieve={sieve} day={all ? null : shownDay} canAct={!isPast(place)} />
      {data.more && (
        <div className="flow no-print">
          <span>{words().daybook.more}</span>
          <button type="button" className="b small" onClick={() => setMost(most * 5)}>
            {words().daybook.showMore}
          </button>
        </div>
      )}
    </div>
  );
}

/** The book is asked when somebody stops typing, and not at every letter. */
function useSettled(text: string): string {
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const wait = window.setTimeout(() => setSettled(text), SETTLED_MS);
    return () => window.clearTimeout(wait);
  }, [text]);
  return settled;
}

const SETTLED_MS = 200;

function Lines({
  sheet,
  sieve,
  day,
  canAct,
}: {
  readonly sheet: BookSheet;
  readonly sieve: Sieve;
  readonly day: number | null;
  readonly canAct: boolean;
}) {
  const { daybook } = words();
  const lines = sieved(sheet.lines, sieve);
  if (sheet.head.entries <= 1 && sheet.lines.length === 0) return <p className="md">{daybook.emptyBook}</p>;
  if (lines.length === 0) return <p>{saidNone(sieve.text.trim() === '', day)}</p>;
  const caption = day === null ? daybook.all : daybook.day(day);
  return <BookTable lines={lines} canAct={canAct} caption={caption} />;
}

/** What holds none: this day, or the whole book. */
function saidNone(isWhole: boolean, day: number | null): string {
  const { daybook } = words();
  if (isWhole) return day === null ? daybook.noneInBook : daybook.none;
  return day === null ? daybook.noneFoundInBook : daybook.noneFound;
}

function Title({
  place,
  day,
  head,
}: {
  readonly place: Place;
  readonly day: number | null;
  readonly head: BookSheet['head'];
}) {
  const { daybook, pages } = words();
  const to = (item: string) => go({ ...place, item });
  const closed = day !== null && head.closedToDay !== null && day <= head.closedToDay;
  return (
    <div className="title">
      <h1>
        {pages.daybook}
        {day !== null && <span> · {daybook.day(day)}</span>}
      </h1>
      <div className="flow no-print">
        {day !== null && (
          <>
            <button type="button" className="b small" onClick={() => to(`D${day - 1}`)}>
              <span aria-hidden="true">‹ </span>
              {daybook.day(day - 1)}
            </button>
            <button
              type="button"
              className="b small"
              disabled={day >= head.day}
              onClick={() => to(`D${day + 1}`)}
            >
              {daybook.day(day + 1)}
              <span aria-hidden="true"> ›</span>
            </button>
            <a className="b small" href={hrefOf({ ...place, item: 'all' })}>
              {daybook.all}
            </a>
          </>
        )}
        {day === null && (
          <button type="button" className="b small" onClick={() => to(`D${head.day}`)}>
            {daybook.day(head.day)}
          </button>
        )}
        {!isPast(place) && (
          <a className="b small" href={hrefOf({ page: 'inbox' })}>
            {daybook.toInbox}
          </a>
        )}
        {!isPast(place) && !closed && (
          <button type="button" className="b small" onClick={() => openSheet({ kind: 'close-day' })}>
            {daybook.closeDay}
          </button>
        )}
      </div>
    </div>
  );
}
