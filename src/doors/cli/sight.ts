// Where a reading command looks: now, as known at an instant, or as of one.
import { type Desk, type Moment, readPastTime, readSight, type Sight } from '../../desk/index.ts';
import type { Call } from './call.ts';
import { orStop } from './problem.ts';

export async function sightOf(call: Call, desk: Desk, moment: Moment): Promise<Sight> {
  call.holdApart('at', 'as-of');
  const typed = (name: string) => {
    const text = call.text(name);
    return text === undefined ? undefined : { text, field: `--${name}` };
  };
  return orStop(await readSight(desk, moment, { at: typed('at'), asOf: typed('as-of') }));
}

/** A time that was typed behind a flag, not before the book began. */
export async function readTime(
  desk: Desk,
  moment: Moment,
  typed: { readonly text: string; readonly flag: string },
): Promise<number> {
  return orStop(await readPastTime(desk, moment, { text: typed.text, field: `--${typed.flag}` }));
}
