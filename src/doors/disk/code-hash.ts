// What is kept of a code: argon2id of it with a salt of its own, and how it was made.
import { argon2, randomBytes, timingSafeEqual } from 'node:crypto';

/**
 * The cost of one look at a code.
 * @source owasp-passwords, argon2id: 19 MiB of memory, two passes, one lane
 */
export const COST = { memoryKib: 19_456, passes: 2, lanes: 1 } as const;

const SALT_BYTES = 16;
const TAG_BYTES = 32;

export interface CodeHash {
  readonly salt: Uint8Array;
  readonly tag: Uint8Array;
  readonly memoryKib: number;
  readonly passes: number;
  readonly lanes: number;
}

export async function hashCode(code: string): Promise<CodeHash> {
  const made = { ...COST, salt: randomBytes(SALT_BYTES) };
  return { ...made, tag: await tagOf(code, made) };
}

/** By the cost that it was made with, so that a code outlives a change of it; compared in constant time. */
export async function isCode(code: string, hash: CodeHash): Promise<boolean> {
  return timingSafeEqual(await tagOf(code, hash), hash.tag);
}

function tagOf(code: string, { salt, memoryKib, passes, lanes }: Omit<CodeHash, 'tag'>): Promise<Buffer> {
  const message = Buffer.from(code, 'utf8');
  const how = { message, nonce: salt, tagLength: TAG_BYTES, memory: memoryKib, passes, parallelism: lanes };
  return new Promise((done, fail) => {
    argon2('argon2id', how, (error, tag) => {
      // Of the letters that were typed nothing stays here longer than it is needed.
      message.fill(0);
      if (error == null) done(tag);
      else fail(error);
    });
  });
}
