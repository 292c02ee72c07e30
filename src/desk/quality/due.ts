// What is due: intervals of the outpost file, tests that were asked for, treated water and delivered water that wait for a sample.
import { isForPeople } from '../../account/index.ts';
import { dayOf } from '../../ground/units/index.ts';
import type { Service } from '../../outpost/index.ts';
import type { DueLine, SampleLine } from '../../papers/index.ts';
import { parametersOf } from './parameters.ts';
import { neededTests } from './sample-add.ts';
import { nameOfPlace, type Place } from './sampled-place.ts';
import type { Seen } from './seen.ts';

type Looked = Pick<Seen, 'fold' | 'position' | 'past'>;

/** Days until a test that was asked for is back, where nobody says. Ours, no source: a count takes two days to grow. */
const TEST_DAYS = 3;

/** The most overdue first. */
export function dueLines(seen: Looked, samples: readonly SampleLine[]): readonly DueLine[] {
  const lines = [...intervals(seen), ...tests(seen, samples), ...treated(seen), ...delivered(seen, samples)];
  return lines.sort((a, b) => a.dueDay - b.dueDay || (a.name < b.name ? -1 : 1));
}

function overdue({ position }: Looked, dueDay: number): number {
  return Math.max(0, dayOf(position.atMs, position.dayRule) - dueDay);
}

function intervals(seen: Looked): readonly DueLine[] {
  const { fold, position, past } = seen;
  const quality = fold.index.outpost.service.flatMap((item) => {
    const parameter = parametersOf(fold).find(({ name }) =>
      item.id.toLowerCase().includes(name.toLowerCase()),
    );
    return parameter === undefined ? [] : [{ item, parameter: parameter.name, places: placesIn(seen, item) }];
  });
  const inForce = quality.filter(({ item }) => !quality.some((other) => replaces(seen, other, item)));
  return inForce.flatMap(({ item, parameter, places }): DueLine[] => {
    if (item.whenAboveMgPerL !== undefined && !isRaised(seen, { item, parameter, places })) return [];
    if (item.everyDays === undefined || position.openingMs === null) return [];
    const last = lastOf(past, parameter, places);
    const fromMs = last?.happenedAtMs ?? position.openingMs;
    const dueDay = dayOf(fromMs, position.dayRule) + Math.floor(item.everyDays);
    return [
      {
        kind: 'interval',
        name: item.id,
        place: places[0] ?? '',
        parameters: [parameter],
        dueDay,
        overdueDays: overdue(seen, dueDay),
        lastDay: last === undefined ? null : dayOf(last.happenedAtMs, position.dayRule),
      },
    ];
  });
}

interface OfInterval {
  readonly item: Service;
  readonly parameter: string;
  readonly places: readonly string[];
}

/** An interval may stand in for another while a figure is raised. */
function replaces(seen: Looked, other: OfInterval, item: Service): boolean {
  return other.item.insteadOf === item.id && isRaised(seen, other);
}

function isRaised({ past }: Looked, { item, parameter, places }: OfInterval): boolean {
  const last = lastOf(past, parameter, places)?.body.values.find((one) => one.parameter === parameter);
  return last !== undefined && item.whenAboveMgPerL !== undefined && last.value > item.whenAboveMgPerL;
}

/** Sampling points, units and stores that the words of an interval name; a unit is sampled at its points. */
function placesIn({ fold }: Looked, { id }: Service): readonly string[] {
  const text = id.toLowerCase();
  const { samplingPoints, units } = fold.index;
  const named = [...samplingPoints.keys(), ...units.keys(), ...fold.stores.keys()].filter((name) =>
    text.includes(name.toLowerCase()),
  );
  const points = [...samplingPoints.values()].flatMap(({ id: point, of }) =>
    'unit' in of && named.includes(of.unit) ? [point] : [],
  );
  return [...new Set([...points, ...named])];
}

function lastOf({ results }: Seen['past'], parameter: string, places: readonly string[]) {
  return results.findLast(
    ({ body }) =>
      places.includes(body.point ?? body.store ?? '') &&
      body.values.some((value) => value.parameter === parameter),
  );
}

function tests(seen: Looked, samples: readonly SampleLine[]): readonly DueLine[] {
  return samples.flatMap((line): DueLine[] => {
    if (line.ref === null || line.open.length === 0 || line.state === 'set aside') return [];
    const dueDay = line.takenDay + TEST_DAYS;
    const { sample: name, place, open: parameters } = line;
    const overdueDays = overdue(seen, dueDay);
    return [{ kind: 'test', name, place, parameters, dueDay, overdueDays, lastDay: line.takenDay }];
  });
}

/** Treated water is to be sampled when its recipe says so; a sample since then has answered it. */
function treated(seen: Looked): readonly DueLine[] {
  const { fold, position, past } = seen;
  return [...fold.stores.values()].flatMap(({ aboard, treated: added, release, facts }): DueLine[] => {
    if (!aboard || added === null || added.biocide !== null || release !== 'none') return [];
    if (isSampledSince(past, facts.id, added.untilMs)) return [];
    const dueDay = dayOf(added.untilMs, position.dayRule);
    return [
      dueOfStore(seen, 'treated', { store: facts.id, dueDay, lastDay: dayOf(added.atMs, position.dayRule) }),
    ];
  });
}

/** Water on the loader's word waits for a sample of the outpost's own, from the day on which it came. */
function delivered(seen: Looked, samples: readonly SampleLine[]): readonly DueLine[] {
  const { fold, position, past } = seen;
  const sampled = new Set(
    samples.filter(({ state }) => state === 'waits').flatMap(({ speaksOf }) => speaksOf),
  );
  const lines = position.stores.flatMap(({ facts, release, emptied, grade }): DueLine[] => {
    const state = fold.stores.get(facts.id);
    if (release !== 'loader\u2019s certificate' || emptied || state === undefined || sampled.has(facts.id))
      return [];
    if (!isForPeople(fold.index, grade) || neededTests(fold, { store: facts.id }).length === 0) return [];
    if (isSampledSince(past, facts.id, state.waterSinceMs)) return [];
    const cameMs = Number.isFinite(state.waterSinceMs)
      ? state.waterSinceMs
      : (position.openingMs ?? position.atMs);
    const came = dayOf(cameMs, position.dayRule);
    return [dueOfStore(seen, 'certificate', { store: facts.id, dueDay: came + 1, lastDay: came })];
  });
  return together(lines);
}

/** Stores that lack the same are one thing to be done, and due when the first of them is. */
function together(lines: readonly DueLine[]): readonly DueLine[] {
  const groups = new Map<string, DueLine[]>();
  for (const line of [...lines].sort((a, b) => a.dueDay - b.dueDay)) {
    const key = line.parameters.join('\n');
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    const name = group.map((line) => line.name).join(', ');
    return first === undefined ? [] : [{ ...first, name, place: group.length === 1 ? first.place : '' }];
  });
}

function isSampledSince({ samples }: Seen['past'], store: string, sinceMs: number): boolean {
  return samples.some(
    ({ body, happenedAtMs }) =>
      body.store === store && body.drawnFrom === undefined && happenedAtMs >= sinceMs,
  );
}

function dueOfStore(
  seen: Looked,
  kind: 'treated' | 'certificate',
  { store, dueDay, lastDay }: { readonly store: string; readonly dueDay: number; readonly lastDay: number },
): DueLine {
  const place: Place = { store };
  return {
    kind,
    name: store,
    place: nameOfPlace(place),
    parameters: neededTests(seen.fold, place),
    dueDay,
    overdueDays: overdue(seen, dueDay),
    lastDay,
  };
}
