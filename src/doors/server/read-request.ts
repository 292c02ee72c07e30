// Reads a request by the schemas of its route: what does not fit is told field by field, and nothing else is looked at.
import * as z from 'zod';
import { receivedAt, wantedBy } from '../../book/index.ts';
import { type Finding, nearest } from '../../ground/units/index.ts';
import { LIMITS } from './limits.ts';
import { type Refusal, refusal, serverFinding } from './refusal.ts';
import type { Route } from './routes/route.ts';
import { CLASHES } from './routes/sight-query.ts';
import { SECRET_FIELDS } from './shapes/code.ts';

type Values = Readonly<Record<string, unknown>>;
export type ReadRequest =
  | { readonly ok: true; readonly params: Values; readonly query: Values; readonly body: unknown }
  | { readonly ok: false; readonly refusal: Refusal };

/** @param given params and query as texts, and what the body was as JSON */
export function readRequest(
  route: Route,
  given: { readonly params: Values; readonly query: URLSearchParams; readonly body: unknown },
): ReadRequest {
  const twice = [...new Set(given.query.keys())].find((name) => given.query.getAll(name).length > 1);
  if (twice !== undefined) return no([wrong('query', twice, { wanted: 'text', received: 'more than one' })]);
  const typed = Object.fromEntries(given.query);
  const clash = CLASHES.find(([first, second]) => first in typed && second in typed);
  if (clash !== undefined) {
    return {
      ok: false,
      refusal: refusal(400, 'request-fields-clash', { first: clash[0], second: clash[1] }),
    };
  }
  const params = z.strictObject(route.params).safeParse(given.params);
  const query = z.strictObject(route.query).safeParse(typed);
  const body =
    route.body === null ? { success: true as const, data: null } : route.body.safeParse(given.body);
  const findings = [
    ...(params.success ? [] : faultsOf('query', params.error, { value: given.params, known: [] })),
    ...(query.success
      ? []
      : faultsOf('query', query.error, { value: typed, known: Object.keys(route.query) })),
    ...(body.success ? [] : faultsOf('body', body.error, { value: given.body, known: fieldsOf(route.body) })),
  ];
  if (!params.success || !query.success || !body.success) return no(findings);
  return { ok: true, params: params.data, query: query.data, body: body.data };
}

function no(findings: readonly Finding[]): ReadRequest {
  return { ok: false, refusal: { status: 400, findings: findings.slice(0, LIMITS.findings) } };
}

function fieldsOf(body: z.ZodType | null): readonly string[] {
  return body instanceof z.ZodObject ? Object.keys(body.shape) : [];
}

function faultsOf(
  part: 'query' | 'body',
  error: z.ZodError,
  given: { readonly value: unknown; readonly known: readonly string[] },
): readonly Finding[] {
  return error.issues.flatMap((issue) => faultOf(part, issue, given));
}

function faultOf(
  part: 'query' | 'body',
  issue: z.core.$ZodIssue,
  given: { readonly value: unknown; readonly known: readonly string[] },
): readonly Finding[] {
  const place = issue.path.map(String).join('.');
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => {
      const field = shortly(place === '' ? key : `${place}.${key}`);
      return serverFinding('request-field-unknown', { part, nearest: nearest(key, given.known) }, { field });
    });
  }
  const value = receivedAt(given.value, issue.path);
  const isSecret = issue.path.some((key) => SECRET_FIELDS.has(String(key)));
  const received = isSecret && value !== null ? 'something that no finding shows' : value;
  return [wrong(part, place, { ...wantedBy(issue), received })];
}

function wrong(part: 'query' | 'body', field: string, data: Finding['data']): Finding {
  return serverFinding('request-field-wrong', { part, ...data }, { field: shortly(field) });
}

function shortly(text: string): string {
  return text.toWellFormed().slice(0, 80);
}
