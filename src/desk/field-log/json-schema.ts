// The shape of a field log's lines as JSON Schema, for programs and editors that write or check logs elsewhere.
import * as z from 'zod';
import { lineShapes } from './shape/line-shapes.ts';
import { LOG_FORMAT, LOG_VERSION } from './shape/opening.ts';

/** One line is one of the kinds. Names, times and days are held against the outpost file only when a log is read. */
export function fieldLogJsonSchema(): Readonly<Record<string, unknown>> {
  const shapes = Object.entries(lineShapes()).map(([kind, shape]) => {
    const { $schema: _, ...rest } = z.toJSONSchema(shape, { io: 'input', target: 'draft-2020-12' });
    return [kind, rest] as const;
  });
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: `${LOG_FORMAT}, version ${LOG_VERSION}: one line`,
    oneOf: shapes.map(([kind]) => ({ $ref: `#/$defs/${kind}` })),
    $defs: Object.fromEntries(shapes),
  };
}
