// Holds: the list, and one with its trace, its origins, what waits on it and the ways out.
import { type Origins, originsOf, type WaterHistory } from '../../account/index.ts';
import { formatShortStamp, msPerDay } from '../../ground/units/index.ts';
import {
  type DrankLine,
  type HoldLine,
  type HoldOrigin,
  type HoldSheet,
  type HoldsSheet,
  holdWays,
} from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { type Desk, type Moment, type Sight, viewOf } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';
import { volumeFigure } from '../figures.ts';
import { findName } from '../log/context.ts';
import { openFindings } from '../open-findings.ts';
import { headOf, wordOf } from '../today.ts';
import { waitsOn } from './effect.ts';
import { FAILS, figureLines } from './figure-lines.ts';
import { endedHold, holdLines } from './hold-lines.ts';
import { type Followed, follow, traceSheet } from './hold-tree.ts';
import { Refs } from './refs.ts';
import { type Seen, seenAt } from './seen.ts';
import { suspicionIn } from './suspicion-in.ts';

/** What opens the lines of who drank: the medic's own code. Whoever has none is told how much, and nobody's name. */
export interface MedicsKey {
  readonly opens: () => Promise<boolean>;
}

export async function holdList(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<HoldsSheet>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const seen = looked.value;
  const holds = holdLines(seen);
  return yes({ head: headOf(desk, sight, seen.position), holds, waits: waitsFor(seen, holds) });
}

function waitsFor({ fold, position }: Seen, holds: readonly HoldLine[]) {
  return waitsOn(fold, position, new Set(holds.flatMap(({ stores }) => stores.map(({ store }) => store))));
}

export interface HoldQuery {
  readonly hold: string;
  /** Who drank of it, and when. */
  readonly drank?: boolean;
  readonly key?: MedicsKey;
}

export async function holdShow(
  desk: Desk,
  query: HoldQuery,
  sight: Sight,
  moment: Moment,
): Promise<Answer<HoldSheet>> {
  const looked = await seenAt(desk, sight, moment);
  if (!looked.ok) return looked;
  const seen = looked.value;
  const lines = holdLines(seen);
  const found = findHold(seen, lines, query.hold);
  if (!found.ok) return found;
  if (query.drank === true && (await query.key?.opens()) !== true)
    return no('refused', deskFinding('medics-code', { hold: found.value }, { where: { field: 'drank' } }));
  const hold = lines.find((line) => line.hold === found.value) ?? endedHold(seen, found.value);
  const sample = hold.sample ?? guessedSample(seen, hold);
  const followed =
    sample === null ? yes(null) : await follow(seen, (history) => suspicionIn(seen, history, sample));
  if (!followed.ok) return followed;
  const told = await desk.history(viewOf(sight));
  if (!told.ok) return told;
  const isDrank = query.drank === true && followed.value !== null;
  return yes({
    head: headOf(desk, sight, seen.position),
    hold,
    sampleIsGuess: hold.sample === null && followed.value !== null,
    trace:
      followed.value === null ? null : await traceSheet(seen, followed.value, { sample, as: 'it stands' }),
    origins: hold.stores.flatMap(({ store }) => originOf(seen, told.value, store)),
    waits: waitsFor(seen, [hold]),
    ways: holdWays(hold, secondActs(seen)),
    findings: openFindings(seen.position)
      .filter(({ data }) => data['hold'] === hold.hold || (sample !== null && data['sample'] === sample))
      .map((finding) => wordOf(seen.position, finding)),
    ...(isDrank && followed.value !== null && { drank: await drankLines(seen, followed.value) }),
  });
}

function secondActs({ fold }: Seen): ReadonlySet<string> {
  return new Set(fold.index.outpost.secondPersonActs);
}

export function findHold(
  { past }: Pick<Seen, 'past'>,
  lines: readonly Pick<HoldLine, 'hold'>[],
  typed: string,
): Answer<string> {
  const names = [...new Set([...lines.map(({ hold }) => hold), ...past.holds.map(({ body }) => body.hold)])];
  return findName('hold', typed, names);
}

/** A hold that names no sample was mostly set on a result that failed a little before. */
const LITTLE_BEFORE_MS = 3 * msPerDay;

function guessedSample(seen: Seen, { ref }: HoldLine): string | null {
  const { fold, past, position } = seen;
  const entry = past.holds.find((one) => `${one.site} ${one.number}` === ref);
  if (entry === undefined) return null;
  const failed = past.results.findLast(
    (result) =>
      result.happenedAtMs <= entry.happenedAtMs &&
      entry.happenedAtMs - result.happenedAtMs <= LITTLE_BEFORE_MS &&
      figureLines({ fold, past, nowMs: position.atMs }, result).some(({ verdict }) => FAILS.has(verdict)),
  );
  return failed?.body.sample ?? null;
}

function originOf(seen: Seen, history: WaterHistory, store: string): readonly HoldOrigin[] {
  const origins = originsOf(history, store, { throughCuts: true });
  return origins === null || origins.heldMg === 0 ? [] : [originLine(seen, origins)];
}

function originLine({ position }: Seen, { store, origins }: Origins): HoldOrigin {
  const uMg = position.stores.find(({ facts }) => facts.id === store)?.uMg ?? 0;
  return {
    store,
    parts: origins.map(({ kind, name, visit, massMg, share, firstMs, entries }) => ({
      ...{ kind, name, visit, share },
      volume: volumeFigure(
        position,
        { massMg, uMg: uMg * share },
        { entries, method: 'contact-tracing', inputs: [{ name: 'share', value: share, unit: '' }] },
      ),
      since: formatShortStamp(firstMs, position.dayRule),
    })),
  };
}

async function drankLines({ desk, position }: Seen, { traced }: Followed): Promise<readonly DrankLine[]> {
  const refs = new Refs(desk.port);
  const lines: DrankLine[] = [];
  for (const { atMs, person, from, massMg, suspectMg, entry } of traced.drunk) {
    const because = { entries: [entry], method: 'contact-tracing', inputs: [] };
    const figure = (mg: number) => ({
      ...volumeFigure(position, { massMg: Math.round(mg), uMg: 0 }, because),
      u95: null,
    });
    lines.push({
      at: formatShortStamp(atMs, position.dayRule),
      person,
      from,
      volume: figure(massMg),
      suspect: figure(suspectMg),
      ref: await refs.of(entry),
    });
  }
  return lines;
}
