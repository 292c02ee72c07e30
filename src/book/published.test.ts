// Published values for the canonical form, the ids and the seals of entries.
import { expect, test } from 'vitest';
import vectors from '../../tests/published/book.json' with { type: 'json' };
import { canonicalJson, type Json } from './canonical.ts';
import { entryId, entryIdPattern, entryIdTimeMs } from './entry-id.ts';
import { plainHash } from './seal.ts';

type Row = readonly (string | number | null)[];

function rowsOf(subject: string): readonly Row[] {
  const rows = vectors.filter((one) => one.subject === subject).flatMap((one): Row[] => one.rows);
  expect(rows.length).toBeGreaterThan(0);
  return rows;
}

test('numbers are spelled as in Appendix B of RFC 8785, and what is no number is refused', () => {
  const bits = new DataView(new ArrayBuffer(8));
  for (const [hex, text] of rowsOf('canonicalNumber')) {
    bits.setBigUint64(0, BigInt(`0x${hex}`));
    const spell = () => canonicalJson(bits.getFloat64(0));
    if (text === null) expect(spell, String(hex)).toThrow(TypeError);
    else expect(spell(), String(hex)).toBe(text);
  }
});

test('objects are spelled as in sections 3.2.2 and 3.2.3 of RFC 8785', () => {
  for (const [text, canonical] of rowsOf('canonicalText')) {
    const spelled = canonicalJson(JSON.parse(String(text)) as Json);
    expect(spelled).toBe(canonical);
    expect(canonicalJson(JSON.parse(spelled) as Json)).toBe(spelled);
  }
});

test('the UUIDv7 of Appendix A.6 of RFC 9562 is built from its parts and gives its time back', () => {
  for (const [utcMs, a, b, uuid] of rowsOf('entryId')) {
    // rand_a is 12 bits behind the version, rand_b 62 bits behind the variant.
    const bytes = `0${a}${b}`.match(/../g)?.map((byte) => Number.parseInt(byte, 16)) ?? [];
    const id = entryId(Number(utcMs), Uint8Array.from(bytes));
    expect(id).toBe(String(uuid).toLowerCase());
    expect(id).toMatch(entryIdPattern);
    expect(entryIdTimeMs(id)).toBe(utcMs);
  }
});

test('SHA-256 gives the example values that go with FIPS 180-4', () => {
  for (const [text, times, digest] of rowsOf('sha256'))
    expect(plainHash(String(text).repeat(Number(times)))).toBe(digest);
});
