// Codes kept in memory and in the clear: the plain model of the port, for tests of what the desk makes of it.
import type { CodeCheck, CodeHolder, CodeKeeper, TryTerms } from '../../src/desk/index.ts';

export class MemoryCodes implements CodeKeeper {
  readonly #codes = new Map<string, readonly string[]>();
  readonly #tries = new Map<string, { wrong: number; lastMs: number }>();

  constructor(codes: Readonly<Record<string, string>> = {}) {
    for (const [office, code] of Object.entries(codes)) this.#codes.set(office, [code]);
  }

  holders(terms: TryTerms): Promise<readonly CodeHolder[]> {
    const offices = [...this.#codes.keys()].sort();
    return Promise.resolve(
      offices.map((office) => ({ office, sinceMs: 0, waitsMs: this.#leftMs(office, terms) })),
    );
  }

  has(office: string): Promise<boolean> {
    return Promise.resolve(this.#codes.has(office));
  }

  check(office: string, code: string, terms: TryTerms): Promise<CodeCheck> {
    const codes = this.#codes.get(office);
    if (codes === undefined) return Promise.resolve({ is: 'none' });
    const leftMs = this.#leftMs(office, terms);
    if (leftMs > 0) return Promise.resolve({ is: 'waits', leftMs });
    const { wrong: before } = this.#tries.get(office) ?? { wrong: 0 };
    this.#tries.delete(office);
    if (codes[0] === code) return Promise.resolve({ is: 'right' });
    const wrong = (before % terms.tries) + 1;
    this.#tries.set(office, { wrong, lastMs: terms.nowMs });
    return Promise.resolve({ is: 'wrong', left: terms.tries - wrong });
  }

  wasUsed(office: string, code: string): Promise<boolean> {
    return Promise.resolve(this.#codes.get(office)?.includes(code) === true);
  }

  set(office: string, code: string): Promise<void> {
    this.#codes.set(office, [code, ...(this.#codes.get(office) ?? [])].slice(0, 5));
    this.#tries.delete(office);
    return Promise.resolve();
  }

  #leftMs(office: string, { nowMs, tries, waitMs }: TryTerms): number {
    const { wrong, lastMs } = this.#tries.get(office) ?? { wrong: 0, lastMs: 0 };
    return wrong < tries ? 0 : Math.max(0, waitMs - (nowMs - lastMs));
  }
}
