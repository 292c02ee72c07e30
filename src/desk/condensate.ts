// Condensate day by day: what should have come by what was known then, what came, and what is missing.
import type { Condensate, CondensateDay, Position } from '../account/index.ts';
import { shortfallSum } from '../ground/physics/index.ts';
import { dayOf, formatIsoUtc } from '../ground/units/index.ts';
import type { Because, CondensateLine, CondensateRun, CondensateSheet } from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { type Desk, type Moment, positionAt, type Sight, viewOf } from './desk.ts';
import { volumeFigure } from './figures.ts';
import { headOf } from './today.ts';

const METHOD = 'cabin-humidity';
const MG_PER_KG = 1_000_000;

export interface CondensateQuery {
  /** Only so many of the last days; null: all of them. */
  readonly days: number | null;
}

/**
 * The sheet of condensate.
 * @returns a finding where the outpost file does not tell what people give off, or has no counter of a condenser
 */
export async function condensateSheet(
  desk: Desk,
  {
    sight,
    moment,
    query,
  }: { readonly sight: Sight; readonly moment: Moment; readonly query: CondensateQuery },
): Promise<Answer<CondensateSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const told = await desk.condensate(viewOf(sight));
  if (!told.ok) return told;
  const [position, condensate] = [seen.value, told.value];
  const { days, found, rate } = condensate;
  const fromDay = query.days === null ? 0 : Math.max(0, days.length - query.days);
  const shown = days.slice(fromDay);
  const figure = (
    massMg: number,
    uMg: number,
    because: Because = { entries: [], method: METHOD, inputs: [] },
  ) => volumeFigure(position, { massMg, uMg }, because);
  return yes({
    head: headOf(desk, sight, position),
    lines: shown.map((day) => lineOf(position, day)),
    runs: runsOf(position, shown),
    found: found.map(({ store, massMg, uMg, atMs, entry }) => ({
      store,
      day: dayOf(atMs, position.dayRule),
      volume: figure(massMg, uMg, { entries: [entry], method: METHOD, inputs: [] }),
    })),
    foundTotal: figure(
      found.reduce((sum, { massMg }) => sum + massMg, 0),
      Math.sqrt(found.reduce((sum, { uMg }) => sum + uMg * uMg, 0)),
    ),
    rate: figure(rate.massMg, rate.uMg),
    norm: figure(rate.normMg, rate.normUMg),
    taughtBy: condensate.taughtBy,
    judged: judgedOf(condensate),
  });
}

function judgedOf({ days }: Condensate): CondensateSheet['judged'] {
  return { days: days.length, held: days.filter(({ holdsZero }) => holdsZero).length };
}

function lineOf(position: Position, day: CondensateDay): CondensateLine {
  const because: Because = { entries: [day.entry], method: METHOD, inputs: [] };
  const figure = (massMg: number, uMg: number, inputs: Because['inputs'] = []) =>
    volumeFigure(position, { massMg, uMg }, { ...because, inputs });
  const parts = day.parts.map(({ name, massMg, uMg }) => ({ name, volume: figure(massMg, uMg) }));
  const inputs = [
    { name: 'people · days', value: day.personDays, unit: 'd' },
    ...parts.map(({ name, volume }) => ({ name, value: volume.value, unit: 'L' })),
  ];
  return {
    day: day.day,
    at: formatIsoUtc(day.endMs),
    days: day.days,
    personDays: day.personDays,
    expected: figure(day.expectedMg, day.expectedUMg, inputs),
    collected: figure(day.collectedMg, day.collectedUMg),
    shortfall: figure(day.shortfallMg, day.shortfallUMg),
    verdict: verdictOf(day),
    parts,
  };
}

function verdictOf({ holdsZero, shortfallMg }: CondensateDay): CondensateLine['verdict'] {
  if (holdsZero) return 'as expected';
  return shortfallMg > 0 ? 'less came' : 'more came';
}

/** Days of one verdict one after another, and their sum: what they share adds up in full. */
function runsOf(position: Position, days: readonly CondensateDay[]): readonly CondensateRun[] {
  const runs: { verdict: CondensateRun['verdict']; days: CondensateDay[] }[] = [];
  let before: CondensateLine['verdict'] = 'as expected';
  for (const day of days) {
    const verdict = verdictOf(day);
    if (verdict !== 'as expected' && verdict === before) runs.at(-1)?.days.push(day);
    else if (verdict !== 'as expected') runs.push({ verdict, days: [day] });
    before = verdict;
  }
  return runs.map(({ verdict, days: members }) => {
    const total = shortfallSum(
      members.map(({ shortfallMg, shortfallUMg, sharedUMg }) => ({
        kg: shortfallMg / MG_PER_KG,
        u: shortfallUMg / MG_PER_KG,
        sharedU: sharedUMg / MG_PER_KG,
      })),
    );
    const because: Because = { entries: members.map(({ entry }) => entry), method: METHOD, inputs: [] };
    return {
      verdict,
      firstDay: members[0]?.day ?? 0,
      lastDay: members.at(-1)?.day ?? 0,
      total: volumeFigure(position, { massMg: total.kg * MG_PER_KG, uMg: total.u * MG_PER_KG }, because),
    };
  });
}
