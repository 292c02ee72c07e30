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
    void refresh();
  });
  source.addEventListener('open', () => {
    const wasLost = !reachable.get();
    reachable.set(true);
    if (wasLost) void refresh();
  });
  source.addEventListener('error', () => reachable.set(false));
}

function sealIn(data: string): string {
  return (JSON.parse(data) as { readonly digest: string }).digest;
}
