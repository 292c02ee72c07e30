// What a table of published values is held against: a row's inputs in, a figure or a text out.

/** Takes the inputs of a row, as texts, and gives what is to be compared with its last column. */
export type Subject = (...inputs: readonly string[]) => number | string;
