// The bed plot as a picture: readings behind the beds over the days, the band that is expected, and the limit.
import type { BedPlot, BedReading, BedSheet } from '../sheets/beds.ts';
import * as words from '../words/en/bed-plot.ts';
import { saidValue } from '../words/en/said.ts';
import { element, escaped, place, textElement } from './element.ts';
import { pixelOf, type Scale, ticks } from './scale.ts';

const WIDTH = 880;
const HEIGHT = 490;
/** Room around the field for what is written there. */
const FIELD = { left: 64, right: 752, top: 76, bottom: 372 } as const;
const FONT = 'font-family="Noto Sans, DejaVu Sans, Arial, sans-serif"';
const INK = '#000000';
const SHADE = '#d9d9d9';
const FAINT = '#b3b3b3';

interface Scales {
  readonly x: Scale;
  readonly y: Scale;
}

/**
 * Black on white, for paper: no colour means anything. The text is real text, so that it can be searched and read aloud.
 * @returns a picture that says so where there is nothing to draw
 */
export function bedPlot(sheet: BedSheet): string {
  const { plot, head, bed } = sheet;
  const title = words.plotTitle(bed.id, head);
  const drawn = plot === null ? [] : drawnParts(sheet, plot);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" ${FONT} fill="${INK}">`,
    element('title', {}, [escaped(title)]),
    element('desc', {}, [escaped(plot === null ? title : words.plotDescription(sheet, plot))]),
    element('rect', { width: WIDTH, height: HEIGHT, fill: '#ffffff' }),
    textElement(title, { x: FIELD.left, y: 30, 'font-size': 19, 'font-weight': 'bold' }),
    textElement(words.plotSubtitle(sheet), { x: FIELD.left, y: 52, 'font-size': 14 }),
    ...drawn,
    '</svg>',
    '',
  ].join('\n');
}

function drawnParts(sheet: BedSheet, plot: BedPlot): string[] {
  const readings = sheet.readings.filter(
    ({ parameter, unit }) => parameter === plot.parameter && unit === plot.unit,
  );
  const scales = scalesOf(sheet, plot, readings);
  return [
    ...axes(plot, scales),
    ...band(plot, scales),
    ...limit(plot, scales),
    ...uprights(sheet, scales),
    ...readings.flatMap((reading) => readingParts(reading, scales)),
    ...legend(),
  ];
}

/** From what was read first up to where the band ends; upward to a fifth above the limit, or as far as was read. */
function scalesOf(
  { head }: BedSheet,
  { curve, limit: most }: BedPlot,
  readings: readonly BedReading[],
): Scales {
  const days = [...readings, ...curve].map(({ day }) => day);
  const highest = Math.max(1.2 * most, ...readings.map(({ value, u95 }) => value + u95));
  return {
    x: {
      from: Math.floor(Math.min(head.day, ...days)),
      to: Math.max(head.day + 1, ...days),
      pixelFrom: FIELD.left,
      pixelTo: FIELD.right,
    },
    y: { from: 0, to: highest, pixelFrom: FIELD.bottom, pixelTo: FIELD.top },
  };
}

function line(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  more: Readonly<Record<string, string | number>> = {},
): string {
  return element('line', { x1, x2, y1, y2, stroke: INK, 'stroke-width': '1', ...more });
}

function axes(plot: BedPlot, { x, y }: Scales): string[] {
  const across = ticks({ from: y.from, to: y.to, most: 7 }).flatMap((value) => {
    const at = pixelOf(y, value);
    return [
      line(FIELD.left, at, FIELD.right, at, { stroke: FAINT, 'stroke-width': '0.6' }),
      textElement(saidValue(value, ''), {
        x: FIELD.left - 8,
        y: at + 5,
        'font-size': 14,
        'text-anchor': 'end',
      }),
    ];
  });
  const along = ticks({ from: x.from, to: x.to, most: 10, whole: true }).flatMap((day) => {
    const at = pixelOf(x, day);
    return [
      line(at, FIELD.bottom, at, FIELD.bottom + 6),
      textElement(saidValue(day, ''), {
        x: at,
        y: FIELD.bottom + 22,
        'font-size': 14,
        'text-anchor': 'middle',
      }),
    ];
  });
  const end = { x: FIELD.right, y: FIELD.bottom + 42, 'font-size': 14, 'text-anchor': 'end' };
  return [
    ...across,
    textElement(words.axisName(plot), { x: 12, y: FIELD.top - 6, 'font-size': 14 }),
    line(FIELD.left, FIELD.bottom, FIELD.right, FIELD.bottom),
    ...along,
    textElement(words.days, end),
  ];
}

/** What leaves the field is cut off at its edge and not bent along it. */
function band({ curve }: BedPlot, { x, y }: Scales): string[] {
  if (curve.length === 0) return [];
  const edge = (side: 'q10' | 'q50' | 'q90') =>
    curve.map((point) => `${place(pixelOf(x, point.day))} ${place(heightOf(y, point[side]))}`);
  const { left, right, top, bottom } = FIELD;
  const field = { x: left, y: top, width: right - left, height: bottom - top };
  return [
    element('clipPath', { id: 'field' }, [element('rect', field)]),
    element('g', { 'clip-path': 'url(#field)' }, [
      element('path', {
        d: `M${[...edge('q90'), ...edge('q10').toReversed()].join('L')}Z`,
        fill: SHADE,
        stroke: FAINT,
        'stroke-width': '0.6',
      }),
      element('path', { d: `M${edge('q50').join('L')}`, fill: 'none', stroke: INK, 'stroke-width': '1.6' }),
    ]),
  ];
}

/** As `pixelOf`, and beyond the field where the value is. */
function heightOf({ from, to, pixelFrom, pixelTo }: Scale, value: number): number {
  return pixelFrom + ((value - from) / (to - from)) * (pixelTo - pixelFrom);
}

function limit({ limit: most, unit }: BedPlot, { y }: Scales): string[] {
  const at = pixelOf(y, most);
  const x = FIELD.right + 8;
  return [
    line(FIELD.left, at, FIELD.right, at, { 'stroke-width': '1.2', 'stroke-dasharray': '9 4' }),
    textElement(words.limitName, { x, y: at - 3, 'font-size': 13 }),
    textElement(saidValue(most, unit), { x, y: at + 12, 'font-size': 13 }),
  ];
}

/** Now, changes of a bed, and on the limit from when to when it is reached. */
function uprights({ head, changes, advice, plot }: BedSheet, { x, y }: Scales): string[] {
  const upright = (day: number, name: string, dashes: string, anchor: 'start' | 'end'): string[] => {
    const at = pixelOf(x, day);
    return [
      line(at, FIELD.top, at, FIELD.bottom, { 'stroke-dasharray': dashes }),
      textElement(name, {
        x: at + (anchor === 'start' ? 4 : -4),
        y: FIELD.top + 12,
        'font-size': 13,
        'text-anchor': anchor,
      }),
    ];
  };
  const nowDay = plot?.curve.findLast(({ isAhead }) => !isAhead)?.day ?? head.day;
  const [first, last] = [advice?.dates?.q10?.day, advice?.dates?.q90?.day];
  const at = pixelOf(y, plot?.limit ?? 0);
  const reached =
    first === undefined || last === undefined || first > x.to
      ? []
      : [line(pixelOf(x, first), at, pixelOf(x, last), at, { 'stroke-width': '5' })];
  return [
    ...changes.flatMap(({ day }) => upright(day, words.changed, '4 3', 'end')),
    ...upright(nowDay, words.now, '1 3', 'start'),
    ...reached,
  ];
}

/** A dot with its ±; of other water a ring. Its words come up where a pointer rests, and are read aloud. */
function readingParts(reading: BedReading, { x, y }: Scales): string[] {
  const { day, value, u95, of } = reading;
  const [px, low, high] = [
    pixelOf(x, day),
    pixelOf(y, Math.max(y.from, value - u95)),
    pixelOf(y, value + u95),
  ];
  const bar = (x1: number, y1: number, x2: number, y2: number) =>
    line(x1, y1, x2, y2, { 'stroke-width': '1.6' });
  const fill = of === 'these beds' ? INK : '#ffffff';
  return [
    element('g', {}, [
      element('title', {}, [escaped(words.saidReading(reading))]),
      bar(px, low, px, high),
      bar(px - 5, low, px + 5, low),
      bar(px - 5, high, px + 5, high),
      element('circle', { cx: px, cy: pixelOf(y, value), r: 4.5, fill, stroke: INK, 'stroke-width': '1.6' }),
    ]),
  ];
}

function legend(): string[] {
  const [y, below] = [HEIGHT - 42, HEIGHT - 18];
  const [first, second, third] = [FIELD.left, FIELD.left + 250, FIELD.left + 480];
  const sample = (cx: number, fill: string) =>
    element('circle', { cx, cy: y - 5, r: 4.5, fill, stroke: INK, 'stroke-width': '1.6' });
  const shade = {
    x: first,
    y: y - 14,
    width: 30,
    height: 16,
    fill: SHADE,
    stroke: FAINT,
    'stroke-width': '0.6',
  };
  return [
    element('rect', shade),
    line(first, y - 6, first + 30, y - 6, { 'stroke-width': '1.6' }),
    textElement(words.ofBand, { x: first + 38, y, 'font-size': 14 }),
    sample(second + 6, INK),
    textElement(words.ofReading, { x: second + 18, y, 'font-size': 14 }),
    sample(third + 6, '#ffffff'),
    textElement(words.ofOthers, { x: third + 18, y, 'font-size': 14 }),
    line(first, below - 5, first + 30, below - 5, { 'stroke-width': '5' }),
    textElement(words.reached, { x: first + 38, y: below, 'font-size': 14 }),
  ];
}
