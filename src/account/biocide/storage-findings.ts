// What standing water asks for: biocide that is too old, lines without flow, containers near their end.
import { msPerDay } from '../../ground/units/index.ts';
import type { OutpostIndex } from '../../outpost/index.ts';
import type { AccountFinding } from '../fold.ts';
import { standingAge } from './biocide-age.ts';
import type { BiocideState } from './biocide-state.ts';
import { containerLife } from './container-life.ts';
import { biocideLimits } from './limits-of-biocide.ts';
import type { LineFlow, Storage } from './storage.ts';

interface Asked {
  readonly index: OutpostIndex;
  readonly atMs: number;
}

/** All of a storage, the stores in their order and then the lines. */
export function storageFindings(
  storage: Storage,
  states: readonly BiocideState[],
  asked: Asked,
): readonly AccountFinding[] {
  return [
    ...states.flatMap((state) => ageFinding(state, asked)),
    ...[...storage.stores.keys()].flatMap((store) => lifeFinding(storage, store, asked)),
    ...storage.lines.flatMap((line) => lineFinding(storage, line, asked)),
  ];
}

function ageFinding(
  { store, biocide, since, lastDose }: BiocideState,
  { index, atMs }: Asked,
): AccountFinding[] {
  const mostDays = biocideLimits(index, biocide, null).ageDays;
  if (since === null || mostDays === null) return [];
  const age = standingAge({ sinceMs: since.atMs, atMs, mostDays });
  if (!age.isOver) return [];
  const data = { biocide, days: Math.floor(age.days), mostDays, sinceMs: since.atMs, by: since.by };
  const entries = lastDose === null || since.by !== 'dose' ? [] : [lastDose.entry];
  return [{ code: 'biocide-over-age', severity: 'act-today', where: { store }, data, entries, atMs }];
}

function lifeFinding(storage: Storage, store: string, { index, atMs }: Asked): AccountFinding[] {
  const water = storage.stores.get(store);
  const inFile = index.stores.get(store);
  if (water === undefined || inFile === undefined) return [];
  const life = containerLife(water, inFile, atMs);
  if (life.verdict !== 'near' && life.verdict !== 'over') return [];
  const { fills, lifeCycles, lifeDays, sinceMs, since } = life;
  const data = { fills, days: Math.floor(life.days), lifeCycles, lifeDays, sinceMs, since };
  const isOver = life.verdict === 'over';
  return [
    {
      code: isOver ? 'container-life-over' : 'container-life-near',
      severity: isOver ? 'act-today' : 'know',
      where: { store },
      data,
      entries: water.disinfected === null ? [] : [water.disinfected.entry],
      atMs,
    },
  ];
}

/** A line that stood longer than a biocide may: the water in it is as old, and its walls are many for so little water. */
function lineFinding(
  storage: Storage,
  { line, kind, lastFlowMs }: LineFlow,
  { index, atMs }: Asked,
): AccountFinding[] {
  const ages = index.outpost.biocides.flatMap(({ id }) => biocideLimits(index, id, null).ageDays ?? []);
  const sinceMs = lastFlowMs ?? storage.openingMs;
  if (ages.length === 0 || sinceMs === null) return [];
  const mostDays = Math.min(...ages);
  if (atMs - sinceMs <= mostDays * msPerDay) return [];
  const days = Math.floor((atMs - sinceMs) / msPerDay);
  const data = { line, kind, days, mostDays, sinceMs, flowed: lastFlowMs !== null };
  return [
    { code: 'line-stood-too-long', severity: 'act-today', where: { field: line }, data, entries: [], atMs },
  ];
}
