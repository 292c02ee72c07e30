// How many codes a minute are looked at for pages, whoever sends them; beside it every office has its own count of wrong ones.

export const PACE = { most: 20, withinMs: 60_000 } as const;

/** Too many codes in a short time. */
export class TooManyCodes extends Error {
  override readonly name = 'TooManyCodes';
  readonly leftMs: number;

  constructor(leftMs: number) {
    super('too many codes');
    this.leftMs = leftMs;
  }
}

export class CodePace {
  #taken: readonly number[] = [];

  /** @throws TooManyCodes when the codes of the last minute were too many */
  take(nowMs: number, codes: number): void {
    // A clock that was set back leaves nobody waiting for it to come round.
    const lately = this.#taken.filter((atMs) => atMs <= nowMs && nowMs - atMs < PACE.withinMs);
    const oldest = lately[0] ?? nowMs;
    if (lately.length + codes > PACE.most) throw new TooManyCodes(PACE.withinMs - (nowMs - oldest));
    this.#taken = [...lately, ...Array.from({ length: codes }, () => nowMs)];
  }
}
