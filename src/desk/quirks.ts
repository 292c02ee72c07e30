// Learned quirks: what readings have taught of instruments, norms and openings, each with the entries that taught it.
import type { LearnedError, Position } from '../account/index.ts';
import { type BookPort, entryOf } from '../book/index.ts';
import { type Quirk, type QuirkFacts, type QuirksSheet, quirkInWords } from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { type Desk, type Moment, positionAt, type Sight } from './desk.ts';
import { headOf } from './today.ts';

/** An error of which at least this part of the assumed doubt is gone has been learned. Ours, no source. */
const LEARNED_BELOW = 0.8;
/** Entries that are named behind a quirk; the others are counted. */
const MOST_SHOWN = 8;

export async function quirks(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<QuirksSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const learned: Quirk[] = [];
  for (const error of position.learned.filter(isLearned))
    learned.push(await quirkOf(desk.port, position, error));
  return yes({
    head: headOf(desk, sight, position),
    quirks: learned.sort((a, b) => strengthOf(b) - strengthOf(a)),
    scatter: position.records
      .filter(({ readings }) => readings > 1)
      .map(({ of, ...rest }) => ({ of: position.index.instruments.get(of)?.name ?? of, ...rest })),
  });
}

/** An error of a calibration or a norm is worth knowing although it is small; another one only if it stands out from its ±. */
function isLearned({ kind, mean, u, assumedU, lessonsInAll }: LearnedError): boolean {
  if (kind === 'body water' || lessonsInAll === 0 || u >= LEARNED_BELOW * assumedU) return false;
  return kind === 'calibration' || kind === 'norm' || Math.abs(mean) > 2 * u;
}

/** How far it stands out from its doubt: what is surely off is told first. */
function strengthOf({ error }: QuirkFacts): number {
  return Math.abs(error.value) / error.u95;
}

async function quirkOf(port: BookPort, position: Position, error: LearnedError): Promise<Quirk> {
  const { index } = position;
  const entries = [...error.lessons].reverse();
  const { lessons, shown } = await lessonsOf(port, entries);
  const instrument = index.instruments.get(error.of);
  const kind = error.kind as QuirkFacts['kind'];
  const isRelative = kind === 'calibration' || kind === 'norm';
  const perUnit = isRelative || kind === 'gauge' ? 1 : 1_000_000 / position.mgPerL;
  const unit = isRelative ? '' : kind === 'gauge' ? (instrument?.unit ?? '') : 'L';
  const normL = position.norms.find(({ id }) => id === error.of)?.litresPerPersonDay ?? null;
  const countL = kind === 'calibration' ? (instrument?.litresPerCount ?? null) : null;
  const facts: QuirkFacts = {
    kind,
    name: instrument?.name ?? error.of,
    error: {
      value: error.mean * perUnit,
      u95: 2 * error.u * perUnit,
      assumedU95: 2 * error.assumedU * perUnit,
    },
    unit,
    countMl: countL === null ? null : 1000 * countL,
    normL,
    lessons,
    lessonsInAll: error.lessonsInAll,
  };
  const { value, u95 } = facts.error;
  const because = { entries, method: 'estimator', inputs: [{ name: kind, value: error.of, unit: '' }] };
  return { ...facts, text: quirkInWords(facts), figure: { value, u95, unit, because }, shown };
}

/** What kinds of entries taught it, and how people name the youngest of them. */
async function lessonsOf(
  port: BookPort,
  entries: readonly string[],
): Promise<{ lessons: QuirkFacts['lessons']; shown: readonly string[] }> {
  const counts = new Map<string, number>();
  const shown: string[] = [];
  for (const id of entries) {
    const kept = await port.find(id);
    if (kept === null) continue;
    counts.set(kept.kind, (counts.get(kept.kind) ?? 0) + 1);
    const { site, number } = entryOf(kept);
    if (shown.length < MOST_SHOWN) shown.push(`${site} ${number}`);
  }
  const lessons = [...counts].map(([kind, count]) => ({ kind, count })).sort((a, b) => b.count - a.count);
  return { lessons, shown };
}
