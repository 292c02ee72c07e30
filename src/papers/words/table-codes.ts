// Codes of what a file may be that no table can be made of; they stand here because the words do.

export type TableFindingCode =
  /** data: bytes, most */
  | 'table-too-large'
  /** Bytes that are no text in a known encoding. data: says */
  | 'table-no-text'
  /** data: rows (null where it is not known), most */
  | 'table-rows-too-many'
  /** data: columns, most */
  | 'table-columns-too-many'
  /** data: length, most */
  | 'table-cell-too-long'
  /** A value in a value, where a table has plain ones. data: received */
  | 'table-not-flat'
  /** data: received */
  | 'table-line-no-json'
  /** No sign parts the cells alike in every line. data: signs */
  | 'table-delimiter-open'
  /** A quoted cell that never ends. */
  | 'table-quote-open'
  /** Nothing in it. */
  | 'table-empty'
  /** data: most (seconds) */
  | 'table-too-slow'
  /** The reader ended before it was done: it wanted more memory than it is given. data: says */
  | 'table-reader-ended';
