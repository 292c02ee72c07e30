// Suspect water in stores by perfect mixing: what is drawn takes of it as much as its share of the content.
import type { AccountAt, TracedAccount } from './step.ts';

/**
 * Amounts are milligrams; what is carried is not rounded on the way, so that a movement told in two parts is the movement
 * told whole. Whole milligrams are shared out once, at the end.
 *
 * At every moment the suspect water in all accounts, and what was cleared of it, is `startedMg` + `changedMg`.
 */
export class Mixing {
  readonly #isPool: readonly boolean[];
  /** Contents as last believed; −1 where nothing was met yet. */
  readonly #held: Float64Array;
  readonly #suspect: Float64Array;
  /** Share of the suspect water when there last was a content: for water that is found where nothing should be. */
  readonly #lastShare: Float64Array;
  /** Sources whose whole content is suspect for now. */
  readonly #under: Uint8Array;
  /** Suspect water that was there at the start, or came into a source while that was under suspicion. */
  startedMg = 0;
  /** Suspect water that readings found, less what they lost. */
  changedMg = 0;

  constructor(accounts: readonly TracedAccount[]) {
    const count = accounts.length;
    this.#isPool = accounts.map(({ kind }) => kind === 'pool');
    this.#held = new Float64Array(count).fill(-1);
    this.#suspect = new Float64Array(count);
    this.#lastShare = new Float64Array(count);
    this.#under = new Uint8Array(count);
  }

  suspectMg(at: AccountAt): number {
    return this.#suspect[at] ?? 0;
  }

  shareOf(at: AccountAt): number {
    const heldMg = this.#heldMg(at);
    return heldMg > 0 ? this.suspectMg(at) / heldMg : (this.#lastShare[at] ?? 0);
  }

  /** Whether all water of an account is suspect for now. */
  isUnder(at: AccountAt): boolean {
    return this.#under[at] === 1;
  }

  /** From now on all that is in a source is suspect. */
  open(at: AccountAt, heldMg: number): void {
    this.meet(at, heldMg);
    this.#under[at] = 1;
    this.#lastShare[at] = 1;
    this.#force(at);
  }

  close(at: AccountAt): void {
    this.#under[at] = 0;
  }

  /** What is believed of a content has changed without a flow: a reading changes how much there is, not what it is. */
  meet(at: AccountAt, believedMg: number): void {
    if (this.#isPool[at] === true) return;
    const heldMg = Math.max(0, believedMg);
    if (heldMg === this.#held[at]) return;
    const suspectMg = (this.#held[at] ?? -1) < 0 ? 0 : heldMg * this.shareOf(at);
    this.changedMg += suspectMg - this.suspectMg(at);
    this.#set(at, heldMg, suspectMg);
  }

  /** A content is told where there was none: what an earlier store of its name held says nothing of it. */
  begin(at: AccountAt, toldMg: number): void {
    this.meet(at, 0);
    this.#lastShare[at] = this.#under[at] ?? 0;
    this.#set(at, Math.max(0, toldMg), 0);
    this.#force(at);
  }

  /**
   * Moves water, and says how much suspect water went with it. A store gives what it gave even if nobody knew that it had it.
   * A pool mixes with nothing: what comes out of one is clean.
   */
  flow(from: AccountAt, to: AccountAt, massMg: number): number {
    const carriedMg = this.#isPool[from] === true ? 0 : this.#give(from, massMg);
    this.#take(to, massMg, carriedMg);
    return carriedMg;
  }

  /** What was posted too much never left: it comes back as it would have stayed. Says how much suspect water came back. */
  takeBack(from: AccountAt, to: AccountAt, massMg: number): number {
    const wentMg = this.#isPool[from] === true ? 0 : massMg * this.shareOf(from);
    const carriedMg = Math.min(this.suspectMg(to), wentMg);
    if (this.#isPool[to] === true) this.#suspect[to] = this.suspectMg(to) - carriedMg;
    else {
      const leftMg = Math.max(0, this.#heldMg(to) - massMg);
      const suspectMg = Math.min(leftMg, this.suspectMg(to) - carriedMg);
      this.changedMg += suspectMg - (this.suspectMg(to) - carriedMg);
      this.#set(to, leftMg, suspectMg);
    }
    this.#take(from, massMg, carriedMg);
    return carriedMg;
  }

  /** The water of an account is spoken well of: says how much suspect water that ends. */
  clear(at: AccountAt): number {
    const clearedMg = this.suspectMg(at);
    this.#suspect[at] = 0;
    this.#lastShare[at] = 0;
    return clearedMg;
  }

  #give(from: AccountAt, massMg: number): number {
    if (massMg > this.#heldMg(from)) this.meet(from, massMg);
    const heldMg = this.#heldMg(from);
    const suspectMg = this.suspectMg(from);
    const carriedMg = massMg >= heldMg ? suspectMg : suspectMg * (massMg / heldMg);
    this.#set(from, heldMg - massMg, suspectMg - carriedMg);
    return carriedMg;
  }

  #take(to: AccountAt, massMg: number, carriedMg: number): void {
    const suspectMg = this.suspectMg(to) + carriedMg;
    if (this.#isPool[to] === true) {
      // Nothing but suspect water comes into a pool that counts: it has no content of its own.
      this.#suspect[to] = suspectMg;
      return;
    }
    this.#set(to, this.#heldMg(to) + massMg, suspectMg);
    this.#force(to);
  }

  /** Whatever is in a source under suspicion is suspect, wherever it came from. */
  #force(at: AccountAt): void {
    if (this.#under[at] !== 1) return;
    const heldMg = this.#heldMg(at);
    this.startedMg += heldMg - this.suspectMg(at);
    this.#set(at, heldMg, heldMg);
  }

  #heldMg(at: AccountAt): number {
    return Math.max(0, this.#held[at] ?? 0);
  }

  #set(at: AccountAt, heldMg: number, suspectMg: number): void {
    this.#held[at] = heldMg;
    this.#suspect[at] = suspectMg;
    if (heldMg > 0) this.#lastShare[at] = suspectMg / heldMg;
  }
}
