// The codes of a book behind a running server, through the port that every desk takes: a code travels only in a body over the line of this machine.
import type { CodeCheck, CodeHolder, CodeKeeper, TryTerms } from '../../desk/index.ts';

type Ask = <T>(what: string, body: unknown) => Promise<T>;

export class RemoteCodes implements CodeKeeper {
  readonly #ask: Ask;

  constructor(ask: Ask) {
    this.#ask = ask;
  }

  holders(terms: TryTerms): Promise<readonly CodeHolder[]> {
    return this.#ask('codes', terms);
  }

  has(office: string): Promise<boolean> {
    return this.#ask('code-has', { office });
  }

  check(office: string, code: string, terms: TryTerms): Promise<CodeCheck> {
    return this.#ask('code-check', { office, code, terms });
  }

  wasUsed(office: string, code: string): Promise<boolean> {
    return this.#ask('code-used', { office, code });
  }

  async set(office: string, code: string, entryId: string): Promise<void> {
    await this.#ask('code-set', { office, code, entryId });
  }
}
