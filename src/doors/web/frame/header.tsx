// The head of every view: whose water, who you are, when it is, which pages there are, and what has to be said first.
import type { SheetHead } from '../../../papers/index.ts';
import { refresh, useSheet } from '../api/cache.ts';
import { reachable } from '../api/changes.ts';
import { device } from '../device.ts';
import { words } from '../language.ts';
import { openSheet } from '../open.ts';
import { PAGES } from '../pages/table.ts';
import { go, hrefOf, isPast, type Place, sheetPath } from '../place.ts';

export function Header({ place }: { readonly place: Place }) {
  const { data } = useSheet<{ readonly head: SheetHead }>(sheetPath('today', place));
  const head = data?.head;
  const { frame, time } = words();
  const { office } = device.use();
  return (
    <header>
      <div className="head">
        <p className="place">
          <b>{head?.outpost ?? ''}</b> <span className="account-word">{frame.account}</span>
          {head?.practice === true && <span className="practice">{frame.practice}</span>}
        </p>
        <button type="button" className="b small no-print" onClick={() => openSheet({ kind: 'who' })}>
          <span className="who-word">{frame.youAre}</span>
          <b>{office}</b>
        </button>
        <button
          type="button"
          className="b small when"
          aria-label={`${head?.stamp ?? ''}. ${time.look}`}
          onClick={() => openSheet({ kind: 'time' })}
        >
          <Stamp head={head} />
        </button>
      </div>
      <nav className="pages no-print" aria-label={frame.pages}>
        <ul>
          {PAGES.map((page) => (
            <li key={page}>
              <a
                href={hrefOf({ page, at: place.at, asOf: place.asOf })}
                aria-current={place.page === page ? 'page' : undefined}
              >
                {words().pages[page]}
              </a>
            </li>
          ))}
          <li className="end">
            <button type="button" className="link" onClick={() => openSheet({ kind: 'find' })}>
              {frame.find}
            </button>
          </li>
        </ul>
      </nav>
      <Lost />
      {isPast(place) && (
        <div className="notice" role="status">
          <p>
            {place.at !== null
              ? time.past(head?.stamp ?? place.at)
              : time.asOf(head?.stamp ?? place.asOf ?? '')}
          </p>
          <button
            type="button"
            className="b small no-print"
            onClick={() => go({ page: place.page, item: place.item })}
          >
            {time.toNow}
          </button>
        </div>
      )}
    </header>
  );
}

/** The day in bold, the rest beside it; a narrow screen breaks it at the points only. */
function Stamp({ head }: { readonly head: SheetHead | undefined }) {
  if (head === undefined) return <span>&nbsp;</span>;
  const [day = '', ...rest] = head.stamp.split(' · ');
  return (
    <span className="stamp">
      <b>{day}</b>
      {rest.map((part) => (
        <span key={part}>
          {' '}
          · <span className="nowrap">{part}</span>
        </span>
      ))}
    </span>
  );
}

function Lost() {
  const isReachable = reachable.use();
  const { frame } = words();
  if (isReachable) return null;
  return (
    <div className="notice" role="alert">
      <p>{frame.noServer}</p>
      <button type="button" className="b small" onClick={() => void refresh()}>
        {frame.tryAgain}
      </button>
    </div>
  );
}
