// What a card is once it has been read: its lines with their formulas as trees.
import type { CardFile } from './card-schema.ts';
import type { Formula } from './formula/parse.ts';
import type { ChoiceOf } from './names.ts';

type FileStep = CardFile['steps'][number];
type FileFlow = NonNullable<CardFile['flow']>;
type FilePost = CardFile['posts'][number];

export type CardForm = CardFile['card']['forms'][number];
export type StepInput = Readonly<Omit<FileStep['input'], 'doubt'>> & { readonly doubt: Formula | null };

/** What a line is expected to show. A number: about a value within a tolerance, or a bound. */
export interface Expectation {
  readonly words: string | null;
  readonly about: Formula | null;
  readonly within: Formula | null;
  readonly atLeast: Formula | null;
  readonly atMost: Formula | null;
  readonly right: readonly string[] | null;
}

export type CardStep = Readonly<Omit<FileStep, 'input' | 'expect'>> & {
  readonly input: StepInput;
  readonly expect: Expectation;
};

export type CardFlow = Readonly<Omit<FileFlow, 'planned' | 'minutes' | 'lineContent' | 'hose'>> & {
  readonly hose: string | null;
  readonly planned: Formula;
  readonly minutes: Formula;
  readonly lineContent: Formula | null;
};

export type CardPost = Readonly<Omit<FilePost, 'figures'>> & {
  readonly figures: Readonly<
    Record<string, { readonly value: Formula; readonly unit: FilePost['figures'][string]['unit'] }>
  >;
};

export type CardHazard = Readonly<CardFile['hazards'][number]>;
export type CardChoice = Readonly<Omit<CardFile['choose'][number], 'otherwise'>> & {
  readonly otherwise: Formula | null;
};

export interface Card {
  readonly id: string;
  readonly name: string;
  readonly what: string;
  readonly revision: number;
  readonly forms: readonly CardForm[];
  readonly task: string | null;
  readonly choose: readonly CardChoice[];
  readonly choices: ReadonlyMap<string, ChoiceOf>;
  readonly ratings: readonly string[];
  readonly movement: Readonly<NonNullable<CardFile['needs']['movement']>> | null;
  readonly conditions: readonly { readonly holds: Formula; readonly otherwise: string }[];
  readonly values: readonly {
    readonly id: string;
    readonly what: string;
    readonly unit: CardFile['values'][number]['unit'];
  }[];
  /** The formulas of `values` by their names. */
  readonly named: ReadonlyMap<string, Formula>;
  readonly hazards: readonly CardHazard[];
  readonly steps: readonly CardStep[];
  readonly flow: CardFlow | null;
  readonly posts: readonly CardPost[];
}
