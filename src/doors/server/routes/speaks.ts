// Who speaks in a request, and the second person beside it, whose code is looked at last of all.
import { type Desk, type Moment, momentWithSecond, type SecondNamed } from '../../../desk/index.ts';
import type { ServedBook } from '../served-book.ts';

export interface Speaks {
  readonly by?: string;
  readonly second?: SecondNamed;
}

/** @throws TooManyCodes when too many codes came lately */
export function momentOf(served: ServedBook, desk: Desk, { by, second }: Speaks): Moment {
  const moment = served.moment(by === undefined ? {} : { by });
  if (second === undefined) return moment;
  if (second.code !== undefined) served.codePace.take(moment.nowUtcMs, 1);
  return momentWithSecond(desk, moment, second);
}
