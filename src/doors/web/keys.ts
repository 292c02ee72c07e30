// Keys of two letters for pages and entries: never inside a field, never while a dialog is open, and they can be switched off.
import { useEffect } from 'react';
import { device } from './device.ts';
import { undoLast } from './entering.ts';
import { type OpenSheet, opened, openSheet } from './open.ts';
import { dayMoved } from './pages/day-steps.ts';
import { go, isPast, type Place } from './place.ts';

const goTo: Readonly<Record<string, string>> = {
  t: 'today',
  d: 'daybook',
  s: 'stores',
  i: 'inbox',
  q: 'quality',
  k: 'reckon',
};
const enterBy: Readonly<Record<string, OpenSheet>> = {
  l: { kind: 'day' },
  d: { kind: 'drink' },
  f: { kind: 'fill' },
  w: { kind: 'weigh' },
  s: { kind: 'sample' },
};

/** The second key has to follow within this time, as it was pressed: a busy machine hears of both late. */
const PAIR_MS = 1500;

export function useKeys(place: Place): void {
  const { page, item, at, asOf } = place;
  useEffect(() => {
    const here = { page, item, at, asOf };
    let first: { readonly key: string; readonly atMs: number } | null = null;
    const pressed = (event: KeyboardEvent): void => {
      if (!counts(event)) return;
      const before = first !== null && event.timeStamp - first.atMs < PAIR_MS ? first.key : '';
      first = null;
      const isTaken = before === '' ? single(event.key, here) : pair(before, event.key, here);
      if (!isTaken && (event.key === 'g' || event.key === 'n'))
        first = { key: event.key, atMs: event.timeStamp };
      // Else the letter would be typed into the field that opens.
      if (isTaken) event.preventDefault();
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, [page, item, at, asOf]);
}

function counts(event: KeyboardEvent): boolean {
  if (!device.get().keys || opened.get() !== null) return false;
  if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return false;
  const { target } = event;
  return !(target instanceof HTMLElement && target.matches('input, select, textarea, [contenteditable]'));
}

function pair(before: string, key: string, place: Place): boolean {
  if (before === 'g' && goTo[key] !== undefined) {
    go({ page: goTo[key], at: place.at, asOf: place.asOf });
    return true;
  }
  const sheet = enterBy[key];
  if (before !== 'n' || sheet === undefined || isPast(place)) return false;
  openSheet(sheet);
  return true;
}

function single(key: string, place: Place): boolean {
  switch (key) {
    case '/':
      openSheet({ kind: 'find' });
      return true;
    case '?':
      openSheet({ kind: 'keys' });
      return true;
    case 'P':
      window.print();
      return true;
    case 'u':
      if (isPast(place)) return false;
      void undoLast();
      return true;
    case '[':
    case ']':
      dayMoved(place, key === '[' ? -1 : 1);
      return true;
    case 'C':
      if (place.page !== 'daybook') return false;
      openSheet({ kind: 'close-day' });
      return true;
    default:
      return false;
  }
}
