// A second taste at one place within two weeks: one is an opinion, two are a pattern.
import type { Entry } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { Fold } from '../fold.ts';
import { noteEntry } from '../note.ts';

/** Two of them within this are said. Ours, no source. */
const WITHIN_DAYS = 14;

export function askTaste(fold: Fold, entry: Entry<'taste'>): void {
  const { store, point, strength } = entry.body;
  const source = store ?? point;
  // That nothing is tasted is no taste.
  if (source === undefined || strength === 0) return;
  const { tastes } = fold.habits;
  const fromMs = entry.happenedAtMs - WITHIN_DAYS * msPerDay;
  const before = (tastes.get(source) ?? []).filter(({ atMs }) => atMs >= fromMs);
  tastes.set(source, [...before, { atMs: entry.happenedAtMs, entry: entry.id }]);
  if (before.length === 0) return;
  const data = { source, times: before.length + 1, withinDays: WITHIN_DAYS };
  const entries = before.map((one) => one.entry);
  noteEntry(fold, entry, { code: 'taste-repeated', severity: 'know', store, data, entries });
}
