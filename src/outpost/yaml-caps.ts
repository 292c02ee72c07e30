// Guards before parsing: size, odd signs, depth, and the parts of YAML that an outpost file does not use.
import { CST, Lexer } from 'yaml';
import type { Fault, OutpostFindingCode } from './outpost-finding.ts';

export const GREATEST_FILE_BYTES = 2_000_000;
export const GREATEST_DEPTH = 32;
const GREATEST_TOKENS = 40_000;
const GREATEST_SCALAR_SIGNS = 4000;
/** Depth by indent is judged on the finished tree; this only keeps the tree shallow enough to be walked. */
const GREATEST_INDENT = 8 * GREATEST_DEPTH;

/** Control signs, lone halves of a sign, and marks that turn the direction of writing, which can hide what a line says. */
const ODD_SIGN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: finding control signs is what it is for.
  /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F\u0085\u2028-\u202E\u2066-\u2069]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/;

const fault = (code: OutpostFindingCode, offset: number, data: Fault['data'] = {}): Fault => ({
  code,
  spot: { offset },
  data,
});

/** UTF-8 bytes of a text; a text with more signs than the cap is not counted further. */
export function utf8Bytes(text: string): number {
  let bytes = text.length;
  if (bytes > GREATEST_FILE_BYTES) return bytes;
  for (let index = 0; index < text.length; index++) {
    const sign = text.charCodeAt(index);
    if (sign > 0x7f) bytes += sign > 0x7ff && !(sign >= 0xd800 && sign <= 0xdfff) ? 2 : 1;
  }
  return bytes;
}

/** A fault of the text as a whole, or nothing. */
export function checkText(text: string): Fault | undefined {
  const bytes = utf8Bytes(text);
  if (bytes > GREATEST_FILE_BYTES)
    return fault('file-too-large', 0, { sizeBytes: bytes, greatestBytes: GREATEST_FILE_BYTES });
  const odd = ODD_SIGN.exec(text);
  if (odd === null) return undefined;
  const sign = `U+${odd[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;
  return fault('file-control-sign', odd.index, { sign });
}

type TokenType = ReturnType<typeof CST.tokenType>;

const REFUSED: Readonly<Partial<Record<NonNullable<TokenType>, OutpostFindingCode>>> = {
  alias: 'yaml-alias',
  anchor: 'yaml-alias',
  tag: 'yaml-tag',
  'directive-line': 'yaml-directive',
};

/** Where a line begins and what stands there: the depth by indent, and tabs, are judged by it. */
class LineStart {
  #here = true;
  #blank = '';
  #blankAt = 0;

  /** The offset of a tab before the first thing on a line; a blank line or a comment may begin with anything. */
  tabBefore(type: TokenType, source: string, offset: number): number | undefined {
    if (type === 'newline') {
      this.#here = true;
      this.#blank = '';
    } else if (this.#here && type === 'space') {
      this.#blank = source;
      this.#blankAt = offset;
    } else if (this.#here) {
      this.#here = false;
      const tab = type === 'comment' ? -1 : this.#blank.indexOf('\t');
      return tab === -1 ? undefined : this.#blankAt + tab;
    }
    return undefined;
  }
}

/** Counts how deep the tokens nest: brackets until they close, `-` and `?` for the rest of their line. */
class DepthCount {
  #brackets = 0;
  #inLine = 0;
  #atLineStart = true;

  feed(type: TokenType, length: number): number {
    const indent = type === 'space' && this.#atLineStart ? length : 0;
    this.#atLineStart = type === 'newline';
    if (type === 'newline') this.#inLine = 0;
    else if (type === 'flow-map-start' || type === 'flow-seq-start') this.#brackets++;
    else if (type === 'flow-map-end' || type === 'flow-seq-end') this.#brackets--;
    else if (type === 'seq-item-ind' || type === 'explicit-key-ind') this.#inLine++;
    return indent > GREATEST_INDENT ? GREATEST_DEPTH + 1 : this.#brackets + this.#inLine;
  }
}

/** Counts what a text costs while its tokens go by. */
class Guard {
  readonly #depth = new DepthCount();
  readonly #lineStart = new LineStart();
  #offset = 0;
  #count = 0;
  #scalarNext = false;

  /** The fault of one token, if it has any; `last` if nothing behind it can be trusted to be cheap. */
  feed(source: string): { readonly fault: Fault; readonly last: boolean } | undefined {
    const type: TokenType = this.#scalarNext ? 'scalar' : CST.tokenType(source);
    const takesNoRoom =
      !this.#scalarNext && source.length === 1 && source < ' ' && source !== '\n' && source !== '\t';
    this.#scalarNext = takesNoRoom && source === CST.SCALAR;
    if (takesNoRoom) return undefined;
    const offset = this.#offset;
    this.#offset += source.length;
    const costly = this.#costly(type, source, offset);
    if (costly !== undefined) return { fault: costly, last: true };
    const tabAt = this.#lineStart.tabBefore(type, source, offset);
    if (tabAt !== undefined) return { fault: fault('yaml-tab-indent', tabAt), last: false };
    const refused = type === null ? undefined : REFUSED[type];
    if (refused === undefined) return undefined;
    return { fault: fault(refused, offset, { written: source.slice(0, 40) }), last: false };
  }

  #costly(type: TokenType, source: string, offset: number): Fault | undefined {
    if (++this.#count > GREATEST_TOKENS)
      return fault('file-too-many-parts', offset, { greatest: GREATEST_TOKENS });
    if (this.#depth.feed(type, source.length) > GREATEST_DEPTH)
      return fault('file-too-deep', offset, { greatest: GREATEST_DEPTH });
    const long = type !== 'comment' && type !== 'space' && source.length > GREATEST_SCALAR_SIGNS;
    return long
      ? fault('file-scalar-too-long', offset, { length: source.length, greatest: GREATEST_SCALAR_SIGNS })
      : undefined;
  }
}

/**
 * Reads the tokens once, in order, and stops at the first that would make parsing costly.
 * Without a fault the tokens are few, shallow, and free of anchors, tags and directives.
 */
export function guardedTokens(text: string): {
  readonly tokens: readonly string[];
  readonly faults: readonly Fault[];
} {
  const tokens: string[] = [];
  const faults: Fault[] = [];
  const guard = new Guard();
  for (const source of new Lexer().lex(text)) {
    const found = guard.feed(source);
    if (found !== undefined) faults.push(found.fault);
    if (found?.last === true) break;
    tokens.push(source);
  }
  return { tokens, faults };
}
