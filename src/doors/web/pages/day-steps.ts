// A day back and a day on: in the daybook from day to day, elsewhere the time at which the page looks.
import { parseNumber } from '../../../ground/units/index.ts';
import { go, type Place } from '../place.ts';
import { store } from '../store.ts';

/** The day that the view in sight is about, told by the sheet that it shows. */
export const dayInSight = store<number | null>(null);

export function dayMoved(place: Place, by: number): void {
  const day = dayInSight.get();
  if (day === null) return;
  if (place.page === 'daybook') go({ ...place, item: `D${day + by}` });
  else go({ ...place, at: `D${day + by}`, asOf: null });
}

/** `D46` to 46. */
export function dayNumber(item: string | null): number | null {
  const read = parseNumber(/^D?(\d{1,5})$/i.exec(item ?? '')?.[1] ?? '');
  return read.ok ? read.value : null;
}
