// Codes of what can be wrong with a command line and the files it names; they stand here because the words do.

export type CliFindingCode =
  /** data: name, nearest */
  | 'command-unknown'
  /** A command that needs a second word. data: command, words */
  | 'command-unfinished'
  /** data: flag, command, nearest */
  | 'flag-unknown'
  /** data: flag, value (what it takes) */
  | 'flag-without-value'
  /** A flag that takes no value. data: flag, received */
  | 'flag-with-value'
  /** data: flag, received, wanted (a list), nearest */
  | 'flag-value-wrong'
  /** data: flag */
  | 'flag-twice'
  /** data: first, second */
  | 'flags-clash'
  /** data: flag, command, because */
  | 'flag-needed'
  /** data: argument, command, example */
  | 'argument-missing'
  /** data: received, command, example */
  | 'argument-extra'
  /** No book was named and none was found. data: places */
  | 'no-book-found'
  /** data: says (a code of the system) */
  | 'file-not-read'
  /** data: says */
  | 'file-not-written'
  /** The file that was to be written is the book, or its receipt. */
  | 'output-is-book'
  /** data: most, bytes (null where it is not known) */
  | 'input-file-too-large'
  /** data: most */
  | 'line-of-file-too-long'
  /** data: offset (of the first byte that is no UTF-8) */
  | 'file-not-text'
  /** A part of the program that is not there. data: what */
  | 'program-not-whole'
  /** The program itself failed. data: says */
  | 'program-failed'
  /** A line of a day sheet. data: received, nearest, names (of the meters) */
  | 'day-sheet-line'
  /** data: received, names (of the meters) */
  | 'day-sheet-form'
  /** Bare values, more or fewer than there are meters. data: values, wanted */
  | 'day-sheet-count'
  /** data: kind, command */
  | 'kind-has-command'
  /** What was typed of a stock count, beside the book, is none. */
  | 'count-file-unreadable'
  /** data: received */
  | 'json-unreadable';
