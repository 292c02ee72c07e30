// Codes of what may be doubtful about a table, a line or a cell of it; they stand here because the words do.

export type InboxFindingCode =
  /** No line of it says what the columns are. data: lines (looked at) */
  | 'sheet-no-headings'
  /** No column tells when. data: headings */
  | 'sheet-no-time'
  /** Neither meters nor acts. data: headings */
  | 'sheet-no-kind'
  /** Two columns say the same thing. data: headings, means */
  | 'sheet-columns-clash'
  /** A heading with two meanings. data: heading, meanings */
  | 'sheet-heading-open'
  /** A column whose heading means nothing here; its cells go into the note. data: heading, nearest */
  | 'sheet-heading-unknown'
  /** A meaning that was declared, and is none. data: received, nearest */
  | 'sheet-meaning-unknown'
  /** A heading that was declared, and is not there. data: received, headings */
  | 'sheet-heading-missing'
  /** Days and months cannot be told apart. data: received, readings */
  | 'sheet-dates-open'
  /** The clock of the table is not known. data: clock, lineAt, offset */
  | 'sheet-zone-open'
  /** data: received, as UNIT (litres of it), store, capacityL */
  | 'cell-unit-missing'
  /** data: received, readings */
  | 'cell-two-readings'
  /** data: received */
  | 'cell-no-number'
  /** A formula is text here: nothing is worked out. data: received */
  | 'cell-formula'
  /** data: received, unit, allowed */
  | 'cell-unit-other'
  /** data: received */
  | 'cell-negative'
  /** data: received, massMg, store, capacityMg, mgPerL */
  | 'cell-over-capacity'
  /** data: received, value, last, instrument */
  | 'cell-below-last'
  /** data: what, received, nearest */
  | 'cell-name-unknown'
  /** data: received, readings */
  | 'cell-date-two-readings'
  /** data: received */
  | 'cell-time-unreadable'
  /** data: received, happenedAtMs, side ('before' or 'after'), limitMs */
  | 'cell-time-outside'
  /** A date without its year, or with half of it, that fits no year of the book or several. data: received, years */
  | 'cell-year-open'
  /** data: means */
  | 'cell-missing'
  /** data: received, nearest */
  | 'cell-act-unknown'
  /** A place or an amount that the act has no part for. data: received, act */
  | 'cell-unused'
  /** data: received, length, most */
  | 'cell-too-long'
  /** data: day, other */
  | 'row-days-differ'
  /** The same as an earlier line of the table: once, or twice. data: line */
  | 'row-twice'
  /** The clock of a table of acts is not known; that of the outpost stands in. data: offset */
  | 'sheet-zone-unsaid'
  /** From a place into itself. data: name */
  | 'row-ends-same'
  /** A sum of the lines above it. data: received */
  | 'row-total'
  /** More cells than headings. data: cells, headings */
  | 'row-too-wide'
  /** data: day, ref (null where it is in this table) */
  | 'row-day-kept'
  /** data: day */
  | 'row-day-closed'
  /** A note of the book that names an amount without its unit. data: received, text */
  | 'note-unit-missing'
  /** Lines wait. data: lines, oldestDay */
  | 'lines-waiting'
  /** Not a line of the inbox. data: received */
  | 'line-not-waiting'
  /** data: ref, how */
  | 'line-settled'
  /** Still something to decide before it can be taken. data: reasons */
  | 'line-still-doubtful'
  /** data: lines */
  | 'many-lines';
