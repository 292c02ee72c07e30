// The gauging plot: a picture that can be read without eyes, in black and grey, and whose marks lie where their figures are.
import { describe, expect, test } from 'vitest';
import { expectGolden } from '../../../tests/golden/record.ts';
import { oneStore } from '../../../tests/papers/sample-sheets.ts';
import { gaugingTable } from '../csv/gauging-table.ts';
import { gaugingPlot } from './gauging-plot.ts';

const svg = gaugingPlot(oneStore);

/** Throws when a tag is not closed by its own name; a tag is all between < and >. */
function mustBeNested(text: string): number {
  const open: string[] = [];
  let tags = 0;
  for (const [, closing, name, own] of text.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
    tags += 1;
    if (closing === '/') expect(open.pop()).toBe(name);
    else if (own !== '/') open.push(name ?? '');
  }
  expect(open).toEqual([]);
  return tags;
}

test('golden record of the picture and of its figures', () => {
  expectGolden('papers/store-plot.svg', svg);
  // A repository may turn CR LF into LF; that the lines end so is held beside csv-text.ts.
  expectGolden('papers/store-plot.csv', gaugingTable(oneStore).replaceAll('\r\n', '\n'));
});

describe('the picture', () => {
  test('is well nested, and has a title, a description and real text with units', () => {
    expect(mustBeNested(svg)).toBeGreaterThan(40);
    expect(svg).toMatch(/<title>C-03: content up to Day 46, Skerry<\/title>/);
    expect(svg).toMatch(/<desc>Content of C-03 .* 2\u00A0readings since it was first told/);
    for (const text of [
      'content, L',
      'outpost day',
      'capacity',
      '22\u00A0L',
      'usable remainder',
      '0.6\u00A0L',
    ])
      expect(svg).toContain(`>${text}</text>`);
  });

  test('has no colour', () => {
    const colours = [...svg.matchAll(/#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})/g)];
    expect(colours.length).toBeGreaterThan(20);
    for (const [, red, green, blue] of colours) expect([green, blue]).toEqual([red, red]);
  });

  test('has a mark for every reading, higher for more water, later to the right', () => {
    const marks = [...svg.matchAll(/<\/title>.*?<circle cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => ({
      x: Number(x),
      y: Number(y),
    }));
    const readings = oneStore.gauging.readings;
    expect(marks).toHaveLength(readings.length);
    for (const [k, mark] of marks.entries()) {
      const [next, here, then] = [marks[k + 1], readings[k], readings[k + 1]];
      if (next === undefined || here === undefined || then === undefined) continue;
      expect(next.x > mark.x).toBe(then.day > here.day);
      expect(next.y < mark.y).toBe(then.read.value > here.read.value);
    }
  });

  test('has no band above full or below empty, however little is known', () => {
    const { gauging } = oneStore;
    const unsure = gauging.estimates.map((each) => ({
      ...each,
      volume: { ...each.volume, u95: 3 * gauging.capacityL },
    }));
    const text = gaugingPlot({ ...oneStore, gauging: { ...gauging, estimates: unsure } });
    const heightOf = (pattern: RegExp) => Number(pattern.exec(text)?.[1]);
    const full = heightOf(/y1="([\d.]+)" [^>]*stroke-dasharray="9 4"/);
    const empty = heightOf(/x1="64" x2="752" y1="([\d.]+)" y2="\1" stroke="#000000"/);
    const band = /<path d="M([\d. L]+)Z"/.exec(text)?.[1] ?? '';
    const heights = band.split('L').map((place) => Number(place.split(' ')[1]));
    expect(heights).toHaveLength(2 * unsure.length);
    expect([Math.min(...heights), Math.max(...heights)]).toEqual([full, empty]);
  });

  test('says what nobody may type into it', () => {
    const odd = { ...oneStore, store: { ...oneStore.store, id: '<script>&', name: '"<b>' } };
    const text = gaugingPlot(odd);
    expect(mustBeNested(text)).toBeGreaterThan(40);
    expect(text).not.toContain('<script>');
  });

  test('of a store that nobody has told of is an empty field', () => {
    const bare = gaugingPlot({ ...oneStore, gauging: { ...oneStore.gauging, estimates: [], readings: [] } });
    expect(mustBeNested(bare)).toBeGreaterThan(20);
    expect(bare).not.toContain('NaN');
    expect(bare).not.toContain('Infinity');
  });
});

describe('its figures', () => {
  const lines = gaugingTable(oneStore).split('\r\n');

  test('are those of the sheet, one row each, in the order of time', () => {
    const { estimates, readings } = oneStore.gauging;
    expect(lines).toHaveLength(1 + estimates.length + readings.length + 1);
    const times = lines.slice(1, -1).map((line) => line.split(',')[2] ?? '');
    expect(times).toEqual([...times].sort());
    expect(lines.filter((line) => line.includes(',reading,'))).toHaveLength(readings.length);
  });

  test('have their units in the heads', () => {
    expect(lines[0]).toBe(
      'store,what,at,day,how,entry,volume_L,u95_L,believed_L,believed_u95_L,difference_L,difference_u95_L',
    );
  });
});
