// What the schema has to say about a file, turned from its own issues into faults with a spot.
import type { z } from 'zod';
import { nearest } from '../ground/units/index.ts';
import type { Fault, OutpostFindingCode } from './outpost-finding.ts';
import { CLOCK_OFFSET_PATTERN, CLOCK_TIME_PATTERN, DATE_PATTERN, ID_PATTERN } from './shape/atoms.ts';
import { keysAt } from './shape/keys-at.ts';
import { fieldOf, type Path, type YamlTree } from './yaml-tree.ts';

type Issue = z.core.$ZodIssue;

/** What a value is, in words that the table of sentences knows. */
export function kindOf(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'list';
  if (typeof value === 'object') return 'section';
  if (typeof value === 'string') return 'text';
  return typeof value === 'boolean' ? 'yes-no' : 'number';
}

const KIND_OF_TYPE: Readonly<Record<string, string>> = {
  string: 'text', number: 'number', int: 'whole-number', boolean: 'yes-no', array: 'list', object: 'section',
};

const FORMS: readonly (readonly [string, string])[] = [
  [`${ID_PATTERN}`, 'id'],
  [`${DATE_PATTERN}`, 'date'],
  [`${CLOCK_TIME_PATTERN}`, 'clock-time'],
  [`${CLOCK_OFFSET_PATTERN}`, 'clock-offset'],
];

const END_KEYS = ['store', 'port', 'pool'] as const;

/** A value as written, short enough for a sentence. */
export function shown(value: unknown): string {
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

export class ShapeFaults {
  readonly #tree: YamlTree;
  readonly faults: Fault[] = [];

  constructor(tree: YamlTree) {
    this.#tree = tree;
  }

  #add(code: OutpostFindingCode, path: Path, data: Fault['data'], offset = this.#tree.spotOf(path)): void {
    this.faults.push({ code, spot: { offset, field: fieldOf(path) }, data });
  }

  take(issue: Issue, before: Path = []): void {
    const path = [...before, ...(issue.path as Path)];
    const value = valueAt(this.#tree.value, path);
    if (issue.code === 'unrecognized_keys') return this.#unknownKeys(issue.keys, path);
    if (value === undefined && path.length > 0) return this.#missing(path, issue);
    switch (issue.code) {
      case 'invalid_type': return this.#wrongKind(path, KIND_OF_TYPE[issue.expected] ?? issue.expected, value);
      case 'invalid_value': return this.#notInList(path, issue.values.map(String), value);
      case 'invalid_union': return this.#union(issue, path, value);
      case 'invalid_format': return this.#wrongForm(path, issue, value);
      case 'too_small':
      case 'too_big': return this.#outOfRange(path, issue, value);
      default: return this.#wrongKind(path, issue.code, value);
    }
  }

  #unknownKeys(keys: readonly string[], path: Path): void {
    const known = keysAt(path, this.#tree.value);
    for (const key of keys) {
      const near = nearest(key, known);
      this.#add('key-unknown', [...path, key], { key, near, known }, this.#tree.keySpotOf([...path, key]));
    }
  }

  #missing(path: Path, issue: Issue): void {
    const key = String(path[path.length - 1]);
    const allowed = issue.code === 'invalid_value' ? issue.values.map(String) : [];
    const kind = issue.code === 'invalid_type' ? (KIND_OF_TYPE[issue.expected] ?? issue.expected) : 'text';
    this.#add('key-missing', path, { key, kind, allowed });
  }

  #wrongKind(path: Path, kind: string, value: unknown): void {
    this.#add('value-wrong-kind', path, { kind, receivedKind: kindOf(value), received: shown(value) });
  }

  #notInList(path: Path, allowed: readonly string[], value: unknown): void {
    this.#add('value-not-in-list', path, { allowed, received: shown(value), near: nearest(shown(value), allowed) });
  }

  #wrongForm(path: Path, issue: Issue, value: unknown): void {
    const pattern = 'pattern' in issue ? String(issue.pattern) : '';
    const form = FORMS.find(([known]) => known === pattern)?.[1] ?? 'letters';
    this.#add('value-wrong-form', path, { form, pattern: form === 'letters' ? pattern : '', received: shown(value) });
  }

  #outOfRange(path: Path, issue: Issue & { code: 'too_small' | 'too_big' }, value: unknown): void {
    const edge = issue.code === 'too_small' ? issue.minimum : issue.maximum;
    const side = issue.code === 'too_small' ? 'least' : 'greatest';
    const data = { side, edge: String(edge), inclusive: issue.inclusive !== false, received: shown(value) };
    if (Array.isArray(value)) this.#add('list-too-short', path, { ...data, received: value.length });
    else if (typeof value === 'string') this.#add('value-wrong-form', path, { form: 'length', pattern: '', received: shown(value) });
    else this.#add('value-out-of-range', path, data);
  }

  /** The only unions are the kinds of unit, told apart by `kind`, and the ends of a flow, told apart by their key. */
  #union(issue: Issue & { code: 'invalid_union' }, path: Path, value: unknown): void {
    if (path[path.length - 1] === 'kind') return this.#notInList(path, keysAt(path, this.#tree.value), value);
    if (kindOf(value) !== 'section') return this.#wrongKind(path, 'section', value);
    const has = END_KEYS.filter((key) => Object.hasOwn(value as object, key));
    const branch = has.length === 1 && has[0] !== undefined ? issue.errors[END_KEYS.indexOf(has[0])] : undefined;
    if (branch === undefined) return this.#add('flow-end-unclear', path, { has });
    for (const inner of branch) this.take(inner as Issue, path);
  }
}
