// Lookups by id, made once for an outpost.
import type {
  Biocide,
  Coupling,
  Grade,
  Hose,
  Instrument,
  Limit,
  Office,
  Outpost,
  Part,
  Place,
  Port,
  SamplingPoint,
  Store,
  Task,
  Treatment,
  Unit,
  Visit,
} from './outpost.ts';

export interface OutpostIndex {
  readonly outpost: Outpost;
  readonly places: ReadonlyMap<string, Place>;
  readonly grades: ReadonlyMap<string, Grade>;
  readonly gradesByLetter: ReadonlyMap<string, Grade>;
  readonly biocides: ReadonlyMap<string, Biocide>;
  readonly stores: ReadonlyMap<string, Store>;
  readonly ports: ReadonlyMap<string, Port>;
  readonly instruments: ReadonlyMap<string, Instrument>;
  readonly instrumentsByLogField: ReadonlyMap<string, Instrument>;
  readonly units: ReadonlyMap<string, Unit>;
  readonly samplingPoints: ReadonlyMap<string, SamplingPoint>;
  readonly hoses: ReadonlyMap<string, Hose>;
  readonly couplings: ReadonlyMap<string, Coupling>;
  readonly offices: ReadonlyMap<string, Office>;
  readonly parts: ReadonlyMap<string, Part>;
  readonly limits: ReadonlyMap<string, Limit>;
  readonly treatments: ReadonlyMap<string, Treatment>;
  readonly tasks: ReadonlyMap<string, Task>;
  /** All that was known of a vehicle, in the order in which it became known. */
  readonly visits: ReadonlyMap<string, readonly Visit[]>;
}

function byId<Item extends { readonly id: string }>(items: readonly Item[]): ReadonlyMap<string, Item> {
  return new Map(items.map((item) => [item.id, item]));
}

function byLogField(instruments: readonly Instrument[]): ReadonlyMap<string, Instrument> {
  return new Map(
    instruments.flatMap((each): [string, Instrument][] =>
      each.logField === undefined ? [] : [[each.logField, each]],
    ),
  );
}

function visitsByVehicle(visits: readonly Visit[]): ReadonlyMap<string, readonly Visit[]> {
  const grouped = new Map<string, Visit[]>();
  for (const visit of visits) {
    const known = grouped.get(visit.vehicle) ?? [];
    known.push(visit);
    grouped.set(visit.vehicle, known);
  }
  for (const known of grouped.values()) known.sort((a, b) => a.knownSinceDay - b.knownSinceDay);
  return grouped;
}

export function indexOutpost(outpost: Outpost): OutpostIndex {
  return {
    outpost,
    places: byId(outpost.places),
    grades: byId(outpost.grades),
    gradesByLetter: new Map(outpost.grades.map((grade) => [grade.letter, grade])),
    biocides: byId(outpost.biocides),
    stores: byId(outpost.stores),
    ports: byId(outpost.ports),
    instruments: byId(outpost.instruments),
    instrumentsByLogField: byLogField(outpost.instruments),
    units: byId(outpost.units),
    samplingPoints: byId(outpost.samplingPoints),
    hoses: byId(outpost.hoses),
    couplings: byId(outpost.couplings),
    offices: new Map(outpost.people.map((each) => [each.office, each])),
    parts: byId(outpost.parts),
    limits: byId(outpost.limits),
    treatments: byId(outpost.treatments),
    tasks: byId(outpost.taskMinutes),
    visits: visitsByVehicle(outpost.visits),
  };
}
