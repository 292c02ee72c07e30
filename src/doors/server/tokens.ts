// Who is let in: launch tokens that open one page each, the cookies of those pages, and the key for programs of the same user.
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { LIMITS } from './limits.ts';

/** 256 bits that nobody can guess. */
function freshToken(): string {
  return randomBytes(32).toString('base64url');
}

function digestOf(token: string): Buffer {
  return createHash('sha256').update(token).digest();
}

/** Compares digests, so that neither the letters nor the length of what was given show in the time it takes. */
function isSame(digest: Buffer, token: string): boolean {
  return timingSafeEqual(digest, digestOf(token));
}

/** Tokens of one kind, of which only the digests are held; the oldest goes when there are too many. */
class Held {
  #digests: readonly Buffer[] = [];
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  give(): string {
    const token = freshToken();
    this.#digests = [...this.#digests, digestOf(token)].slice(-this.#most);
    return token;
  }

  /** Every one is looked at, whichever fits. */
  has(token: string): boolean {
    return this.#digests.reduce((found, digest) => isSame(digest, token) || found, false);
  }

  drop(token: string): void {
    this.#digests = this.#digests.filter((digest) => !isSame(digest, token));
  }
}

export class Tokens {
  readonly #launches = new Held(LIMITS.launches);
  readonly #sessions = new Held(LIMITS.sessions);
  /** For programs that may read the file beside the book. */
  readonly key = freshToken();
  readonly #key = digestOf(this.key);

  /** For the address of a page that is to be let in once. */
  launch(): string {
    return this.#launches.give();
  }

  /** The value of the cookie for a launch token; null where it was used or is none. */
  trade(launch: string): string | null {
    if (!this.#launches.has(launch)) return null;
    this.#launches.drop(launch);
    return this.#sessions.give();
  }

  isSession(cookie: string): boolean {
    return this.#sessions.has(cookie);
  }

  isKey(token: string): boolean {
    return isSame(this.#key, token);
  }

  forgetSession(cookie: string): void {
    this.#sessions.drop(cookie);
  }
}
