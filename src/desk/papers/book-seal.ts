// The state of the book that a paper is made from: its entries, the last of each site, its digest.
import { bookDigest } from '../../book/index.ts';
import type { BookSeal } from '../../papers/index.ts';
import type { Desk } from '../desk.ts';

/** Of the whole book, whatever part of it the paper looks at: a seal can be held against the book by anybody. */
export async function bookSeal({ port, hash }: Pick<Desk, 'port' | 'hash'>): Promise<BookSeal> {
  const heads = await port.heads();
  return {
    kept: await port.count(),
    last: heads.map(({ site, number }) => `${site} ${number}`),
    digest: bookDigest(hash, heads),
  };
}
