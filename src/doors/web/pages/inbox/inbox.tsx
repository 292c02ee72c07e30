// The inbox: lines that wait for a unit, a store or a decision; and rows that are brought in, looked at first.
import { useEffect } from 'react';
import type { InboxSheet, SheetHead } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { FailedView, Working } from '../../parts/states.tsx';
import { BringRows } from './bring-rows.tsx';
import { WaitingLine } from './waiting-line.tsx';

export function Inbox() {
  const sheet = useSheet<InboxSheet>('/api/inbox');
  const head = useSheet<{ readonly head: SheetHead }>('/api/today').data?.head;
  const { inbox, pages, frame } = words();
  useEffect(() => {
    if (head !== undefined) document.title = frame.title(pages.inbox, head.outpost);
  }, [head, frame, pages]);
  const { data } = sheet;
  if (data === undefined)
    return sheet.failed === null ? <Working /> : <FailedView name={words().pages.inbox} sheet={sheet} />;
  return (
    <div data-ready="inbox">
      <div className="title">
        <h1>{pages.inbox}</h1>
        <p className="soft">{data.lines.length === 0 ? '' : inbox.waits(data.lines.length)}</p>
      </div>
      {data.lines.length === 0 && <p className="md">{inbox.none}</p>}
      <ul>
        {data.lines.map((line) => (
          <WaitingLine key={line.id} line={line} />
        ))}
      </ul>
      {data.settled > 0 && <p className="soft settled">{inbox.settled(data.settled)}</p>}
      <BringRows />
    </div>
  );
}
