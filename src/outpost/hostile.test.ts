// Texts made to break a reader: each earns a clear finding soon, and none is thrown on.
import { describe, expect, test } from 'vitest';
import { changed, SMALL_OUTPOST } from '../../tests/outpost/small-outpost.ts';
import { recordCounts } from '../../tests/verification/record.ts';
import type { OutpostFindingCode } from './outpost-finding.ts';
import { readOutpost } from './read-outpost.ts';

const NUL = String.fromCharCode(0);
const bomb = ['a: &a [x, x]', 'b: &b [*a, *a]', 'c: &c [*b, *b]', 'd: [*c, *c]'].join('\n');
const indented = Array.from({ length: 1800 }, (_, level) => `${' '.repeat(level)}k:`).join('\n');

const many = (line: (number: number) => string) =>
  Array.from({ length: 200 }, (_, number) => line(number)).join('');
const stores = many(
  (n) =>
    `  - { id: S${n}, kind: tank, place: hat, capacityL: 9, usableRemainderL: 1, usableRemainderDoubtL: 1, gaugedBy: weighing, gauge: gaugge ${n}, ratingOverCabinKPa: 9 }\n`,
);
const instruments = many(
  (n) => `  - { id: gauge ${n}, measures: content, unit: L, random: { absolute: 1 }, reading: content }\n`,
);

const HOSTILE: readonly (readonly [string, OutpostFindingCode, string])[] = [
  ['an alias bomb', 'yaml-alias', bomb],
  ['10,000 brackets', 'file-too-deep', `a: ${'['.repeat(10_000)}`],
  ['100,000 braces', 'file-too-deep', '{a: '.repeat(100_000)],
  ['10,000 dashes on a line', 'file-too-deep', `${'- '.repeat(10_000)}x`],
  ['10,000 question marks on a line', 'file-too-deep', `${'? '.repeat(10_000)}x`],
  ['1,800 levels of indent', 'file-too-deep', indented],
  [
    '40 levels of indent',
    'file-too-deep',
    `${Array.from({ length: 40 }, (_, level) => `${' '.repeat(level)}k:`).join('\n')} 1`,
  ],
  ['a key twice', 'yaml-duplicate-key', changed('  kind: hut', '  kind: hut\n  kind: hall')],
  [
    '4,000 keys, each twice',
    'findings-cut',
    Array.from({ length: 4000 }, (_, key) => `k${key % 2000}: 1`).join('\n'),
  ],
  [
    '200 stores, each with two unknown names',
    'findings-cut',
    changed('instruments:\n', `instruments:\n${instruments}`, changed('stores:\n', `stores:\n${stores}`)),
  ],
  ['__proto__', 'key-forbidden', changed('  kind: hut', '  kind: hut\n  __proto__: { kind: hall }')],
  ['"__proto__" in quotes', 'key-forbidden', changed('  kind: hut', '  kind: hut\n  "__proto__": 1')],
  [
    'constructor',
    'key-forbidden',
    changed('  kind: hut', '  kind: hut\n  constructor: { prototype: { ok: true } }'),
  ],
  ['a text of 1.9 MB', 'file-scalar-too-long', changed('kind: hut', `kind: ${'h'.repeat(1_900_000)}`)],
  [
    'a quote that never closes, 1.9 MB',
    'file-scalar-too-long',
    changed('kind: hut', `kind: "${'h\n'.repeat(950_000)}`),
  ],
  ['a block text of 1.9 MB', 'file-scalar-too-long', `a: |\n${'  line\n'.repeat(271_000)}`],
  ['a key of 5,000 signs', 'file-scalar-too-long', `${'k'.repeat(5000)}: 1`],
  ['tabs for indent', 'yaml-tab-indent', SMALL_OUTPOST.replaceAll('\n  ', '\n\t')],
  ['NUL', 'file-control-sign', changed('kind: hut', `kind: hut${NUL}`)],
  ['the signs that a lexer uses for itself', 'file-control-sign', `a: ${String.fromCharCode(2, 24, 31)}`],
  ['half a sign', 'file-control-sign', changed('kind: hut', 'kind: \ud83d')],
  ['text that turns its direction', 'file-control-sign', changed('kind: hut', 'kind: \u202etuh')],
  ['UTF-16 read as UTF-8', 'file-control-sign', [...SMALL_OUTPOST].join(NUL)],
  ['a tag that makes an object', 'yaml-tag', changed('kind: hut', 'kind: !!js/function "x"')],
  ['a tag of one sign', 'yaml-tag', changed('kind: hut', 'kind: ! hut')],
  ['a merge key', 'yaml-merge-key', changed('  kind: hut', '  <<: [{ kind: hall }]\n  kind: hut')],
  ['20 MB in one line', 'file-too-large', `a: ${'x'.repeat(20_000_000)}`],
  ['many short signs that are long in bytes', 'file-too-large', '€'.repeat(700_000)],
  ['a million list items', 'file-too-many-parts', '-\n'.repeat(990_000)],
  ['a million empty lines', 'file-too-many-parts', '\n'.repeat(1_990_000)],
  ['a million commas', 'file-too-many-parts', `a: [${','.repeat(1_000_000)}]`],
  ['two documents', 'yaml-more-than-one-document', `${SMALL_OUTPOST}---\n${SMALL_OUTPOST}`],
  ['JSON, cut off', 'yaml-broken', '{"format": "waterwright outpost", "version": 1, "outpost": {'],
  ['HTML', 'value-wrong-kind', '<html><body>waterwright outpost</body></html>'],
  ['nothing', 'file-empty', ''],
  ['a list', 'value-wrong-kind', '- 1\n- 2\n'],
  ['infinity', 'number-not-finite', changed('capacityL: 100', 'capacityL: .inf')],
  ['not a number', 'number-not-finite', changed('capacityL: 100', 'capacityL: .nan')],
  ['1e400', 'number-not-finite', changed('capacityL: 100', 'capacityL: 1e400')],
  ['an octal number', 'number-spelling', changed('capacityL: 100', 'capacityL: 0o100')],
  ['a hexadecimal number', 'number-spelling', changed('capacityL: 100', 'capacityL: 0x64')],
  ['a decimal comma', 'value-wrong-kind', changed('capacityL: 100', 'capacityL: 100,5')],
  ['a thousands separator', 'value-wrong-kind', changed('capacityL: 100', 'capacityL: 1_000')],
  ['30 February', 'date-not-real', changed('2147-03-01', '2147-02-30')],
  ['a time that is no time', 'value-wrong-form', changed("'21:00'", "'24:00'")],
  ['an id that is a formula', 'value-wrong-form', changed('id: C-01', "id: '=HYPERLINK(1)'")],
];

const SOON_MS = 200;

/** The fastest of a few: the machine that runs the tests may be busy with others. */
function fastest(text: string) {
  let tookMs = Number.POSITIVE_INFINITY;
  for (let run = 0; run < 5 && tookMs >= SOON_MS; run++) {
    const begin = performance.now();
    readOutpost(text, { file: 'outpost.yaml' });
    tookMs = Math.min(tookMs, performance.now() - begin);
  }
  return { tookMs, read: readOutpost(text, { file: 'outpost.yaml' }) };
}

describe('hostile texts', () => {
  test.each(HOSTILE)('%s earns %s', (_what, code, text) => {
    const { read, tookMs } = fastest(text);
    expect(read.ok).toBe(false);
    expect(read.findings.map((finding) => finding.code)).toContain(code);
    expect(read.findings.length).toBeLessThanOrEqual(201);
    for (const { where } of read.findings) {
      expect(where.line).toBeGreaterThan(0);
      expect(where.column).toBeGreaterThan(0);
    }
    expect(tookMs).toBeLessThan(SOON_MS);
    expect(({} as Record<string, unknown>)['ok']).toBeUndefined();
  });

  test('there are many of them, and the text that they are made of is sound', () => {
    expect(HOSTILE.length).toBeGreaterThanOrEqual(25);
    expect(readOutpost(SMALL_OUTPOST, { file: 'outpost.yaml' })).toMatchObject({ ok: true });
    recordCounts('hostile-outpost-files', import.meta.filename, {
      counts: { files: HOSTILE.length, 'milliseconds allowed for each': SOON_MS },
    });
  });
});
