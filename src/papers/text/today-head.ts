// The head of Today: doubt of age, place and time, cover of each grade, the reserve.
import { convertAtDensity, roundCoverDays } from '../../ground/units/index.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import type { CoverFigure, SheetHead, TodaySheet } from '../sheets/today.ts';
import * as words from '../words/en/labels.ts';
import { saidValue, saidValueAt } from '../words/en/said.ts';
import { ratesHead, rateText } from '../words/en/worth.ts';
import { amountOf, besideOf, densityOf, said, stockOf } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { signed } from './signs.ts';
import { widthOf } from './width.ts';
import { hanging, wrap } from './wrap.ts';

/** Place, time and state of the book: one line where there is room for it. */
export function headLines(head: SheetHead, options: TextOptions): string[] {
  const { place, people, book } = words.headOf(head);
  const stamp = signed(head.stamp, options.style).replaceAll(' ', '\u00A0');
  const parts = [place, stamp, words.views[head.view], people, book].filter((part) => part !== '');
  const line = parts
    .map((part) => signed(part, options.style))
    .join(options.style === 'screen' ? ' · ' : '; ');
  return wrap(line, proseWidth(options));
}

export function coverLines(sheet: TodaySheet, options: TextOptions): string[] {
  const heads = Object.keys(sheet.cover).map((grade) => signed(words.coverOf(grade), options.style));
  const indent = Math.max(0, ...heads.map(widthOf)) + 3;
  const covers = Object.values(sheet.cover).flatMap((cover, k) => [
    ...hanging(heads[k] ?? '', headline(cover), { width: proseWidth(options), indent }),
    ...under(secondLine(cover, options), options),
  ]);
  return [...covers, ...reserveLines(sheet, options)];
}

function headline(cover: CoverFigure): string {
  if (cover.basis === 'not enough data') return words.noCover;
  return quantiles(cover);
}

function quantiles({ q05, q50 }: { readonly q05: number | null; readonly q50: number | null }): string {
  if (q05 === null) return words.never;
  const middle = words.middle(q50 === null ? null : roundCoverDays(q50));
  return `${words.saidDays(roundCoverDays(q05))} ${words.outcomes} ${middle}`;
}

function secondLine(cover: CoverFigure, options: TextOptions): readonly string[] {
  const { outDayQ05, free, use, basis } = cover;
  const parts = [
    ...(outDayQ05 === null ? [] : [words.outDay(outDayQ05)]),
    words.free(said(amountOf(free, options), options)),
    ...(use === null ? [] : [words.useOf(said(amountOf(use, options), options), basis, daysOf(cover))]),
  ];
  return parts.map((part) => signed(part, options.style));
}

/** Days that the use was learned from: they stand among the inputs of the figure. */
function daysOf({ use }: CoverFigure): number | null {
  const input = use?.because.inputs.find(({ name }) => name === 'days');
  return typeof input?.value === 'number' ? input.value : null;
}

function reserveLines({ reserve, stores, cover }: TodaySheet, options: TextOptions): string[] {
  if (reserve === null) return [];
  const toFloor = Object.values(cover).find((each) => each.toFloor !== null)?.toFloor ?? null;
  const floor = besideOf(reserve.floorL, reserve.volume, options);
  const conditional = stores.filter((store) => store.reserve && (store.conditional || store.held));
  const parts = [
    said(amountOf(reserve.volume, options), options),
    words.floor(floor.unit === 'L' ? saidValue(floor.value, 'L') : saidValueAt(floor.value, -1, floor.unit)),
    ...(conditional.length === 0
      ? []
      : [
          words.conditional(
            conditional.map((store) => `${store.id}\u00A0${said(stockOf(store, options), options)}`),
          ),
        ]),
  ];
  return [
    ...wrap(signed(`${words.reserve} ${parts.join(', ')}`, options.style), proseWidth(options)),
    ...(toFloor === null
      ? []
      : under([signed(`${words.toFloor} ${quantiles(toFloor)}`, options.style)], options)),
    ...rateLines(cover, options),
  ];
}

/** What the water is by the rates of policy, in one thought. */
function rateLines(cover: TodaySheet['cover'], options: TextOptions): string[] {
  const rates = Object.values(cover).find((each) => each.atRates !== null)?.atRates ?? [];
  const [first] = rates;
  if (first === undefined) return [];
  const days = (figure: SheetFigure) => said({ ...figure, unit: 'd' }, options);
  const texts = rates.map((each) =>
    rateText(each, { free: days(each.free), toFloor: days(each.toFloor), reserve: days(each.reserve) }),
  );
  const text = `${ratesHead(first.people)} ${texts.join('; ')}.`;
  return under([signed(text, options.style)], options);
}

/** Parts of one thought under its headline, a little in. */
export function under(parts: readonly string[], options: TextOptions): string[] {
  const text = parts.join(options.style === 'screen' ? ' · ' : '; ');
  return wrap(text, proseWidth(options) - 3).map((line) => `   ${line}`);
}

/** In kilograms the density that was used is said. */
export function densityLine({ total }: TodaySheet, options: TextOptions): string {
  const density = densityOf(total);
  if (options.units === 'L' || density === null) return '';
  return words.densityIs(
    saidValue(convertAtDensity(1, { from: 'L', to: 'kg', densityKgPerM3: density }), 'kg'),
  );
}
