// Who has a code, and since when.
import { formatShortStamp } from '../../ground/units/index.ts';
import type { CodesSheet } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { TRY_RULE } from './code-rules.ts';

/** Every office of the outpost, and those that had a code when the outpost file still named them. */
export async function codeList(desk: Desk, moment: Pick<Moment, 'nowUtcMs'>): Promise<Answer<CodesSheet>> {
  const opened = await desk.account();
  if (!opened.ok) return opened;
  const { index, dayRule } = opened.value.fold;
  const holders = await desk.codes.holders({ nowMs: moment.nowUtcMs, ...TRY_RULE });
  const byOffice = new Map(holders.map((holder) => [holder.office, holder]));
  const names = new Set([...index.offices.keys(), ...byOffice.keys()]);
  const offices = [...names].map((office) => {
    const holder = byOffice.get(office);
    return {
      office,
      since: holder === undefined ? null : formatShortStamp(holder.sinceMs, dayRule),
      waitsMs: holder?.waitsMs ?? 0,
    };
  });
  return yes({ offices });
}
