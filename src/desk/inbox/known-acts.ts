// Acts of a table held against those of the book: the same act told before adds nothing, and a constant gap is another clock.
import { type AnyDraft, type AnyEntry, amendmentsOf, entryOf, type Kind } from '../../book/index.ts';
import { msPerMinute } from '../../ground/units/index.ts';
import type { Desk } from '../desk.ts';

const COMPARED: readonly Kind[] = ['movement', 'weigh', 'gauge', 'declared-empty', 'declared-full'];
/** The farthest that two clocks are apart, and a little. */
const FARTHEST_MS = (14 * 60 + 1) * msPerMinute;
const QUARTER_MIN = 15;
/** Fewer rows that agree may agree by chance. */
const FEWEST = 3;

/** Times by what was done, for entries around the time of some drafts. */
export type KnownActs = ReadonlyMap<string, readonly { readonly atMs: number; readonly ref: string }[]>;

/** What an act says apart from its time; null for a kind that is not compared. */
function signatureOf({ kind, body }: AnyDraft): string | null {
  if (kind === 'movement') return `${body.from}\n${body.to}\n${body.amount.massMg}`;
  if (kind === 'weigh' || kind === 'gauge')
    return body.amount === null ? null : `read\n${body.store}\n${body.amount.massMg}`;
  if (kind === 'declared-empty') return `empty\n${body.store}`;
  return kind === 'declared-full' ? `full\n${body.store}\n${body.amount.massMg}` : null;
}

export async function knownActs(desk: Desk, drafts: readonly AnyDraft[]): Promise<KnownActs> {
  const times = drafts.filter((draft) => signatureOf(draft) !== null).map(({ happenedAtMs }) => happenedAtMs);
  const known = new Map<string, { atMs: number; ref: string }[]>();
  if (times.length === 0) return known;
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const time of times) [first, last] = [Math.min(first, time), Math.max(last, time)];
  const { undone } = await amendmentsOf(desk.port, {});
  const after = { happenedAtMs: first - FARTHEST_MS, site: '', number: 0 };
  for await (const rows of desk.port.scan({ order: 'total', kinds: COMPARED, after })) {
    for (const row of rows) {
      if (row.happenedAtMs > last + FARTHEST_MS) return known;
      const entry: AnyEntry = entryOf(row);
      const signature = undone.has(row.id) ? null : signatureOf(entry);
      if (signature === null) continue;
      const list = known.get(signature) ?? [];
      list.push({ atMs: row.happenedAtMs, ref: `${row.site} ${row.number}` });
      known.set(signature, list);
    }
  }
  return known;
}

/** How people name the entry that tells the same act at the same minute; null for an act that is new. */
export function toldBefore(draft: AnyDraft, known: KnownActs): string | null {
  const signature = signatureOf(draft);
  const times = signature === null ? [] : (known.get(signature) ?? []);
  return times.find(({ atMs }) => Math.abs(atMs - draft.happenedAtMs) < msPerMinute)?.ref ?? null;
}

/**
 * Minutes by which every act of the table that the book knows stands later than in the book: the same for all of them, at
 * least three, and not nought. Null where that proves nothing.
 */
export function provenShiftMin(drafts: readonly AnyDraft[], known: KnownActs): number | null {
  if (known.size === 0) return null;
  const gaps = new Map<number, number>();
  let compared = 0;
  for (const draft of drafts) {
    const times = known.get(signatureOf(draft) ?? '') ?? [];
    const fits = new Set(times.flatMap(({ atMs }) => gapOf(draft.happenedAtMs - atMs)));
    if (fits.size > 0) compared += 1;
    for (const gap of fits) gaps.set(gap, (gaps.get(gap) ?? 0) + 1);
  }
  const whole = [...gaps].filter(([, count]) => count === compared);
  const [only] = whole;
  return whole.length === 1 && only !== undefined && only[0] !== 0 && compared >= FEWEST ? only[0] : null;
}

/** Clocks differ by whole quarters of an hour. */
function gapOf(differenceMs: number): readonly number[] {
  const minutes = Math.round(differenceMs / msPerMinute);
  const isClock =
    Math.abs(differenceMs - minutes * msPerMinute) < msPerMinute / 2 && minutes % QUARTER_MIN === 0;
  return isClock && Math.abs(differenceMs) < FARTHEST_MS ? [minutes === 0 ? 0 : minutes] : [];
}
