// Judges one line by the shape of its kind: the typed line, or every fault with the field that it is in.
import type * as z from 'zod';
import { nearest } from '../../../ground/units/index.ts';
import type { FieldLogFault } from '../log-finding.ts';
import {
  DATE_PATTERN,
  GRADE_PATTERN,
  LINE_ID_PATTERN,
  NAME_PATTERN,
  TEXT_PATTERN,
  WAS_PATTERN,
} from './atoms.ts';
import { type AnyLine, isLineKind, type LineKind, lineShapes } from './line-shapes.ts';
import { branchKeys, fieldOf, keysAt, mayBeNull, type Path, valueAt } from './paths.ts';
import { kindOf, shown } from './shown.ts';

type Issue = z.core.$ZodIssue;
export type JudgedLine =
  | { readonly ok: true; readonly line: AnyLine }
  | { readonly ok: false; readonly faults: readonly FieldLogFault[] };

const TYPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'number',
  int: 'whole-number',
  boolean: 'yes-no',
  array: 'list',
  object: 'object',
  record: 'object',
};

const FORMS: ReadonlyMap<string, string> = new Map([
  [`${LINE_ID_PATTERN}`, 'id'],
  [`${NAME_PATTERN}`, 'name'],
  [`${TEXT_PATTERN}`, 'text'],
  [`${DATE_PATTERN}`, 'date'],
  [`${GRADE_PATTERN}`, 'grade'],
  [`${WAS_PATTERN}`, 'was'],
]);

export function judgeLine(value: Readonly<Record<string, unknown>>): JudgedLine {
  const { kind } = value;
  if (typeof kind !== 'string' || !isLineKind(kind)) return { ok: false, faults: [unknownKind(kind)] };
  const judged = lineShapes()[kind].safeParse(value, { jitless: true });
  if (judged.success) return { ok: true, line: judged.data as AnyLine };
  return { ok: false, faults: judged.error.issues.flatMap((issue) => new Judge(kind, value).faults(issue)) };
}

function unknownKind(kind: unknown): FieldLogFault {
  const received = kind === undefined ? null : shown(kind);
  const near = typeof kind === 'string' ? nearest(kind.slice(0, 60), Object.keys(lineShapes())) : [];
  return { code: 'log-kind-unknown', severity: 'error', field: 'kind', data: { received, nearest: near } };
}

class Judge {
  readonly #kind: LineKind;
  readonly #root: unknown;

  constructor(kind: LineKind, root: unknown) {
    this.#kind = kind;
    this.#root = root;
  }

  /** `before` is the way to the value that the issue's own path starts from. */
  faults(issue: Issue, before: Path = []): readonly FieldLogFault[] {
    const path = [...before, ...issue.path];
    switch (issue.code) {
      case 'unrecognized_keys':
        return issue.keys.map((key) => this.#unknownKey(key, path, keysAt(lineShapes()[this.#kind], path)));
      case 'invalid_union':
        return this.#union(issue, path);
      case 'invalid_key':
        return issue.issues.flatMap((inner) => this.#wrongText(inner as Issue, path, path.at(-1)));
      default:
        return [this.#wrong(issue, path, valueAt(this.#root, path))];
    }
  }

  #fault(code: FieldLogFault['code'], path: Path, data: FieldLogFault['data']): FieldLogFault {
    return { code, severity: 'error', field: fieldOf(path, this.#root), data };
  }

  #unknownKey(key: string, path: Path, known: readonly string[]): FieldLogFault {
    const data = { kind: this.#kind, key: shown(key), nearest: nearest(key.slice(0, 60), known), known };
    return this.#fault('log-field-unknown', [...path, key], data);
  }

  #wrong(issue: Issue, path: Path, value: unknown): FieldLogFault {
    const wanted = issue.code === 'invalid_type' ? (TYPES[issue.expected] ?? issue.expected) : 'text';
    const allowed = issue.code === 'invalid_value' ? issue.values.map(String) : [];
    if (value === undefined) {
      const nullable = mayBeNull(lineShapes()[this.#kind], path);
      return this.#fault('log-field-missing', path, {
        kind: this.#kind,
        wanted,
        allowed,
        mayBeNull: nullable,
      });
    }
    const received = shown(value);
    if (typeof value === 'number' && !Number.isFinite(value))
      return this.#fault('log-number-not-finite', path, {});
    if (issue.code === 'invalid_value') {
      return this.#fault('log-not-in-list', path, { allowed, received, nearest: nearest(received, allowed) });
    }
    if (issue.code === 'too_small' || issue.code === 'too_big') return this.#outOfRange(issue, path, value);
    if (issue.code === 'invalid_format') return this.#wrongText(issue, path, value);
    return this.#fault('log-type-wrong', path, { wanted, received, receivedKind: kindOf(value) });
  }

  #outOfRange(issue: Issue & { code: 'too_small' | 'too_big' }, path: Path, value: unknown): FieldLogFault {
    const [side, edge] = issue.code === 'too_small' ? ['least', issue.minimum] : ['most', issue.maximum];
    const data = { side, edge: String(edge), inclusive: issue.inclusive !== false };
    if (Array.isArray(value))
      return this.#fault('log-list-length', path, { ...data, received: value.length });
    if (typeof value !== 'string')
      return this.#fault('log-out-of-range', path, { ...data, received: shown(value) });
    return this.#fault('log-text-form', path, {
      ...data,
      form: 'length',
      received: shown(value),
      length: value.length,
    });
  }

  #wrongText(issue: Issue, path: Path, value: unknown): FieldLogFault {
    if (issue.code === 'too_small' || issue.code === 'too_big') return this.#outOfRange(issue, path, value);
    const form = FORMS.get('pattern' in issue ? String(issue.pattern) : '') ?? 'text';
    return this.#fault('log-text-form', path, { form, received: shown(value) });
  }

  /** The only union is that of two sets of counters: the one that the line has more keys of was meant. */
  #union(issue: Issue & { code: 'invalid_union' }, path: Path): readonly FieldLogFault[] {
    const value = valueAt(this.#root, path);
    if (value === undefined || kindOf(value) !== 'object') {
      return [this.#wrong({ ...issue, code: 'invalid_type', expected: 'object' } as Issue, path, value)];
    }
    const fewest = Math.min(...issue.errors.map(({ length }) => length));
    const branch = issue.errors.findIndex(({ length }) => length === fewest);
    const known = branchKeys(lineShapes()[this.#kind], path, branch);
    return (issue.errors[branch] ?? []).flatMap((inner) =>
      inner.code === 'unrecognized_keys'
        ? inner.keys.map((key) => this.#unknownKey(key, path, known))
        : this.faults(inner as Issue, path),
    );
  }
}
