// A figure as it leaves the desk: value, ±, unit, and what it rests on.

/** What a figure rests on: entries of the book, the method by its name in docs/methods, and the inputs that went in. */
export interface Because {
  readonly entries: readonly string[];
  readonly method: string;
  readonly inputs: readonly {
    readonly name: string;
    readonly value: number | string | null;
    readonly unit: string;
  }[];
}

export interface SheetFigure {
  readonly value: number;
  /** Half-width of the 95 % interval; null where nobody knows it. */
  readonly u95: number | null;
  readonly unit: string;
  readonly because: Because;
}
