// English for the bed plot: its title, its axes, and the words that stand for it where nobody sees it.
import type { BedPlot, BedReading, BedSheet } from '../../sheets/beds.ts';
import type { SheetHead } from '../../sheets/today.ts';
import { saidDates } from './beds.ts';
import { counted, saidValue } from './said.ts';

export const days = 'outpost day';
export const limitName = 'limit';
export const changed = 'bed changed';
export const reached = 'limit reached, P10 to P90';
export const ofBand = 'expected, and P10 to P90';
export const ofReading = 'reading with its ± (95 %)';
export const ofOthers = 'beds before, or mixed water';
export const now = 'now';

export function plotTitle(id: string, { outpost, day }: SheetHead): string {
  return `${id} bed: what is read behind it, up to Day ${day}, ${outpost}`;
}

export function axisName({ parameter, unit }: BedPlot): string {
  return `${parameter}, ${unit}`;
}

export function plotSubtitle({ bed, advice }: BedSheet): string {
  const when = advice?.dates == null ? '' : ` \u00B7 limit about ${saidDates(advice.dates)}`;
  return `${Math.round(bed.used.value)}\u00A0L through it${when}`;
}

/** What the picture shows, for those who do not see it. */
export function plotDescription(sheet: BedSheet, plot: BedPlot): string {
  const { advice, readings, bed } = sheet;
  const own = readings.filter(({ parameter, of }) => parameter === plot.parameter && of === 'these beds');
  const when =
    advice?.dates == null ? 'No date is told.' : `The limit is expected about ${saidDates(advice.dates)}.`;
  const last = own.at(-1);
  const read =
    last === undefined
      ? 'Nothing has been read behind these beds.'
      : `${counted(own.length, 'reading')}; the last: ${saidReading(last)}`;
  return `${plot.parameter} behind the ${bed.id} bed over the outpost days; its limit is ${saidValue(plot.limit, plot.unit)}. ${when} ${read}`;
}

/** `TOC 2.1 ± 0.3 mg/L, Day 32 16:00 UTC (corrie 148), 831 L through the lead.` */
export function saidReading({
  parameter,
  value,
  u95,
  unit,
  below,
  stamp,
  ref,
  throughputL,
}: BedReading): string {
  const figure = below
    ? `below ${saidValue(value, unit)}`
    : `${saidValue(value, '')} ± ${saidValue(Math.round(u95 * 100) / 100, unit)}`;
  return `${parameter} ${figure}, ${stamp} (${ref}), ${Math.round(throughputL)}\u00A0L through the lead.`;
}
