// Who speaks in a request that adds to the book.
import type { Moment } from '../../../desk/index.ts';
import type { ServedBook } from '../served-book.ts';

export function momentOf(
  served: ServedBook,
  { by, second }: { readonly by?: string; readonly second?: string },
): Moment {
  return served.moment({
    ...(by !== undefined && { by }),
    ...(second !== undefined && { second: { office: second, confirmation: 'declared, not verified' } }),
  });
}
