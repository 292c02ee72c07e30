// The outpost file's shape as JSON Schema, for editors that complete and check while a keeper types.
import * as z from 'zod';
import { FILE_FORMAT, FILE_VERSION, fileSchema } from './shape/file-schema.ts';

/** What the schema says of the shape alone; the checks between sections are made only when the file is read. */
export function outpostJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = z.toJSONSchema(fileSchema(), { io: 'input', target: 'draft-2020-12' });
  return { $schema, title: `${FILE_FORMAT}, version ${FILE_VERSION}`, ...rest };
}
