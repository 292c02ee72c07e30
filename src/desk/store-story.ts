// The past of a store as a sheet: the family of its water, what was believed of it, what was read.
import type { Content, FamilyPart, Gauging, Position, StorePosition, StoreStory } from '../account/index.ts';
import type { BookPort } from '../book/index.ts';
import { dayOf, dayStartUtcMs, formatIsoUtc, formatShortStamp, msPerDay } from '../ground/units/index.ts';
import type { FamilyNode, GaugingPoint, GaugingSheet, PlotMoment, SheetFigure } from '../papers/index.ts';
import { volumeFigure } from './figures.ts';

type RefOf = (id: string) => string;

/** The names by which people know the entries that a story speaks of. */
export function refsOfStory(port: BookPort, { family, gaugings }: StoreStory): Promise<RefOf> {
  return refsOf(port, new Set([...family.flatMap(entriesBelow), ...gaugings.map(({ entry }) => entry)]));
}

/** The same for the entries of results. */
export function refsOfResults(
  port: BookPort,
  results: readonly { readonly entry: string }[],
): Promise<RefOf> {
  return refsOf(port, new Set(results.map(({ entry }) => entry)));
}

async function refsOf(port: BookPort, ids: ReadonlySet<string>): Promise<RefOf> {
  const refs = new Map<string, string>();
  for (const id of ids) {
    const found = await port.find(id);
    if (found !== null) refs.set(id, `${found.site} ${found.number}`);
  }
  return (id) => refs.get(id) ?? id;
}

function entriesBelow(part: FamilyPart): readonly string[] {
  return [...part.entries, ...part.parts.flatMap(entriesBelow)];
}

/** The parts of the content's doubt are independent, so their squares add up to its square; the shares have none of their own. */
export function familyNodes(
  position: Position,
  store: StorePosition,
  of: { readonly parts: readonly FamilyPart[]; readonly refOf: RefOf },
): readonly FamilyNode[] {
  const { refOf } = of;
  return of.parts.map((part) => {
    const { kind, name, grade, share, massMg, entries, entryCount, firstMs, lastMs, parts } = part;
    const because = {
      entries,
      method: 'family',
      inputs: [
        { name: 'content', value: store.massMg / position.mgPerL, unit: 'L' },
        { name: 'share', value: share, unit: '' },
      ],
    };
    return {
      kind,
      name,
      grade,
      volume: volumeFigure(position, { massMg, uMg: store.uMg * Math.sqrt(share) }, because),
      share,
      days:
        firstMs === null || lastMs === null
          ? null
          : { first: dayOf(firstMs, position.dayRule), last: dayOf(lastMs, position.dayRule) },
      refs: entries.map(refOf),
      entryCount,
      parts: familyNodes(position, store, { parts, refOf }),
    };
  });
}

export function gaugingSheet(
  position: Position,
  store: StorePosition,
  { story, refOf }: { readonly story: StoreStory; readonly refOf: RefOf },
): GaugingSheet {
  const litres = (mg: number) => mg / position.mgPerL;
  return {
    capacityL: litres(store.facts.capacityMg),
    remainderL: litres(store.facts.remainderMg),
    estimates: story.estimates.map(({ atMs, when, entry, ...content }) => ({
      ...momentOf(position, atMs),
      when,
      volume: figureOf(position, content, entry),
    })),
    readings: story.gaugings.map((gauging) => readingOf(position, gauging, refOf)),
  };
}

function readingOf(position: Position, gauging: Gauging, refOf: RefOf): GaugingPoint {
  const { atMs, entry, how, believed, difference } = gauging;
  return {
    ...momentOf(position, atMs),
    ref: refOf(entry),
    id: entry,
    stamp: formatShortStamp(atMs, position.dayRule),
    how,
    read: figureOf(position, gauging, entry, 'reading'),
    believed: believed === null ? null : figureOf(position, believed, entry),
    difference: difference === null ? null : figureOf(position, difference, entry, 'innovation'),
  };
}

function figureOf(position: Position, content: Content, entry: string, method = 'estimator'): SheetFigure {
  return volumeFigure(position, content, { entries: [entry], method, inputs: [] });
}

/** Day 12.5 is the noon of Day 12. */
function momentOf({ dayRule }: Position, atMs: number): PlotMoment {
  const day = dayOf(atMs, dayRule);
  return { day: day + (atMs - dayStartUtcMs(day, dayRule)) / msPerDay, at: formatIsoUtc(atMs) };
}
