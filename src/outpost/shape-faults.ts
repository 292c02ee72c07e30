// What the schema has to say about a file, turned from its own issues into faults with a spot.
import type * as z from 'zod';
import { nearest } from '../ground/units/index.ts';
import { type Fault, MOST_FINDINGS, type OutpostFindingCode, type Path } from './outpost-finding.ts';
import {
  CLOCK_OFFSET_PATTERN,
  CLOCK_TIME_PATTERN,
  DATE_PATTERN,
  FORMULA_NAME_PATTERN,
  ID_PATTERN,
  LETTER_PATTERN,
  LOG_FIELD_PATTERN,
} from './shape/atoms.ts';
import { keysAt } from './shape/keys-at.ts';
import type { YamlTree } from './yaml-tree.ts';

type Issue = z.core.$ZodIssue;

/** What a value is, in words that the table of sentences knows. */
function kindOf(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'list';
  if (typeof value === 'object') return 'section';
  if (typeof value === 'string') return 'text';
  return typeof value === 'boolean' ? 'yes-no' : 'number';
}

const KIND_OF_TYPE: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'number',
  int: 'whole-number',
  boolean: 'yes-no',
  array: 'list',
  object: 'section',
};

const FORMS: readonly (readonly [string, string])[] = [
  [`${ID_PATTERN}`, 'id'],
  [`${DATE_PATTERN}`, 'date'],
  [`${CLOCK_TIME_PATTERN}`, 'clock-time'],
  [`${CLOCK_OFFSET_PATTERN}`, 'clock-offset'],
  [`${LETTER_PATTERN}`, 'letter'],
  [`${LOG_FIELD_PATTERN}`, 'log-field'],
  [`${FORMULA_NAME_PATTERN}`, 'formula-name'],
];

const END_KEYS = ['store', 'port', 'pool'] as const;

/** A value as written, short enough for a sentence. */
function shown(value: unknown): string {
  if (Array.isArray(value)) return `[${value.length}]`;
  if (typeof value === 'object' && value !== null) return '{…}';
  const text = String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** One issue of the schema may hold several faults, such as two keys that it does not know. */
type Faults = readonly Fault[];

export class ShapeFaults {
  readonly #tree: YamlTree;
  /** What the file was judged by: near names are chosen from its keys. */
  readonly #schema: z.ZodObject;

  constructor(tree: YamlTree, schema: z.ZodObject) {
    this.#tree = tree;
    this.#schema = schema;
  }

  /** `before` is the way to the value that the issue's own path starts from. */
  of(issue: Issue, before: Path = []): Faults {
    const path = [...before, ...(issue.path as Path)];
    const value = valueAt(this.#tree.value, path);
    if (issue.code === 'unrecognized_keys') return this.#unknownKeys(issue.keys, path);
    if ((value ?? null) === null && path.length > 0) return this.#missing(path, issue);
    switch (issue.code) {
      case 'invalid_type':
        return this.#wrongKind(path, KIND_OF_TYPE[issue.expected] ?? issue.expected, value);
      case 'invalid_value':
        return this.#notInList(path, issue.values.map(String), value);
      case 'invalid_union':
        return this.#union(issue, path, value);
      case 'invalid_format':
        return this.#wrongForm(path, issue, value);
      case 'too_small':
      case 'too_big':
        return this.#outOfRange(path, issue, value);
      default:
        return this.#wrongKind(path, issue.code, value);
    }
  }

  #fault(
    code: OutpostFindingCode,
    path: Path,
    data: Fault['data'],
    offset = this.#tree.spotOf(path),
  ): Faults {
    return [{ code, spot: { offset, path }, data }];
  }

  #unknownKeys(keys: readonly string[], path: Path): Faults {
    const known = keysAt(path, this.#tree.value, this.#schema);
    // Each costs a search for near names, and a file may have thousands of them.
    return keys.slice(0, MOST_FINDINGS + 1).flatMap((key) => {
      const at = [...path, key];
      return this.#fault(
        'key-unknown',
        at,
        { key, near: nearest(key, known), known },
        this.#tree.keySpotOf(at),
      );
    });
  }

  #missing(path: Path, issue: Issue): Faults {
    const key = String(path[path.length - 1]);
    const allowed = issue.code === 'invalid_value' ? issue.values.map(String) : [];
    const kind = issue.code === 'invalid_type' ? (KIND_OF_TYPE[issue.expected] ?? issue.expected) : 'text';
    return this.#fault('key-missing', path, { key, kind, allowed });
  }

  #wrongKind(path: Path, kind: string, value: unknown): Faults {
    return this.#fault('value-wrong-kind', path, {
      kind,
      receivedKind: kindOf(value),
      received: shown(value),
    });
  }

  #notInList(path: Path, allowed: readonly string[], value: unknown): Faults {
    const received = shown(value);
    return this.#fault('value-not-in-list', path, { allowed, received, near: nearest(received, allowed) });
  }

  #wrongForm(path: Path, issue: Issue, value: unknown): Faults {
    const pattern = 'pattern' in issue ? String(issue.pattern) : '';
    const form = FORMS.find(([known]) => known === pattern)?.[1] ?? 'length';
    return this.#fault('value-wrong-form', path, { form, received: shown(value) });
  }

  #outOfRange(path: Path, issue: Issue & { code: 'too_small' | 'too_big' }, value: unknown): Faults {
    if (typeof value === 'string') return this.#wrongForm(path, issue, value);
    const [side, edge] = issue.code === 'too_small' ? ['least', issue.minimum] : ['greatest', issue.maximum];
    const data = { side, edge: String(edge), inclusive: issue.inclusive !== false };
    if (Array.isArray(value)) return this.#fault('list-too-short', path, { ...data, received: value.length });
    return this.#fault('value-out-of-range', path, { ...data, received: shown(value) });
  }

  /** The only unions are the kinds of unit, told apart by `kind`, and the ends of a flow, told apart by their key. */
  #union(issue: Issue & { code: 'invalid_union' }, path: Path, value: unknown): Faults {
    if (path[path.length - 1] === 'kind')
      return this.#notInList(path, keysAt(path, this.#tree.value, this.#schema), value);
    if (kindOf(value) !== 'section') return this.#wrongKind(path, 'section', value);
    const has = END_KEYS.filter((key) => Object.hasOwn(value as object, key));
    const branch =
      has.length === 1 && has[0] !== undefined ? issue.errors[END_KEYS.indexOf(has[0])] : undefined;
    if (branch === undefined) return this.#fault('flow-end-unclear', path, { has });
    return branch.flatMap((inner) => this.of(inner as Issue, path));
  }
}
