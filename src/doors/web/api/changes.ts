// Hears that something was kept, by this page or by anybody else, and whether the book can be reached.
import { store } from '../store.ts';
import { refresh } from './cache.ts';

/** The seal of the whole book as the server told it last. */
export const bookSeal = store<string | null>(null);
export const reachable = store<boolean>(true);

export function hearChanges(): void {
  const source = new EventSource('/api/changes');
  source.addEventListener('here', (event) => bookSeal.set(sealIn(event.data)));
  source.addEventListener('changed', (event) => {
    bookSeal.set(sealIn(event.data));
    refreshSoon();
  });
  source.addEventListener('open', () => {
    const wasLost = !reachable.get();
    reachable.set(true);
    if (wasLost) void refresh();
  });
  source.addEventListener('error', () => reachable.set(false));
}

let waits = 0;

/** A moment later: who saved sees first that it is saved, and several changes at once are read once. */
function refreshSoon(): void {
  window.clearTimeout(waits);
  waits = window.setTimeout(() => void refresh(), REFRESH_MS);
}

const REFRESH_MS = 120;

function sealIn(data: string): string {
  return (JSON.parse(data) as { readonly digest: string }).digest;
}
