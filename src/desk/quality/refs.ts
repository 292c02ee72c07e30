// How people name entries: site and number, looked up once each.
import type { BookPort } from '../../book/index.ts';

export class Refs {
  readonly #port: BookPort;
  readonly #known = new Map<string, string>();

  constructor(port: BookPort) {
    this.#port = port;
  }

  async of(id: string): Promise<string> {
    const known = this.#known.get(id);
    if (known !== undefined) return known;
    const row = await this.#port.find(id);
    const ref = row === null ? id : `${row.site} ${row.number}`;
    this.#known.set(id, ref);
    return ref;
  }
}
