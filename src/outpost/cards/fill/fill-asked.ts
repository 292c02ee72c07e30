// What filling a card asks for: the outpost, what the book knows, what was chosen, and the rules that are known elsewhere.
import type { FindingData } from '../../../ground/units/index.ts';
import type { OutpostIndex } from '../../index-outpost.ts';
import type { CardForm } from '../card.ts';
import type { CardUnit } from '../card-units.ts';

/** A value with one standard deviation. */
export interface CardValue {
  readonly value: number;
  readonly u: number;
  readonly unit: CardUnit;
}

/** A store that may be chosen; one that came with a visit is in the book and not in the outpost file. */
export interface ChoosableStore {
  readonly id: string;
  readonly kind: string;
}

export type RuleOfMovement = 'source-held' | 'source-unreleased' | 'grades-clash' | 'biocides-clash';

export interface RefusedMovement {
  readonly rule: RuleOfMovement;
  readonly data: FindingData;
}

export interface IntendedMovement {
  readonly from: string;
  readonly to: string;
  /** The grade that the card gives the receiver before any water flows. */
  readonly relabelledTo: string | null;
}

export interface FillAsked {
  readonly index: OutpostIndex;
  /** What the book knows, by the name of the thing and the key: `C-11.content`, `H-1.factor`, `cabin.pressure`. */
  readonly values: ReadonlyMap<string, CardValue>;
  /** By the ids of the card's choices: a name, or the value of a quantity. */
  readonly chosen: Readonly<Record<string, string | CardValue>>;
  readonly stores: readonly ChoosableStore[];
  readonly form?: CardForm;
  /** The rules of grade, hold, release and biocide: they live where the account is known. */
  readonly rules: (movement: IntendedMovement) => readonly RefusedMovement[];
}
