// A result that fails and that nobody has answered.

/** A result that fails; it waits until a hold, a release, a waiver, a downgrade or a word of the medic answers it. */
export interface BadResult {
  readonly entry: string;
  readonly sample: string;
  readonly stores: readonly string[];
  readonly parameters: readonly string[];
  readonly atMs: number;
}
