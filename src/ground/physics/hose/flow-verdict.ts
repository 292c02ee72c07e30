// What a flow that is not as predicted says of the line.

export type FlowVerdict = 'as predicted' | 'kink or clogged coupling' | 'gas in the line';

/** Below this share of the predicted flow something holds the water back. */
const LEAST = 0.7;
/** Above this share it is no longer water alone that flows. */
const MOST = 1.2;

/**
 * A flow against what was predicted for it: below 0.7 of it a kink or a clogged coupling, above 1.2 gas.
 * @param flowM3PerS `seen` and `predicted` in m³/s, the second above 0
 * @returns the verdict
 * @throws RangeError for a flow below 0, a prediction that is not above 0, and NaN
 * @source common practice; both limits are to be corrected by an outpost's own runs
 * @example flowVerdict({ seenM3PerS: 1.3e-5, predictedM3PerS: 2.15e-5 }) // 'kink or clogged coupling'
 */
export function flowVerdict(flow: {
  readonly seenM3PerS: number;
  readonly predictedM3PerS: number;
}): FlowVerdict {
  const { seenM3PerS, predictedM3PerS } = flow;
  if (!(seenM3PerS >= 0 && predictedM3PerS > 0))
    throw new RangeError(`a flow of ${seenM3PerS} against ${predictedM3PerS} m³/s says nothing`);
  const share = seenM3PerS / predictedM3PerS;
  if (share < LEAST) return 'kink or clogged coupling';
  return share > MOST ? 'gas in the line' : 'as predicted';
}
