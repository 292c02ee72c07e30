// Entry ids: UUIDv7 of RFC 9562, made from a time and 74 bits that the caller brings.

const TWO_TO_48 = 281_474_976_710_656;
const HEX_DIGITS = '0123456789abcdef';

/** 48 bits of time, version 7, variant 10, all in lower case. */
export const entryIdPattern = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/**
 * Builds a UUIDv7.
 * @param utcMs time part, 0 to 2^48 − 1 milliseconds
 * @param random at least 10 bytes of chance, or of a digest where the id must be the same every time
 * @throws RangeError when the time or the number of bytes is out of range
 * @source rfc-9562, section 5.7
 */
export function entryId(utcMs: number, random: Uint8Array): string {
  if (!Number.isSafeInteger(utcMs) || utcMs < 0 || utcMs >= TWO_TO_48)
    throw new RangeError(`time ${utcMs} does not fit 48 bits`);
  if (random.length < 10) throw new RangeError('ten bytes of chance are needed');
  const bytes = new Uint8Array(16);
  let rest = utcMs;
  for (let i = 5; i >= 0; i--) {
    bytes[i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  bytes.set(random.subarray(0, 10), 6);
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  return spell(bytes);
}

/** Time part of a UUIDv7 in UTC milliseconds. */
export function entryIdTimeMs(id: string): number {
  let utcMs = 0;
  for (const digit of id.slice(0, 8) + id.slice(9, 13)) utcMs = utcMs * 16 + HEX_DIGITS.indexOf(digit);
  return utcMs;
}

const PAIRS: readonly string[] = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

function spell(bytes: Uint8Array): string {
  let id = '';
  for (let k = 0; k < 16; k++) {
    if (k === 4 || k === 6 || k === 8 || k === 10) id += '-';
    id += PAIRS[bytes[k] ?? 0];
  }
  return id;
}
