// From a line and its body to a draft of the book: id, times, and what a person adds.
import { type AnyDraft, entryId, kindVersion, plainHash } from '../../book/index.ts';
import { formatDate, type Instant, msPerDay } from '../../ground/units/index.ts';
import type { Made } from './map/line-at.ts';
import type { AnyLine } from './shape/line-shapes.ts';
import { LOG_FORMAT } from './shape/opening.ts';

const HEX = '0123456789abcdef';

/**
 * The same line of the same log is the same entry wherever it stands in a file: its id is made of the outpost,
 * Day 1 and the line's own id. An edited line has the id of the old one and other content, which the book refuses.
 */
export function idOfLine(
  log: { readonly outpostName: string; readonly dayOneMs: number },
  ref: string,
): string {
  const date = formatDate(Math.floor(log.dayOneMs / msPerDay));
  const digest = plainHash(`${log.outpostName}\n${date}\n${ref}`);
  const bytes = Uint8Array.from(
    { length: 10 },
    (_, k) => nibble(digest, 2 * k) * 16 + nibble(digest, 2 * k + 1),
  );
  return entryId(log.dayOneMs, bytes);
}

function nibble(hex: string, at: number): number {
  return HEX.indexOf(hex.charAt(at));
}

/**
 * No place in the file is kept: logs are sorted by time, and a late line would move all others.
 */
export function draftOf(
  line: AnyLine,
  made: Made,
  when: { readonly id: string; readonly happened: Instant; readonly entered: Instant },
): AnyDraft {
  const { happened, entered } = when;
  const draft = {
    id: when.id,
    version: kindVersion(made.kind),
    kind: made.kind,
    happenedAtMs: happened.utcMs,
    happenedOffsetMin: happened.offsetMin,
    enteredAtMs: entered.utcMs,
    enteredOffsetMin: entered.offsetMin,
    by: line.by ?? 'keeper',
    ...(line.crew_min !== undefined && { crewMinutes: line.crew_min }),
    ...(line.source !== undefined && { source: line.source }),
    ...(line.note !== undefined && { note: line.note }),
    origin: { format: LOG_FORMAT, ref: line.id },
    body: made.body,
  };
  return draft as AnyDraft;
}
