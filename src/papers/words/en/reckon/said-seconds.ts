// Seconds as a person counts them.

/** `5 min 42 s`, `1 h 12 min`: whole seconds below an hour, whole minutes above. */
export function saidSeconds(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole}\u00A0s`;
  if (whole < 3600) {
    const rest = whole % 60;
    return `${Math.floor(whole / 60)}\u00A0min${rest === 0 ? '' : ` ${rest}\u00A0s`}`;
  }
  const minutes = Math.round(whole / 60);
  const rest = minutes % 60;
  return `${Math.floor(minutes / 60)}\u00A0h${rest === 0 ? '' : ` ${rest}\u00A0min`}`;
}
