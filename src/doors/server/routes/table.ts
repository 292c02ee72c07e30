// Table of all addresses that carry data; the server, the description and the tests are made from it.
import { BOOK_PORT } from './book-port.ts';
import { INBOX } from './inbox.ts';
import { QUALITY } from './quality.ts';
import { READS } from './reads.ts';
import { RECKON } from './reckon.ts';
import type { Route } from './route.ts';
import { WRITES } from './writes.ts';

export const ROUTES: readonly Route[] = [...READS, ...WRITES, ...QUALITY, ...INBOX, ...RECKON, ...BOOK_PORT];
