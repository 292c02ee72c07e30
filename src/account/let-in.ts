// Water that gets into the cabin air past the people: known leaks, water let in, washing beside the dispenser.
import type { AnyEntry, Entry } from '../book/index.ts';
import { dayStartUtcMs, msPerDay } from '../ground/units/index.ts';
import type { CondensatePartName } from './condensate-day.ts';
import { type Fold, MG_PER_KG } from './fold.ts';
import { CABIN_AIR, PEOPLE } from './people-and-air.ts';

/** A leak that somebody found and told the rate of. */
interface KnownLeak {
  readonly rateMgPerDay: number;
  readonly foundAtMs: number;
  readonly enteredAtMs: number;
  /** Until when it goes on; without a day on which it is looked at again it ended when it was found. */
  readonly untilMs: number;
}

interface OneAct {
  readonly name: CondensatePartName;
  readonly massMg: number;
  readonly uMg: number;
  readonly enteredAtMs: number;
}

export interface LetInPart {
  readonly name: CondensatePartName;
  readonly kg: number;
  readonly u: number;
}

/** What evaporates of it where the file does not say, and its doubt. Ours, no source. */
const UNTOLD_SHARE = 0.8;
const UNTOLD_SHARE_U = 0.2;

export class LetIn {
  readonly #leaks: KnownLeak[] = [];
  #acts: OneAct[] = [];

  hear(fold: Fold, entry: AnyEntry): void {
    if (entry.kind === 'explanation') this.#explained(fold, entry);
    if (entry.kind === 'movement') this.#moved(fold, entry);
  }

  begin(): void {
    this.#acts = [];
  }

  #explained(fold: Fold, { body, happenedAtMs, enteredAtMs }: Entry<'explanation'>): void {
    const { rateMgPerDay, expiresDay } = body;
    if (rateMgPerDay === undefined) return;
    const untilMs = expiresDay === undefined ? happenedAtMs : dayStartUtcMs(expiresDay, fold.dayRule);
    this.#leaks.push({ rateMgPerDay, foundAtMs: happenedAtMs, enteredAtMs, untilMs });
  }

  /** What a counter of the dispenser counts is inside the rate of the people. */
  #moved(fold: Fold, { body, enteredAtMs }: Entry<'movement'>): void {
    if (fold.counterOfUnit.has(body.from)) return;
    const { massMg, uMg = 0 } = body.amount;
    const shares = fold.index.outpost.evaporation?.shares;
    if (body.to === CABIN_AIR && body.from !== PEOPLE)
      this.#acts.push({ name: 'water let into the cabin', massMg, uMg, enteredAtMs });
    else if (body.use === 'hygiene') {
      const share = shares?.hygiene ?? UNTOLD_SHARE;
      const shareU = UNTOLD_SHARE_U * massMg * Math.min(share, 1 - share + 0.05);
      this.#acts.push({
        name: 'washing beside the dispenser',
        massMg: share * massMg,
        uMg: Math.sqrt(share * share * uMg * uMg + shareU * shareU),
        enteredAtMs,
      });
    }
  }

  /** Of an interval that a line closes, by what had been entered when that line was. */
  parts(fold: Fold, of: { readonly sinceMs: number; readonly entry: AnyEntry }): readonly LetInPart[] {
    const collected = fold.index.outpost.evaporation?.collectedByCondenserShare ?? 1;
    const acts = this.#acts
      .filter(({ enteredAtMs }) => enteredAtMs <= of.entry.enteredAtMs)
      .map(({ name, massMg, uMg }) => part(name, collected * massMg, collected * uMg));
    return [...this.#leakParts(fold, of, collected), ...acts];
  }

  #leakParts(
    fold: Fold,
    { sinceMs, entry }: { readonly sinceMs: number; readonly entry: AnyEntry },
    collected: number,
  ): readonly LetInPart[] {
    const evaporation = fold.index.outpost.evaporation;
    const share = evaporation?.shares.drippedInCabin ?? UNTOLD_SHARE;
    const shareU = evaporation?.drippedInCabinDoubt ?? UNTOLD_SHARE_U;
    return this.#leaks.flatMap(({ rateMgPerDay, untilMs, enteredAtMs }) => {
      const runMs = Math.min(untilMs, entry.happenedAtMs) - sinceMs;
      if (runMs <= 0 || enteredAtMs > entry.enteredAtMs) return [];
      const leakedMg = (rateMgPerDay * runMs) / msPerDay;
      return [part('known leak', collected * share * leakedMg, collected * shareU * leakedMg)];
    });
  }
}

function part(name: CondensatePartName, massMg: number, uMg: number): LetInPart {
  return { name, kg: massMg / MG_PER_KG, u: uMg / MG_PER_KG };
}
