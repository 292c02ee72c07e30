// A YAML text as a tree of plain values, with the spot of every key and value for the findings.
import { isMap, isScalar, isSeq, LineCounter, type Node, type Pair, parseDocument, type Scalar, type YAMLMap } from 'yaml';
import type { Fault, OutpostFindingCode } from './outpost-finding.ts';
import { GREATEST_DEPTH } from './yaml-caps.ts';

export type Path = readonly (string | number)[];

export interface YamlTree {
  readonly value: unknown;
  readonly faults: readonly Fault[];
  /** Where the value at a path begins; for a path that leads nowhere, the nearest thing around it. */
  readonly spotOf: (path: Path) => number;
  /** Where the key at the end of a path begins. */
  readonly keySpotOf: (path: Path) => number;
}

const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);
/** Spellings of numbers that people and programs read differently: 012, 0o17, 0x1F, .inf, .nan. */
const ODD_NUMBER = /^[-+]?(?:0\d|0o|0x)/;

const CODES_OF_YAML: Readonly<Record<string, OutpostFindingCode>> = {
  MULTIPLE_DOCS: 'yaml-more-than-one-document',
  TAB_AS_INDENT: 'yaml-tab-indent',
};

/** `stores[3].capacityL` */
export function fieldOf(path: Path): string {
  let field = '';
  for (const step of path) field += typeof step === 'number' ? `[${step}]` : field === '' ? step : `.${step}`;
  return field;
}

const offsetOf = (node: unknown): number | undefined => (node as Node | null | undefined)?.range?.[0];

class TreeReader {
  readonly faults: Fault[] = [];

  #fault(code: OutpostFindingCode, node: unknown, path: Path, data: Fault['data']): undefined {
    this.faults.push({ code, spot: { offset: offsetOf(node) ?? 0, field: fieldOf(path) }, data });
    return undefined;
  }

  read(node: unknown, path: Path): unknown {
    if (path.length > GREATEST_DEPTH) return this.#fault('file-too-deep', node, path.slice(0, 3), { greatest: GREATEST_DEPTH });
    if (isMap(node)) return this.#map(node as YAMLMap, path);
    if (isSeq(node)) return node.items.map((item, index) => this.read(item, [...path, index]));
    if (isScalar(node)) return this.#scalar(node, path);
    return null;
  }

  #scalar(node: Scalar, path: Path): unknown {
    const { value } = node;
    if (typeof value !== 'number') return value;
    const written = (node.source ?? '').slice(0, 40);
    if (!Number.isFinite(value)) return this.#fault('number-not-finite', node, path, { written });
    if (ODD_NUMBER.test(written)) return this.#fault('number-spelling', node, path, { written });
    return value === 0 ? 0 : value;
  }

  #map(node: YAMLMap, path: Path): unknown {
    const result: Record<string, unknown> = Object.create(null);
    for (const pair of node.items) this.#pair(pair, path, result);
    return result;
  }

  #pair(pair: Pair, path: Path, result: Record<string, unknown>): void {
    const key = isScalar(pair.key) ? pair.key.value : undefined;
    if (typeof key !== 'string') this.#fault('key-not-text', pair.key ?? pair.value, path, {});
    else if (FORBIDDEN_KEYS.has(key)) this.#fault('key-forbidden', pair.key, path, { key });
    else if (key === '<<') this.#fault('yaml-merge-key', pair.key, path, {});
    // Checked here and not by the parser, which compares every key with every other.
    else if (Object.hasOwn(result, key)) this.#fault('yaml-duplicate-key', pair.key, [...path, key], { key });
    else result[key] = this.read(pair.value, [...path, key]);
  }
}

/** Walks from the root along a path as far as it goes. */
function walk(root: unknown, path: Path): { offset: number; keyOffset: number } {
  let node = root;
  let offset = offsetOf(root) ?? 0;
  let keyOffset = offset;
  for (const step of path) {
    if (isSeq(node) && typeof step === 'number') {
      node = node.items[step];
      keyOffset = offsetOf(node) ?? offset;
    } else if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && item.key.value === step);
      if (pair === undefined) break;
      keyOffset = offsetOf(pair.key) ?? offset;
      node = pair.value;
    } else break;
    offset = offsetOf(node) ?? keyOffset;
  }
  return { offset, keyOffset };
}

/** Parses one document that has passed the guards. Never throws; what is wrong is in `faults`. */
export function readYamlTree(text: string, lines: LineCounter): YamlTree {
  const document = parseDocument(text, {
    version: '1.2', schema: 'core', merge: false, uniqueKeys: false, strict: true, prettyErrors: false, logLevel: 'silent', lineCounter: lines,
  });
  const reader = new TreeReader();
  const value = reader.read(document.contents, []);
  const broken = document.errors.map((error): Fault => {
    const code = CODES_OF_YAML[error.code] ?? 'yaml-broken';
    return { code, spot: { offset: error.pos[0] }, data: { reason: error.code } };
  });
  const nothing: Fault[] = broken.length === 0 && value === null ? [{ code: 'file-empty', spot: { offset: 0 }, data: {} }] : [];
  return {
    value,
    faults: [...broken, ...nothing, ...reader.faults],
    spotOf: (path) => walk(document.contents, path).offset,
    keySpotOf: (path) => walk(document.contents, path).keyOffset,
  };
}
