// The gauging plot as a picture: the estimate of a store's content over the days, and every reading with its ±.
import { type Band, bandWithin } from '../sheets/band.ts';
import type { StoreSheet } from '../sheets/store.ts';
import type { GaugingPoint, GaugingSheet } from '../sheets/store-story.ts';
import * as words from '../words/en/gauging-plot.ts';
import { saidValue } from '../words/en/said.ts';
import { element, escaped, place, textElement } from './element.ts';
import { plotRange } from './plot-range.ts';
import { pixelOf, type Scale, ticks } from './scale.ts';

const WIDTH = 880;
const HEIGHT = 470;
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
 * Its figures are those of the sheet, in litres.
 */
export function gaugingPlot(sheet: StoreSheet): string {
  const scales = scalesOf(sheet);
  const { store, head } = sheet;
  const parts = [
    element('title', {}, [escaped(words.plotTitle(store.id, head))]),
    element('desc', {}, [escaped(words.plotDescription(sheet))]),
    element('rect', { width: WIDTH, height: HEIGHT, fill: '#ffffff' }),
    textElement(words.plotTitle(store.id, head), {
      x: FIELD.left,
      y: 30,
      'font-size': 19,
      'font-weight': 'bold',
    }),
    textElement(words.plotSubtitle(store), { x: FIELD.left, y: 52, 'font-size': 14 }),
    ...yAxis(scales),
    ...xAxis(scales),
    ...estimateParts(sheet.gauging, scales),
    ...limits(sheet, scales),
    ...sheet.gauging.readings.flatMap((reading) => readingParts(reading, scales)),
    ...legend(),
  ];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" ${FONT} fill="${INK}">`,
    ...parts,
    '</svg>',
    '',
  ].join('\n');
}

function scalesOf({ gauging, head }: StoreSheet): Scales {
  const { estimates, readings } = gauging;
  const days = [...estimates, ...readings].map(({ day }) => day);
  const first = Math.floor(Math.min(head.day, ...days));
  const last = Math.max(head.day + 1, ...days);
  const [low, high] = plotRange(gauging);
  return {
    x: { from: first, to: last, pixelFrom: FIELD.left, pixelTo: FIELD.right },
    y: { from: low, to: high, pixelFrom: FIELD.bottom, pixelTo: FIELD.top },
  };
}

function yAxis({ y }: Scales): string[] {
  const lines = ticks({ from: y.from, to: y.to, most: 7 }).flatMap((value) => {
    const at = pixelOf(y, value);
    return [
      element('line', {
        x1: FIELD.left,
        x2: FIELD.right,
        y1: at,
        y2: at,
        stroke: FAINT,
        'stroke-width': '0.6',
      }),
      textElement(saidValue(value, ''), {
        x: FIELD.left - 8,
        y: at + 5,
        'font-size': 14,
        'text-anchor': 'end',
      }),
    ];
  });
  return [...lines, textElement(words.content, { x: 12, y: FIELD.top - 6, 'font-size': 14 })];
}

function xAxis({ x }: Scales): string[] {
  const marks = ticks({ from: x.from, to: x.to, most: 10, whole: true }).flatMap((day) => {
    const at = pixelOf(x, day);
    return [
      element('line', {
        x1: at,
        x2: at,
        y1: FIELD.bottom,
        y2: FIELD.bottom + 6,
        stroke: INK,
        'stroke-width': '1',
      }),
      textElement(saidValue(day, ''), {
        x: at,
        y: FIELD.bottom + 22,
        'font-size': 14,
        'text-anchor': 'middle',
      }),
    ];
  });
  const axis = element('line', {
    x1: FIELD.left,
    x2: FIELD.right,
    y1: FIELD.bottom,
    y2: FIELD.bottom,
    stroke: INK,
    'stroke-width': '1',
  });
  const title = textElement(words.days, {
    x: FIELD.right,
    y: FIELD.bottom + 42,
    'font-size': 14,
    'text-anchor': 'end',
  });
  return [axis, ...marks, title];
}

/** What it can hold and what stays in it: each line has its name and its figure beside the field, where nothing else is. */
function limits({ gauging }: StoreSheet, { y }: Scales): string[] {
  const line = (value: number, name: string, dashes: string) => {
    const at = pixelOf(y, value);
    const x = FIELD.right + 8;
    return [
      element('line', {
        x1: FIELD.left,
        x2: FIELD.right,
        y1: at,
        y2: at,
        stroke: INK,
        'stroke-width': '1.2',
        'stroke-dasharray': dashes,
      }),
      textElement(name, { x, y: at - 3, 'font-size': 13 }),
      textElement(saidValue(value, 'L'), { x, y: at + 12, 'font-size': 13 }),
    ];
  };
  return [
    ...line(gauging.capacityL, words.capacity, '9 4'),
    ...line(gauging.remainderL, words.remainder, '2 4'),
  ];
}

function estimateParts({ estimates, capacityL }: GaugingSheet, { x, y }: Scales): string[] {
  if (estimates.length === 0) return [];
  const edge = (side: keyof Band) =>
    estimates.map(({ day, volume }) => at(pixelOf(x, day), pixelOf(y, bandWithin(volume, capacityL)[side])));
  const middle = estimates.map(({ day, volume }) => at(pixelOf(x, day), pixelOf(y, volume.value)));
  return [
    element('path', {
      d: `M${[...edge('high'), ...edge('low').toReversed()].join('L')}Z`,
      fill: SHADE,
      stroke: FAINT,
      'stroke-width': '0.6',
    }),
    element('path', {
      d: `M${middle.join('L')}`,
      fill: 'none',
      stroke: INK,
      'stroke-width': '1.6',
      'stroke-linejoin': 'round',
    }),
  ];
}

function at(x: number, y: number): string {
  return `${place(x)} ${place(y)}`;
}

/** A dot with its ±; what was only told the first time is a ring. Its words come up where a pointer rests, and are read aloud. */
function readingParts(reading: GaugingPoint, { x, y }: Scales): string[] {
  const { day, read, believed } = reading;
  const [px, u95] = [pixelOf(x, day), read.u95 ?? 0];
  const low = pixelOf(y, Math.max(y.from, read.value - u95));
  const high = pixelOf(y, Math.min(y.to, read.value + u95));
  const bar = (x1: number, y1: number, x2: number, y2: number) =>
    element('line', { x1, y1, x2, y2, stroke: INK, 'stroke-width': '1.6' });
  const fill = believed === null ? '#ffffff' : INK;
  const dot = { cx: px, cy: pixelOf(y, read.value), r: 4.5, fill, stroke: INK, 'stroke-width': '1.6' };
  return [
    element('g', {}, [
      element('title', {}, [escaped(words.saidReading(reading))]),
      bar(px, low, px, high),
      bar(px - 5, low, px + 5, low),
      bar(px - 5, high, px + 5, high),
      element('circle', dot),
    ]),
  ];
}

function legend(): string[] {
  const y = HEIGHT - 22;
  const [first, second, third] = [FIELD.left, FIELD.left + 300, FIELD.left + 500];
  const sample = (cx: number, fill: string) =>
    element('circle', { cx, cy: y - 5, r: 4.5, fill, stroke: INK, 'stroke-width': '1.6' });
  return [
    element('rect', {
      x: first,
      y: y - 14,
      width: 30,
      height: 16,
      fill: SHADE,
      stroke: FAINT,
      'stroke-width': '0.6',
    }),
    element('line', { x1: first, x2: first + 30, y1: y - 6, y2: y - 6, stroke: INK, 'stroke-width': '1.6' }),
    textElement(words.ofEstimate, { x: first + 38, y, 'font-size': 14 }),
    sample(second + 6, INK),
    textElement(words.ofReading, { x: second + 18, y, 'font-size': 14 }),
    sample(third + 6, '#ffffff'),
    textElement(words.ofFirst, { x: third + 18, y, 'font-size': 14 }),
  ];
}
