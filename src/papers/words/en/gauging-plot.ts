// English for the gauging plot: its title, its axes, and the words that stand for it where nobody sees it.
import { formatFigure } from '../../../ground/units/index.ts';
import type { StoreSheet } from '../../sheets/store.ts';
import type { GaugingPoint } from '../../sheets/store-story.ts';
import type { SheetHead, StoreLine } from '../../sheets/today.ts';
import { counted, saidValue } from './said.ts';

export const content = 'content, L';
export const days = 'outpost day';
export const capacity = 'capacity';
export const remainder = 'usable remainder';
export const ofEstimate = 'what is believed, and its ± (95 %)';
export const ofReading = 'reading with its ±';
export const ofFirst = 'told for the first time';

export function plotTitle(store: string, { outpost, day }: SheetHead): string {
  return `${store}: content up to Day ${day}, ${outpost}`;
}

export function plotSubtitle({ name, id, grade, volume }: StoreLine): string {
  const said = formatFigure(volume, { style: 'screen' });
  return [name === id ? '' : name, grade ?? 'grade not known', said]
    .filter((part) => part !== '')
    .join(' \u00B7 ');
}

/** What the picture shows, for those who do not see it. */
export function plotDescription({ store, head, gauging }: StoreSheet): string {
  const read = gauging.readings.filter(({ believed }) => believed !== null);
  const last = read.at(-1);
  const now = formatFigure(store.volume, { style: 'screen' });
  const readings =
    last === undefined
      ? 'Nobody has read its content since it was first told.'
      : `${counted(read.length, 'reading')} since it was first told; the last: ${saidReading(last)}`;
  return `Content of ${store.id} over the outpost days, in litres; its capacity is ${saidValue(gauging.capacityL, 'L')}. On Day ${head.day} it is believed to be ${now}. ${readings}`;
}

/** `gauged 174 ± 3 L, Day 56 10:30 UTC (corrie 231); believed before 180 ± 12 L.` */
export function saidReading({ how, read, stamp, ref, believed }: GaugingPoint): string {
  const said = (figure: GaugingPoint['read']) => formatFigure(figure, { style: 'screen' });
  const before = believed === null ? '' : `; believed before ${said(believed)}`;
  return `${how} ${said(read)}, ${stamp} (${ref})${before}.`;
}
