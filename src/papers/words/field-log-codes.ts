// Codes of what can be wrong or worth knowing in a field log; they stand here because the words do, and the desk takes them from here.

export type FieldLogFindingCode =
  /** A line of the text. data: length, longest */
  | 'log-line-too-long'
  /** data: most */
  | 'log-too-many-lines'
  /** The last line ends in the middle. data: received */
  | 'log-line-torn'
  /** data: received */
  | 'log-line-no-json'
  /** data: receivedKind */
  | 'log-line-no-object'
  /** One key twice in one object. data: key */
  | 'log-key-twice'
  /** data: received (null: no kind), nearest */
  | 'log-kind-unknown'
  /** data: kind, key, nearest, known */
  | 'log-field-unknown'
  /** data: kind, wanted, allowed, mayBeNull */
  | 'log-field-missing'
  /** data: wanted, received, receivedKind */
  | 'log-type-wrong'
  | 'log-number-not-finite'
  /** data: side, edge, inclusive, received */
  | 'log-out-of-range'
  /** data: allowed, received, nearest */
  | 'log-not-in-list'
  /** data: form, received, length, side, edge */
  | 'log-text-form'
  /** data: side, edge, received */
  | 'log-list-length'
  /** Exactly one of two fields belongs here. data: fields, has */
  | 'log-one-of'
  /** Part of a run, but which part or of which run is not said. data: has */
  | 'log-run-or-status'
  /** What stays in the hose is told of a run that was not interrupted. data: received */
  | 'log-line-content-alone'
  /** A doubt without the amount that it belongs to. data: received */
  | 'log-doubt-alone'
  /** data: name */
  | 'log-ends-same'
  /** data: problem (a code of ground/units) and the data of that */
  | 'log-time-wrong'
  /** data: received */
  | 'log-date-wrong'
  /** data: said, day, t */
  | 'log-day-differs'
  /** data: t, happenedAtMs, asOfMs */
  | 'log-before-opening'
  | 'log-in-future'
  /** data: received, side, timeMs, happenedAtMs */
  | 'log-time-order'
  /** data: ref, otherLine */
  | 'log-id-twice'
  /** data: ref, otherLine */
  | 'log-line-repeated'
  | 'log-opening-missing'
  /** data: otherLine */
  | 'log-opening-twice'
  /** Another Day 1 than the book has. data: received, wanted */
  | 'log-opening-other'
  /** data: received, wanted */
  | 'log-format-other'
  /** data: received, known */
  | 'log-version-newer'
  /** data: received, wanted */
  | 'log-outpost-other'
  /** data: what, name, nearest */
  | 'log-name-unknown'
  /** data: name, nearest */
  | 'log-vehicle-unknown'
  /** data: method, hose, known, named */
  | 'log-method-unknown'
  /** data: name */
  | 'log-named-twice'
  /** data: logField, value */
  | 'log-instrument-missing'
  /** data: port, counters */
  | 'log-counter-unclear'
  /** data: store, said, written, key */
  | 'log-store-differs'
  /** data: kept, left */
  | 'log-findings-cut';
