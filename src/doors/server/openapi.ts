// The description of the interface: OpenAPI 3.1, made of the same schemas that the server holds requests against.
import * as z from 'zod';
import type { Route } from './routes/route.ts';
import { finding } from './shapes/figures.ts';

type Json = Readonly<Record<string, unknown>>;

export function documentOf(routes: readonly Route[], version: string): Json {
  return {
    openapi: '3.1.0',
    info: {
      title: 'Waterwright',
      version,
      description:
        'The book of water over HTTP, on this machine only. Every answer is {schema, version, data}; what was not done is {schema: "error", version, data: [finding, ...]}. Every ± is 95 %.',
    },
    security: [{ key: [] }, { page: [] }],
    paths: { ...pathsOf(routes) },
    components: {
      securitySchemes: {
        key: {
          type: 'http',
          scheme: 'bearer',
          description: 'stands in the file BOOK.server, for this user only',
        },
        page: {
          type: 'apiKey',
          in: 'cookie',
          name: 'waterwright-PORT',
          description: 'a page gets it for its launch token',
        },
      },
      schemas: { Error: schemaOf(errorShape, 'output') },
    },
  };
}

const errorShape = z.strictObject({
  schema: z.literal('error'),
  version: z.literal(1),
  data: z.array(finding).min(1),
});

function pathsOf(routes: readonly Route[]): Json {
  const paths = new Map<string, Record<string, Json>>();
  for (const route of routes) {
    const operations = paths.get(route.path) ?? {};
    operations[route.method] = operationOf(route);
    paths.set(route.path, operations);
  }
  return Object.fromEntries(paths);
}

function operationOf(route: Route): Json {
  const { does, schema, example } = route;
  return {
    operationId: `${route.method} ${route.path}`,
    summary: does,
    parameters: [
      ...parametersOf(route.params, { in: 'path', examples: example.params }),
      ...parametersOf(route.query, { in: 'query', examples: example.query }),
    ],
    ...(route.body !== null && {
      requestBody: {
        required: true,
        content: { [JSON_TYPE]: { schema: schemaOf(route.body, 'input'), example: example.body } },
      },
    }),
    responses: {
      ...Object.fromEntries(
        statusesOf(route).map((status) => [status, { description: schema, content: contentOf(route) }]),
      ),
      default: { description: 'not done, and why', content: { [JSON_TYPE]: { schema: { $ref: ERROR } } } },
    },
  };
}

const JSON_TYPE = 'application/json';
const ERROR = '#/components/schemas/Error';

function statusesOf({ keeps }: Route): readonly string[] {
  return keeps === true ? ['201', '200'] : ['200'];
}

function contentOf({ schema, answer }: Route): Json {
  const whole = z.strictObject({ schema: z.literal(schema), version: z.literal(1), data: answer });
  return { [JSON_TYPE]: { schema: schemaOf(whole, 'output') } };
}

function parametersOf(
  fields: Route['params'],
  how: { readonly in: 'path' | 'query'; readonly examples: Readonly<Record<string, string>> | undefined },
): readonly Json[] {
  return Object.entries(fields).map(([name, field]) => {
    const { description, ...schema } = schemaOf(field, 'input');
    const example = how.examples?.[name];
    return {
      name,
      in: how.in,
      required: how.in === 'path',
      ...(description !== undefined && { description }),
      schema,
      ...(example !== undefined && { example }),
    };
  });
}

/** Parts with a name of their own stand in `$defs` of the schema that uses them, so that each schema is whole by itself. */
export function schemaOf(shape: z.ZodType, io: 'input' | 'output'): Json {
  const { $schema: _, ...schema } = z.toJSONSchema(shape, { io, target: 'draft-2020-12' });
  return schema;
}
