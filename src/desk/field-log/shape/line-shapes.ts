// Table of the kinds of line in field log version 1, each with its strict shape. A new kind is a shape here and a reading in map/.
import type * as z from 'zod';
import { makeAtoms } from './atoms.ts';
import { eventShapes } from './events.ts';
import { flowShapes } from './flows.ts';
import { openingShapes } from './opening.ts';
import { qualityShapes } from './quality.ts';
import { readingShapes } from './readings.ts';
import { visitShapes } from './visits.ts';

function makeShapes() {
  const a = makeAtoms();
  return {
    ...openingShapes(a),
    ...readingShapes(a),
    ...flowShapes(a),
    ...visitShapes(a),
    ...qualityShapes(a),
    ...eventShapes(a),
  };
}

export type LineShapes = ReturnType<typeof makeShapes>;
export type LineKind = keyof LineShapes;
/** A line of one kind, as its shape lets it through. */
export type LineOf<K extends LineKind> = z.output<LineShapes[K]>;
export type AnyLine = { [K in LineKind]: LineOf<K> }[LineKind];

let made: LineShapes | undefined;

/** Built once, on first use: a program that reads no log pays nothing for it. */
export function lineShapes(): LineShapes {
  made ??= makeShapes();
  return made;
}

export function isLineKind(name: string): name is LineKind {
  return Object.hasOwn(lineShapes(), name);
}
