// Codes of what is said about the codes by which a person confirms; they stand here because the words do. No data ever has such a code in it.

export type CodeFindingCode =
  /** Not the code of that office. data: office, left (tries before it waits), waitMin */
  | 'code-wrong'
  /** Too many wrong codes: the office waits. data: office, leftMs, tries */
  | 'code-waits'
  /** A code is asked for, and the office has none. data: office */
  | 'code-none'
  /** A code that is too easily guessed, or is none. data: why: signs, length, repeat or run */
  | 'code-unfit'
  /** The office had this code before. data: office */
  | 'code-used-before'
  /** The office has a code, and the old one was not given. data: office */
  | 'code-old-missing'
  /** Each office sets its own code. data: office, by */
  | 'code-not-own'
  /** A lost code is set anew by others. data: office, by, second (null where none is named), allowed (who may) */
  | 'code-lost-by'
  /** A code was to be read, and none came. data: office, what: asked or set */
  | 'code-not-given'
  /** The new code and its repetition differ. data: office */
  | 'code-twice-unlike'
  /** A code is never set by an entry alone. */
  | 'code-by-hand'
  /** The undo of an entry would not bring the old code back. data: ref, office */
  | 'code-not-undone'
  /** Too many codes in a short time through one server. data: leftMs, most */
  | 'code-too-often';
