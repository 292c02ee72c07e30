// Labels beside a plot: each as near to its line as it may be without lying on another.

export interface EndLabel {
  readonly y: number;
  readonly lines: readonly string[];
}

/** Pixels between the foot of one line of a label and that of the next. */
export const LABEL_LINE = 15;

/** @returns the same labels from the top down, moved apart where they would meet, all within the range as long as there is room */
export function spread(
  labels: readonly EndLabel[],
  range: { readonly top: number; readonly bottom: number },
): readonly EndLabel[] {
  const sorted = [...labels].sort((one, other) => one.y - other.y);
  const heights = sorted.map(({ lines }) => lines.length * LABEL_LINE + 4);
  const down: number[] = [];
  sorted.forEach(({ y }, k) => {
    const free = k === 0 ? range.top : (down[k - 1] ?? 0) + (heights[k - 1] ?? 0);
    down.push(Math.max(y, free));
  });
  let floor = range.bottom;
  for (let k = sorted.length - 1; k >= 0; k -= 1) {
    const y = Math.min(down[k] ?? 0, floor - (heights[k] ?? 0));
    down[k] = y;
    floor = y;
  }
  return sorted.map((label, k) => ({ ...label, y: down[k] ?? label.y }));
}
