// The log bar: the five acts of every day, at the bottom edge, where the floating hand comes from.
import { undoLast } from '../entering.ts';
import { words } from '../language.ts';
import { openSheet } from '../open.ts';
import { isPast, type Place } from '../place.ts';

export function LogBar({ place }: { readonly place: Place }) {
  const { log, today } = words();
  const off = isPast(place);
  return (
    <section className="log-bar" aria-label={today.log}>
      <button type="button" className="b" disabled={off} onClick={() => openSheet({ kind: 'day' })}>
        {log.day}
      </button>
      <button type="button" className="b" disabled={off} onClick={() => openSheet({ kind: 'drink' })}>
        {log.drink}
      </button>
      <button type="button" className="b" disabled={off} onClick={() => openSheet({ kind: 'fill' })}>
        {log.fill}
      </button>
      <button type="button" className="b" disabled={off} onClick={() => openSheet({ kind: 'weigh' })}>
        {log.weigh}
      </button>
      <button type="button" className="b" disabled={off} onClick={() => void undoLast()}>
        {log.undo}
      </button>
    </section>
  );
}
