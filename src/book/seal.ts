// Seals: each entry of a site carries a SHA-256 over the seal before it and its own canonical text.
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 of a UTF-8 text in lower-case hex. A door may bring a faster one. */
export type Hash = (text: string) => string;

/** SHA-256 in plain code, the same on every engine. @source fips-180-4, section 6.2 */
export const plainHash: Hash = (text) => bytesToHex(sha256(utf8ToBytes(text)));

/** Seal before the first entry of every site. */
export const FIRST_SEAL = '0'.repeat(64);

/** Seal of an entry from the seal before it and its canonical text. */
export function sealOf(hash: Hash, previousSeal: string, text: string): string {
  return hash(`${previousSeal}\n${text}`);
}

/** Where a site's chain stands. */
export interface Head {
  readonly site: string;
  readonly number: number;
  readonly seal: string;
}

/** One digest for a whole book: equal books have equal digests, however their entries arrived. */
export function bookDigest(hash: Hash, heads: readonly Head[]): string {
  const lines = heads.map((head) => `${head.site} ${head.number} ${head.seal}\n`).sort();
  return hash(lines.join(''));
}
