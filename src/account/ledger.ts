// The ledger: whole milligrams moved from one account to another, so that the sum over all accounts is always the integer 0.

/** Accounts that are no stores. A store's account is its id behind `store:`. */
export const OUTSIDE = 'outside';
export const UNACCOUNTED = 'unaccounted';

export function storeAccount(id: string): string {
  return `store:${id}`;
}

/** What stays in a hose between two parts of one run. */
export function lineAccount(run: string): string {
  return `line:${run}`;
}

export class Ledger {
  readonly #balances: Map<string, number>;

  constructor(balances: Iterable<readonly [string, number]> = []) {
    this.#balances = new Map(balances);
  }

  /** Moves whole milligrams; a negative amount moves them back. */
  post(from: string, to: string, massMg: number): void {
    if (!Number.isSafeInteger(massMg)) throw new RangeError(`${massMg} is no whole number of milligrams`);
    if (massMg === 0) return;
    this.#add(from, -massMg);
    this.#add(to, massMg);
  }

  balanceMg(account: string): number {
    return this.#balances.get(account) ?? 0;
  }

  balances(): ReadonlyMap<string, number> {
    return this.#balances;
  }

  /** Sum over all accounts: 0, or the ledger is broken. */
  closureMg(): number {
    let sum = 0;
    for (const balance of this.#balances.values()) sum += balance;
    return sum;
  }

  clone(): Ledger {
    return new Ledger(this.#balances);
  }

  #add(account: string, massMg: number): void {
    const balance = (this.#balances.get(account) ?? 0) + massMg;
    if (!Number.isSafeInteger(balance))
      throw new RangeError(`the balance of ${account} left the range of exact integers`);
    this.#balances.set(account, balance);
  }
}
