// A text from the book or of a finding, its quantities in one piece; it is set as text, and nothing in it is markup.
import type { ReactNode } from 'react';

const quantity =
  /\u2212?\d[\d.\u202F]*(?:\u00A0±\u00A0\d[\d.\u202F]*)?\u00A0(?:%|mL|L(?:\/d)?|kg|kPa|°C|d|h|min|days?)(?![A-Za-z])/g;

export function Phrased({ text, strong = false }: { readonly text: string; readonly strong?: boolean }) {
  const parts: ReactNode[] = [];
  let from = 0;
  for (const match of text.matchAll(quantity)) {
    parts.push(
      text.slice(from, match.index),
      <span key={match.index} className="qty">
        {match[0]}
      </span>,
    );
    from = match.index + match[0].length;
  }
  parts.push(text.slice(from));
  return strong ? <b>{parts}</b> : parts;
}
