// Codes of what the desk says no to, and why; they stand here because the words do, and the desk takes them from here.

export type DeskFindingCode =
  /** A named store, entry, port, instrument or visit is not in the book. data: what, name, nearest */
  | 'not-in-book'
  /** The book has no outpost file or no opening yet. data: what */
  | 'book-not-begun'
  /**
   * An intention that a rule refuses. data: rule, from, to, and by rule
   * hold: hold, reason, sinceMs · biocide: comes, meets, residue · grade: fromGrade, toGrade, relabelTo, takesTwo ·
   * conditional: hold, reason · reserve: release · reserve-draw: by, mayBeDrawnBy ·
   * release: stores, reasons (each `store: parameter: code`) · releases: act, by, offices ·
   * treatment: store, recipe, why, neverHeld, grade, from · grade-up: store, fromGrade, toGrade ·
   * capacity: wouldHoldMg, capacityMg, mgPerL · remainder: massMg, usableMg, remainderMg, mgPerL
   */
  | 'intention-refused'
  /** A two-person act without a second person. data: act */
  | 'second-needed'
  /** Entered by the office that is named as the second person too. data: office */
  | 'second-is-first'
  /** It happened before the book began. data: happenedAtMs, openingMs */
  | 'before-book'
  /** It happens later than now. data: happenedAtMs, nowMs */
  | 'in-the-future'
  /** The day is closed: a reason is needed. data: day */
  | 'day-closed'
  /** No entry of this office within the time in which an undo needs no number. data: by, withinMin */
  | 'nothing-to-undo'
  /** That entry was undone before. data: ref, by */
  | 'already-undone'
  /** An entry that has no amount and no reading to be told anew. data: kind, ref, entryNo */
  | 'not-correctable'
  /** Asked first: limits that would bear on release. data: what, stores, heldL, u95L, off, grades, clashes */
  | 'limits-ask'
  /** Sets that stay in force were chosen for another time of drinking. data: sets, wasDays, isDays */
  | 'limit-exposure-differs'
  /** A field is missing or does not fit. data: field, received, expected */
  | 'field-needed'
  /** A reading above what the store can hold. data: store, massMg, capacityMg, mgPerL */
  | 'reading-over-capacity'
  /** Asked first: nobody said where the water comes from. data: to */
  | 'source-unsaid'
  /** Asked first: more than what it comes from holds. data: from, massMg, hasMg, u95Mg, mgPerL */
  | 'more-than-there'
  /** Asked first: one drink of more than a person's day. data: massMg, mostMg, mgPerL */
  | 'drink-large'
  /** Asked first: a reading far outside of what is expected. data: of, value, unit, low, high, fits */
  | 'reading-unusual'
  /** Asked first: a practice book's time would be moved past the next day. data: happenedAtMs, presentMs, endMs */
  | 'time-ahead'
  /** Water that moved, and is none. data: received */
  | 'amount-nothing'
  /** A count that is broken or below nought. data: received, unit */
  | 'figure-not-whole'
  /** Asked first: a counter's reading below the one before. data: instrument, value, last */
  | 'counter-below-last'
  /** The line of this day is in the book already. data: day, ref */
  | 'day-line-kept'
  /** The book has its opening stocks already. data: openingMs */
  | 'opening-kept'
  /** A new thing with the name of one that is there. data: what, name */
  | 'name-taken'
  /** A file that is none of the formats known here. data: file, formats */
  | 'format-unknown'
  /** A line of a file that was not taken. data: reason */
  | 'line-not-taken'
  /** No day of cover can be counted on. data: grade, q50, freeL, u95L */
  | 'cover-out'
  /** Many entries at once: asked about first. data: entries */
  | 'many-entries'
  /** The book has entries already, and this needs an empty one. data: entries */
  | 'book-not-empty'
  /** A stock count without a single reading. */
  | 'count-empty'
  /** A stock count that nobody has begun. */
  | 'count-not-begun'
  /** A stock count is under way already. data: begunMs, typed */
  | 'count-under-way'
  /** A reading that the book would not have expected: asked about first. data: store, readMg, readU95Mg, bookMg, bookU95Mg, mgPerL */
  | 'count-far-off'
  /** A reading of more than the store can hold: asked about first. data: store, massMg, capacityMg, mgPerL */
  | 'count-over-capacity'
  /** A reading without its ± of a store that has no gauge. data: store, received */
  | 'count-needs-doubt'
  /** The count was begun on another day: asked about first. data: day, begunMs, nowMs, isClosed */
  | 'count-of-another-day'
  /** An office that the outpost file does not name. data: office, offices */
  | 'office-unknown'
  /** No calculator has this name. data: what, nearest, all */
  | 'reckon-unknown'
  /** A calculator lacks inputs. data: calculator, inputs, hasBook */
  | 'reckon-input-missing'
  /** A calculator has no such input. data: field, calculator, nearest, known */
  | 'reckon-field-unknown'
  /** An input that has to be above 0, or from 0 on. data: input, received, wanted */
  | 'reckon-not-positive'
  /** An input above the greatest value that has a meaning. data: input, received, most, unit */
  | 'reckon-too-large'
  /** An input that is one of a few words. data: field, received, choices */
  | 'reckon-choice'
  /** A name of the book, where there is no book. data: field */
  | 'reckon-needs-book'
  /** An input outside the range in which a formula holds. data: quantity, value, unit, low, high, source */
  | 'reckon-outside-range'
  /**
   * A calculator refuses to answer. data: rule, and by rule
   * over-rating: wouldKPa, ratingKPa, what · rating-missing: what · charge-too-high: endKPa, ratingKPa, safeBottleKPa, fallKPa ·
   * ullage-missing · power-not-told · loss-not-told · would-boil: endC, boilsAtC, cabinKPa ·
   * above-maximum: wantedMgPerL, maximumMgPerL · coil-not-told: missing · unequal-lists: list, count, volumes
   */
  | 'reckon-refused'
  /** A parameter that this outpost neither measures nor limits. data: parameter, nearest, known */
  | 'parameter-unknown'
  /**
   * A figure of a result that cannot be read as one. data: parameter, received, why, units, and by why
   * too large: most · basis missing, basis unknown, basis does not fit: bases
   */
  | 'figure-unread'
  /** A result of another store than its sample. data: sample, of, told */
  | 'sample-of-other'
  /** A result from before its sample was drawn. data: sample, takenAtMs, atMs */
  | 'result-before-sample'
  /** A second word on a figure of one sample. data: sample, parameter, kept, told, ref */
  | 'result-contradicts'
  /** Asked first: a result of a place whose sample waits for one. data: place, samples */
  | 'sample-waits'
  /** A result fails, and nobody has said what is to be held. data: sample, parameters, stores, conditional, massMg, u95Mg, mgPerL */
  | 'hold-undecided'
  /** A store that the trace does not propose to hold. data: store, proposed */
  | 'hold-not-proposed'
  /** A sample whose water is nowhere aboard. data: sample */
  | 'nothing-touched'
  /** No store is on that hold any more. data: hold */
  | 'hold-ended'
  /** A store that is not on the hold that was named. data: hold, store, stores */
  | 'not-on-hold'
  /** Who drank of held water is for the medic alone. data: hold */
  | 'medics-code'
  /** The outpost file does not tell what an expectation of condensate is made of. data: missing */
  | 'no-condensate-expectation'
  /** A trend is of one store, one sampling point or one grade. data: first, second */
  | 'trend-places-clash'
  /** The outpost file tells of no purifier with beds. */
  | 'no-beds'
  /** Figures of one sample contradict one another. data: of, sample, place, measured, expected, u95, unit, inU, isWhole */
  | 'figures-contradict';
