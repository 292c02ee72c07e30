// The medic's queue: results due and overdue, what waits for a release and who waits on it, what is parked, ends soon or is off.
import { notFreeBecause, rowsOfGrade } from '../../account/index.ts';
import { dayOf, formatShortStamp, msPerDay } from '../../ground/units/index.ts';
import type { EndingLine, QualitySheet, WaitingStore } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import type { Desk, Moment, Sight } from '../desk.ts';
import { volumeFigure } from '../figures.ts';
import { openFindings } from '../open-findings.ts';
import { headOf, wordOf } from '../today.ts';
import { dueLines } from './due.ts';
import { waitsOn } from './effect.ts';
import { holdLines } from './hold-lines.ts';
import { lacksOf } from './lacks.ts';
import { neededTests } from './sample-add.ts';
import { sampleLines } from './sample-lines.ts';
import { type Seen, seenAt } from './seen.ts';

/** What ends within so many days is told. Ours, no source: a sample takes less. */
const SOON_DAYS = 14;
/** What is due within so many days is told. */
const AHEAD_DAYS = 7;

const OF_QUALITY: ReadonlySet<string> = new Set([
  'result-unanswered',
  'release-unproven',
  'release-over',
  'parked-over',
  'limit-off',
  'treatment-not-allowed',
]);

export async function qualityToday(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<QualitySheet>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const seen = looked.value;
  const { fold, position } = seen;
  const samples = sampleLines(seen);
  const waiting = waitingStores(seen);
  const today = dayOf(position.atMs, position.dayRule);
  return yes({
    head: headOf(desk, sight, position),
    due: dueLines(seen, samples).filter(({ dueDay }) => dueDay <= today + AHEAD_DAYS),
    results: samples.filter(
      ({ ref, open, state }) => ref !== null && state !== 'set aside' && open.length > 0,
    ),
    waiting,
    waits: waitsOn(fold, position, new Set(waiting.map(({ store }) => store))),
    parked: holdLines(seen).filter(({ parked }) => parked !== null),
    ending: endingLines(seen),
    off: rowsOff(seen),
    findings: openFindings(position)
      .filter(({ code }) => OF_QUALITY.has(code))
      .map((finding) => wordOf(position, finding)),
  });
}

/** Water for people, or for a unit, that a word would set free. */
function waitingStores({ fold, position }: Seen): readonly WaitingStore[] {
  return position.stores.flatMap((store): WaitingStore[] => {
    const { facts, grade, emptied, hold, conditional } = store;
    const state = fold.stores.get(facts.id);
    const why = notFreeBecause(position, store);
    const waits = why === 'hold' || why === 'conditional' || why === 'not released' || why === 'release over';
    if (!waits || state === undefined || emptied) return [];
    if (hold === null && conditional === null && neededTests(fold, { store: facts.id }).length === 0)
      return [];
    const because = { entries: store.because, method: 'estimator', inputs: [] };
    return [
      {
        store: facts.id,
        grade,
        volume: volumeFigure(position, store, because),
        why,
        hold: (hold ?? conditional)?.hold ?? null,
        lacks: lacksOf(fold, state, position.atMs),
      },
    ];
  });
}

function endingLines({ position }: Seen): readonly EndingLine[] {
  const { atMs, dayRule } = position;
  const lines = position.stores.flatMap(({ facts, released, waived, emptied }) => [
    ...(released?.untilMs == null || emptied
      ? []
      : [{ store: facts.id, kind: 'release' as const, by: released.by, untilMs: released.untilMs }]),
    ...waived.map(({ by, untilMs }) => ({ store: facts.id, kind: 'waiver' as const, by, untilMs })),
  ]);
  return lines
    .filter(({ kind, untilMs }) => kind === 'waiver' || untilMs - atMs <= SOON_DAYS * msPerDay)
    .sort((a, b) => a.untilMs - b.untilMs)
    .map(({ untilMs, ...rest }) => ({
      ...rest,
      until: formatShortStamp(untilMs, dayRule),
      untilDay: dayOf(untilMs, dayRule),
      days: (untilMs - atMs) / msPerDay,
    }));
}

function rowsOff({ fold }: Seen): QualitySheet['off'] {
  const { limits, index } = fold;
  const required = new Set(index.outpost.grades.flatMap(({ id }) => rowsOfGrade(limits, index, id)));
  return limits.sets.flatMap(({ set, rows }) =>
    rows
      .filter((row) => row.limit === null && required.has(row))
      .map(({ id, parameter }) => ({ set, row: id, parameter })),
  );
}
