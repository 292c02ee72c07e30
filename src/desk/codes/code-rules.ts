// What may be a code, and how often a wrong one may be typed: the rules that every door keeps.

export const CODE_DIGITS = { least: 4, most: 12 } as const;

/** After so many wrong codes in a row an office waits; then it has as many again. */
export const TRY_RULE = { tries: 5, waitMs: 15 * 60_000 } as const;

export type Unfit = 'signs' | 'length' | 'repeat' | 'run';

/** Why a text may not be a code; null where it may. Digits of other scripts are other signs: not every keyboard has them. */
export function whyUnfit(code: string): Unfit | null {
  if (!/^[0-9]*$/.test(code)) return 'signs';
  if (code.length < CODE_DIGITS.least || code.length > CODE_DIGITS.most) return 'length';
  if (isRepeat(code)) return 'repeat';
  return isRun(code) ? 'run' : null;
}

/** `0000`, and `1212`: each digit is the one that stood two places before. */
function isRepeat(code: string): boolean {
  return [...code].every((digit, k) => k < 2 || digit === code[k - 2]);
}

const UPWARD = '0123456789';

/** `1234`, `4321`, and over the end of the keys `7890`. */
function isRun(code: string): boolean {
  const places = [...code].map((digit) => UPWARD.indexOf(digit));
  const steps = places.slice(1).map((place, k) => (place - (places[k] ?? 0) + 10) % 10);
  return steps.every((step) => step === 1) || steps.every((step) => step === 9);
}
