// Every id of a file by what it names, and the ids that name two things.
import type { Path } from '../outpost-finding.ts';
import type { SoundPart } from './sound-part.ts';

/** What an id can name. Vehicles are named by the visits. */
export const NAMED = {
  place: ['places', 'id'],
  grade: ['grades', 'id'],
  biocide: ['biocides', 'id'],
  store: ['stores', 'id'],
  port: ['ports', 'id'],
  instrument: ['instruments', 'id'],
  unit: ['units', 'id'],
  'sampling point': ['samplingPoints', 'id'],
  normFlow: ['normFlows', 'id'],
  hose: ['hoses', 'id'],
  coupling: ['couplings', 'id'],
  office: ['people', 'office'],
  vehicle: ['visits', 'vehicle'],
  limit: ['limits', 'id'],
  treatment: ['treatments', 'id'],
  part: ['parts', 'id'],
  service: ['service', 'id'],
  task: ['taskMinutes', 'id'],
} as const;

export type Named = keyof typeof NAMED;
export type KnownIds = ReadonlyMap<Named, ReadonlyMap<string, Path>>;

interface IdAt {
  readonly id: string;
  readonly path: Path;
}

function idsOfItem(item: unknown, key: string, path: Path): readonly IdAt[] {
  if (typeof item !== 'object' || item === null) return [];
  const { [key]: id, ids } = item as Readonly<Record<string, unknown>>;
  const single = typeof id === 'string' ? [{ id, path: [...path, key] }] : [];
  const group = Array.isArray(ids)
    ? ids.map((each, index) => ({ id: each, path: [...path, 'ids', index] }))
    : [];
  return [
    ...single,
    ...group.filter(
      (each): each is { id: string; path: Path & (string | number)[] } => typeof each.id === 'string',
    ),
  ];
}

function idsOf(part: SoundPart, named: Named): readonly IdAt[] {
  const [section, key] = NAMED[named];
  const items = part.raw[section];
  return Array.isArray(items) ? items.flatMap((item, index) => idsOfItem(item, key, [section, index])) : [];
}

/** Ids that differ only in capitals would be taken for each other when spoken or typed. */
const folded = (id: string) => id.normalize('NFC').toLowerCase();

function collect(part: SoundPart, named: Named): ReadonlyMap<string, Path> {
  const found = new Map<string, Path>();
  const seen = new Map<string, string>();
  for (const { id, path } of idsOf(part, named)) {
    const first = seen.get(folded(id));
    if (first === undefined) seen.set(folded(id), id);
    // A vehicle has a line for each time that news of it came.
    else if (named !== 'vehicle' || first !== id) part.add('id-twice', path, { what: named, id, first });
    if (!found.has(id)) found.set(id, path);
  }
  return found;
}

export function collectIds(part: SoundPart): KnownIds {
  return new Map((Object.keys(NAMED) as Named[]).map((named) => [named, collect(part, named)]));
}

interface Key {
  readonly what: string;
  readonly key: string;
  readonly path: Path;
}

function refuseTwice(part: SoundPart, keys: readonly Key[]): void {
  const seen = new Set<string>();
  for (const { what, key, path } of keys) {
    if (seen.has(key)) part.add('id-twice', path, { what, id: key, first: key });
    seen.add(key);
  }
}

/** Other words by which a field log or a rule finds a thing: each may lead to one thing only. */
export function checkOtherKeys(part: SoundPart): void {
  refuseTwice(
    part,
    part
      .each('grades')
      .map(({ item, path }) => ({ what: 'letter', key: item.letter, path: [...path, 'letter'] })),
  );
  const instruments = part.each('instruments');
  refuseTwice(
    part,
    instruments.flatMap(({ item, path }) =>
      item.logField === undefined
        ? []
        : [{ what: 'logField', key: item.logField, path: [...path, 'logField'] }],
    ),
  );
  refuseTwice(
    part,
    instruments.flatMap(({ item: { logMethod, onHoses }, path }) =>
      logMethod === undefined
        ? []
        : (onHoses.length > 0 ? onHoses : ['']).map((hose) => ({
            what: 'logMethod',
            key: hose === '' ? logMethod : `${logMethod} (${hose})`,
            path: [...path, 'logMethod'],
          })),
    ),
  );
  refuseTwice(
    part,
    part.each('visits').map(({ item, path }) => ({
      what: 'visit',
      key: `${item.vehicle}, D${item.knownSinceDay}`,
      path: [...path, 'knownSinceDay'],
    })),
  );
  const counts = part.file.policy?.reserve.counts ?? [];
  refuseTwice(
    part,
    counts.map((key, index) => ({ what: 'reserve', key, path: ['policy', 'reserve', 'counts', index] })),
  );
}
