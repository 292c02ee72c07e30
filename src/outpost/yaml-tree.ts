// A YAML text as a tree of plain values, with the spot of every key and value for the findings.
import {
  Composer,
  type Document,
  isMap,
  isScalar,
  isSeq,
  type LineCounter,
  type Node,
  type Pair,
  Parser,
  type Scalar,
  type YAMLMap,
} from 'yaml';
import type { Fault, OutpostFindingCode, Path } from './outpost-finding.ts';
import { GREATEST_DEPTH } from './yaml-caps.ts';

export interface YamlTree {
  readonly value: unknown;
  /** Where the text is no YAML: what stands behind such a place may have been misread. */
  readonly broken: readonly Fault[];
  /** Keys and numbers that were left out of `value`. */
  readonly faults: readonly Fault[];
  /** Where the value at a path begins; for a path that leads nowhere, the nearest thing around it. */
  readonly spotOf: (path: Path) => number;
  /** Where the key at the end of a path begins. */
  readonly keySpotOf: (path: Path) => number;
}

const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);
/** Spellings of numbers that people and programs read differently: 012, 0o17, 0x1F, .inf, .nan. */
const ODD_NUMBER = /^[-+]?(?:0\d|0o|0x)/;

const offsetOf = (node: unknown): number | undefined => (node as Node | null | undefined)?.range?.[0];

class TreeReader {
  readonly faults: Fault[] = [];
  /** The way to the node in hand. One list for the whole walk: a copy for every node would cost more than the walk. */
  readonly #path: (string | number)[] = [];

  #fault(code: OutpostFindingCode, node: unknown, data: Fault['data'] = {}): undefined {
    this.faults.push({
      code,
      spot: { offset: offsetOf(node) ?? 0, path: this.#path.slice(0, 8) },
      data,
    });
    return undefined;
  }

  read(node: unknown): unknown {
    if (this.#path.length > GREATEST_DEPTH)
      return this.#fault('file-too-deep', node, { greatest: GREATEST_DEPTH });
    if (isScalar(node)) return this.#scalar(node);
    if (isMap(node)) return this.#map(node as YAMLMap);
    return isSeq(node) ? node.items.map((item, index) => this.#within(index, item)) : null;
  }

  #within(step: string | number, node: unknown): unknown {
    this.#path.push(step);
    const value = this.read(node);
    this.#path.pop();
    return value;
  }

  #scalar(node: Scalar): unknown {
    const { value } = node;
    if (typeof value !== 'number') return value;
    const written = (node.source ?? '').slice(0, 40);
    if (!Number.isFinite(value)) return this.#fault('number-not-finite', node, { written });
    if (ODD_NUMBER.test(written)) return this.#fault('number-spelling', node, { written });
    return value === 0 ? 0 : value;
  }

  /** Without a prototype, so that no key of a file can ever mean anything but itself. */
  #map(node: YAMLMap): unknown {
    const result: Record<string, unknown> = Object.create(null);
    for (const pair of node.items) this.#pair(pair, result);
    return result;
  }

  #pair(pair: Pair, result: Record<string, unknown>): void {
    const key = isScalar(pair.key) ? pair.key.value : undefined;
    if (typeof key !== 'string') this.#fault('key-not-text', pair.key ?? pair.value);
    else if (FORBIDDEN_KEYS.has(key)) this.#fault('key-forbidden', pair.key, { key });
    else if (key === '<<') this.#fault('yaml-merge-key', pair.key);
    // Checked here and not by the parser, which compares every key with every other.
    else if (Object.hasOwn(result, key)) this.#fault('yaml-duplicate-key', pair.key, { key });
    else result[key] = this.#within(key, pair.value);
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

const YAML_RULES = {
  version: '1.2',
  schema: 'core',
  merge: false,
  uniqueKeys: false,
  strict: true,
  prettyErrors: false,
  logLevel: 'silent',
} as const;

function composed(tokens: readonly string[], length: number, lines: LineCounter): readonly Document[] {
  lines.addNewLine(0);
  const parser = new Parser(lines.addNewLine);
  const composer = new Composer(YAML_RULES);
  const documents: Document[] = [];
  const take = (parts: Iterable<Parameters<Composer['next']>[0]>) => {
    for (const part of parts) documents.push(...(composer.next(part) as Iterable<Document>));
  };
  for (const token of tokens) take(parser.next(token));
  take(parser.end());
  documents.push(...(composer.end(true, length) as Iterable<Document>));
  return documents;
}

/** One slip makes the parser stumble on the lines that follow: more than these would only mislead. */
const MOST_STUMBLES = 3;

/** The line around an offset, as much of it as fits a sentence. */
function lineAt(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', start);
  return text.slice(start, end === -1 ? start + 60 : Math.min(end, start + 60)).trim();
}

function stumbles(documents: readonly Document[], text: string, lines: LineCounter): readonly Fault[] {
  const byLine = new Map<number, Fault>();
  for (const { pos, code } of documents.flatMap((document) => document.errors)) {
    const { line } = lines.linePos(pos[0]);
    if (byLine.has(line)) continue;
    const data = { reason: code, written: lineAt(text, pos[0]) };
    byLine.set(line, { code: 'yaml-broken', spot: { offset: pos[0] }, data });
  }
  return [...byLine.values()].slice(0, MOST_STUMBLES);
}

function brokenIn(documents: readonly Document[], text: string, lines: LineCounter): readonly Fault[] {
  const [first, second] = documents;
  if (second !== undefined) {
    return [{ code: 'yaml-more-than-one-document', spot: { offset: second.range?.[0] ?? 0 }, data: {} }];
  }
  const found = stumbles(documents, text, lines);
  const isEmpty = found.length === 0 && (first?.contents ?? null) === null;
  return isEmpty ? [{ code: 'file-empty', spot: { offset: 0 }, data: {} }] : found;
}

/** Makes one document of tokens that have passed the guards. What is wrong is in the result; it does not throw. */
export function readYamlTree(text: string, tokens: readonly string[], lines: LineCounter): YamlTree {
  const documents = composed(tokens, text.length, lines);
  const root = documents[0]?.contents;
  const reader = new TreeReader();
  return {
    value: reader.read(root),
    broken: brokenIn(documents, text, lines),
    faults: reader.faults,
    spotOf: (path) => walk(root, path).offset,
    keySpotOf: (path) => walk(root, path).keyOffset,
  };
}
