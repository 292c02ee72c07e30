// What a calculator is: what it asks for, where the book can fill it in, and the pure function that answers.
import type { FindingData } from '../../ground/units/index.ts';
import type { Answer } from '../answer.ts';
import type { FromBook } from './from-book.ts';
import type { InputSpec } from './input-spec.ts';
import type { Input, Inputs } from './inputs.ts';

export interface Result {
  /** A key of the words. */
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** A limit reads its early or its late end, never the middle. */
  readonly limit?: 'early' | 'late';
  /** It is what it is: no doubt is worked out. */
  readonly exact?: true;
}

/** A sentence of the answer: a key of the words with what stands in it. */
export interface Saying {
  readonly key: string;
  readonly data: FindingData;
}

export interface Reckoned {
  /** The first is what was asked for. */
  readonly results: readonly Result[];
  readonly sayings: readonly Saying[];
}

export interface Calculator {
  readonly name: string;
  readonly inputs: readonly InputSpec[];
  /** Page of docs/methods without its ending. */
  readonly method: string;
  /** Keys of the hazard boxes that stand before the answer. */
  readonly cautions: readonly string[];
  /** Values that names of the book bring; what was typed beats them. */
  readonly fill?: (book: FromBook) => Answer<readonly Input[]>;
  /** Inputs that are one cause of doubt in the eyes of a keeper: key of the words → names. */
  readonly doubtGroups?: Readonly<Record<string, readonly string[]>>;
  /** Gives inputs the doubt that others of them tell. */
  readonly doubted?: (inputs: Inputs) => Inputs;
  /** Says no before anything is reckoned: a rating that is missing or would be passed. */
  readonly refuse?: (inputs: Inputs) => RefusedBy | null;
  /**
   * Pure, and the same for the same inputs: the doubt is found by running it again, with the first answer beside it for what was
   * decided by it and does not move with the inputs any more.
   * @throws OutsideRange where an input is outside the range of the source
   */
  readonly reckon: (inputs: Inputs, first?: Reckoned) => Reckoned;
}

export interface RefusedBy {
  readonly rule: string;
  /** The input that is not told, or not told whole; left out where what was told is refused. */
  readonly field?: string;
  readonly data: FindingData;
}
