// A flag of the command line, as the table of flags and the commands tell it.

export interface Flag {
  readonly name: string;
  readonly short?: string;
  /** The name of its value; absent for a flag that is only there or not. */
  readonly value?: string;
  /** May be given more than once. */
  readonly many?: true;
  readonly what: string;
}
