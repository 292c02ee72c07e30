// Table of all addresses that carry data; the server, the description and the tests are made from it.
import { BEDS } from './beds.ts';
import { BOOK_PORT } from './book-port.ts';
import { CODES } from './codes.ts';
import { INBOX } from './inbox.ts';
import { LIMITS } from './limits.ts';
import { PAPERS } from './papers.ts';
import { QUALITY } from './quality.ts';
import { TREND } from './quality-trend.ts';
import { READS } from './reads.ts';
import { RECKON } from './reckon.ts';
import type { Route } from './route.ts';
import { WHO_DRANK } from './who-drank.ts';
import { WRITES } from './writes.ts';

export const ROUTES: readonly Route[] = [
  ...READS,
  ...WRITES,
  ...CODES,
  ...INBOX,
  ...QUALITY,
  ...TREND,
  ...WHO_DRANK,
  ...LIMITS,
  ...BEDS,
  ...RECKON,
  ...PAPERS,
  ...BOOK_PORT,
];
