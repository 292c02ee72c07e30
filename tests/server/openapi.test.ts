// The description of the interface against what the server does: every address, every example, and answers read by other code than the server's own.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as z from 'zod';
import { type Route, routes } from '../../src/doors/server/index.ts';
import { type Answered, TestServer } from './harness.ts';
import { misfits } from './json-schema.ts';

const ROUTES = await routes();

type Json = Readonly<Record<string, any>>;
let server: TestServer;
let described: Json;
beforeAll(async () => {
  server = await TestServer.start();
  described = JSON.parse((await server.ask('/api/openapi.json')).text) as Json;
});
afterAll(() => server.end());

function operationOf({ path, method }: Route): Json {
  return described['paths'][path]?.[method];
}

function addressOf({ path, example }: Route): string {
  const whole = path.replaceAll(/\{(\w+)\}/g, (_, name: string) =>
    encodeURIComponent(example.params?.[name] ?? ''),
  );
  const query = new URLSearchParams(example.query ?? {}).toString();
  return query === '' ? whole : `${whole}?${query}`;
}

function askExample(route: Route): Promise<Answered> {
  return server.ask(addressOf(route), route.body === null ? {} : { body: route.example.body });
}

function schemaAt(responses: Json, status: number): Json {
  const content = (responses[status] ?? responses['default']) as Json;
  return content['content']['application/json']?.['schema'];
}

/** The schema of an error is named once for all. */
function whole(schema: Json): Json {
  return schema['$ref'] === '#/components/schemas/Error'
    ? (described['components']['schemas']?.['Error'] as never)
    : schema;
}

test('it is OpenAPI 3.1 and has every address of the table once', () => {
  expect(described['openapi']).toBe('3.1.0');
  const paths = described['paths'] as Json;
  const listed = Object.entries(paths).flatMap(([path, operations]) =>
    Object.keys(operations).map((method) => `${method} ${path}`),
  );
  expect(listed.sort()).toEqual(ROUTES.map(({ method, path }) => `${method} ${path}`).sort());
  expect(listed.length).toBeGreaterThan(20);
  const ids = ROUTES.map((route) => operationOf(route)['operationId']);
  expect(new Set(ids).size).toBe(ids.length);
});

describe.each(ROUTES.map((route) => [`${route.method} ${route.path}`, route] as const))(
  '%s',
  (_name, route) => {
    test('its example gets an answer that both the schema and the description know', async () => {
      const ran = await askExample(route);
      const isError = ran.schema === 'error';
      expect(isError || ran.schema === route.schema).toBe(true);
      const shape = z.strictObject({
        schema: z.string(),
        version: z.literal(1),
        data: isError ? z.array(z.unknown()) : route.answer,
      });
      expect(shape.safeParse(JSON.parse(ran.text)).error?.issues ?? []).toEqual([]);
      const responses = operationOf(route)['responses'] as Json;
      expect(misfits(whole(schemaAt(responses, isError ? 0 : ran.status)), JSON.parse(ran.text))).toEqual([]);
      expect(isError).toBe(false);
    });

    test('control: an answer with a field more, or one less, fits neither', async () => {
      const ran = await askExample(route);
      const schema = whole(
        schemaAt(operationOf(route)['responses'] as Json, ran.schema === 'error' ? 0 : ran.status),
      );
      const answer = JSON.parse(ran.text) as Record<string, unknown>;
      expect(misfits(schema, { ...answer, more: 1 })).not.toEqual([]);
      const { data: _data, ...less } = answer;
      expect(misfits(schema, less)).not.toEqual([]);
    });

    test('a query or a body that the description does not know is refused', async () => {
      const address = addressOf(route);
      const asked =
        route.body === null
          ? await server.ask(`${address}${address.includes('?') ? '&' : '?'}more=1`)
          : await server.ask(address, { body: { ...(route.example.body as object), more: 1 } });
      expect(asked.status).toBe(400);
      if (route.body === null) return;
      const body = (operationOf(route)['requestBody'] as Json)['content']?.['application/json'];
      expect(misfits(body['schema'], route.example.body)).toEqual([]);
      expect(misfits(body['schema'], { ...(route.example.body as object), more: 1 })).not.toEqual([]);
    });
  },
);
