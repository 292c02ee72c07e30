// Checks that a draft has the shape of its kind, and says of each fault where it is.
import * as z from 'zod';
import { type Finding, type FindingData, nearest } from '../ground/units/index.ts';
import { type AnyDraft, envelopeShape } from './entry.ts';
import { receivedAt, wantedBy } from './field-fault.ts';
import type { BookFindingCode } from './finding-codes.ts';
import { isKind, type Kind, kindNames, kinds, kindVersion } from './kinds/index.ts';
import { findUnspellable } from './unspellable.ts';

export type BookFinding = Finding<BookFindingCode>;

const { site: _site, number: _number, ...draftShape } = envelopeShape;
const schemas = new Map<string, z.ZodType>();

function draftSchema(kind: Kind): z.ZodType {
  let schema = schemas.get(kind);
  if (schema === undefined) {
    const shape = { ...draftShape, kind: z.literal(kind), body: kinds[kind] };
    // What comes out has its keys in the order of the shape: sorted ones are half way to the canonical form.
    schema = z.strictObject(Object.fromEntries(Object.entries(shape).sort(([a], [b]) => (a < b ? -1 : 1))));
    schemas.set(kind, schema);
  }
  return schema;
}

/**
 * Reads a draft of any kind. What comes back is a fresh copy that carries listed fields only.
 * @param value anything, e.g. a parsed line of JSON
 * @param where what findings say about its place
 */
export function readDraft(
  value: unknown,
  where: Finding['where'] = {},
): { ok: true; draft: AnyDraft } | { ok: false; findings: BookFinding[] } {
  const kind = kindOf(value);
  if (kind === null || !isKind(kind)) return { ok: false, findings: [unknownKind(kind, where)] };
  const version = (value as { version?: unknown }).version;
  if (typeof version === 'number' && version > kindVersion(kind)) {
    const data = { kind, version, known: kindVersion(kind) };
    return { ok: false, findings: [{ code: 'shape-newer', severity: 'error', where, data, entries: [] }] };
  }
  const result = draftSchema(kind).safeParse(value);
  if (result.success) {
    const fault = findUnspellable(result.data);
    if (fault === null) return { ok: true, draft: result.data as AnyDraft };
    return { ok: false, findings: [fieldWrong(kind, where, fault.field, { wanted: fault.wanted })] };
  }
  return {
    ok: false,
    findings: result.error.issues.flatMap((issue) => toFindings(issue, where, kind, value)),
  };
}

function kindOf(value: unknown): string | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  if (!Object.hasOwn(value, 'kind')) return null;
  const kind = (value as { kind: unknown }).kind;
  return typeof kind === 'string' ? kind : null;
}

function unknownKind(kind: string | null, where: Finding['where']): BookFinding {
  const near = kind === null ? [] : nearest(kind.slice(0, 60), kindNames);
  return {
    code: 'kind-unknown',
    severity: 'error',
    where: { ...where, field: 'kind' },
    data: { received: kind === null ? null : kind.slice(0, 60), nearest: near },
    entries: [],
  };
}

function toFindings(
  issue: z.core.$ZodIssue,
  where: Finding['where'],
  kind: Kind,
  value: unknown,
): BookFinding[] {
  const path = issue.path.map(String).join('.');
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({
      code: 'field-unknown',
      severity: 'error',
      where: { ...where, field: path === '' ? key.slice(0, 60) : `${path}.${key.slice(0, 60)}` },
      data: { kind, field: key.slice(0, 60) },
      entries: [],
    }));
  }
  const data = { ...wantedBy(issue), received: receivedAt(value, issue.path) };
  return [fieldWrong(kind, where, path, data)];
}

function fieldWrong(kind: Kind, where: Finding['where'], field: string, more: FindingData): BookFinding {
  const data = { kind, field, received: null, ...more };
  return { code: 'field-wrong', severity: 'error', where: { ...where, field }, data, entries: [] };
}
