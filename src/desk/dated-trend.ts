// A trend behind the beds with the date of its limit.
import type { BedTrend } from '../account/index.ts';
import type { BedDate } from '../forecast/index.ts';

/** The date is null where nothing is known of the feed. */
export interface DatedTrend {
  readonly trend: BedTrend;
  readonly date: BedDate | null;
}
