// The port through which a door keeps codes: what it says of them, and never a code itself.

export interface CodeHolder {
  readonly office: string;
  /** When the entry that tells of it happened. */
  readonly sinceMs: number;
  /** Milliseconds that no code of this office is looked at; 0 where one is. */
  readonly waitsMs: number;
}

export type CodeCheck =
  | { readonly is: 'right' }
  /** `left`: tries before the office waits. */
  | { readonly is: 'wrong'; readonly left: number }
  | { readonly is: 'waits'; readonly leftMs: number }
  /** The office has no code. */
  | { readonly is: 'none' };

/** When a code is tried, and how often it may be. */
export interface TryTerms {
  readonly nowMs: number;
  readonly tries: number;
  readonly waitMs: number;
}

export interface CodeKeeper {
  holders(terms: TryTerms): Promise<readonly CodeHolder[]>;
  has(office: string): Promise<boolean>;
  /** Counts the try, and makes the count safe, before it looks: whoever pulls the plug has tried. */
  check(office: string, code: string, terms: TryTerms): Promise<CodeCheck>;
  /** Whether it is, or was one of the last codes of this office. */
  wasUsed(office: string, code: string): Promise<boolean>;
  /** The code counts from the write on that keeps the entry of this id, and is in the same write: both or neither. */
  set(office: string, code: string, entryId: string): Promise<void>;
}

/** Where a book is kept without codes: nobody has one. */
export const NO_CODES: CodeKeeper = {
  holders: () => Promise.resolve([]),
  has: () => Promise.resolve(false),
  check: () => Promise.resolve({ is: 'none' }),
  wasUsed: () => Promise.resolve(false),
  set: () => Promise.reject(new Error('this book is kept where no codes are')),
};
