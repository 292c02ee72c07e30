// Stores: the list, and one store with its history and the answer to "may I use this water?".
import { notFreeBecause, type Position, type StorePosition } from '../account/index.ts';
import { type AnyEntry, entryOf } from '../book/index.ts';
import { formatShortStamp } from '../ground/units/index.ts';
import {
  entryInWords,
  type StoreEvent,
  type StoreSheet,
  type StoresSheet,
  storeAnswer,
} from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { type Desk, type Moment, positionAt, type Sight } from './desk.ts';
import { findName } from './log/context.ts';
import { headOf, storeLine, wordOf } from './today.ts';

export async function storeList(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<StoresSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  return yes({
    head: headOf(desk, sight, position),
    stores: position.stores.map((store) => storeLine(position, store)),
  });
}

/** Entries that are shown of a store's history, the youngest ones. */
const MOST_EVENTS = 30;

export async function storeShow(
  desk: Desk,
  typed: string,
  sight: Sight,
  moment: Moment,
): Promise<Answer<StoreSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const id = findName(
    'store',
    typed,
    position.stores.map((store) => store.facts.id),
  );
  if (!id.ok) return id;
  const store = position.stores.find((one) => one.facts.id === id.value) as StorePosition;
  return yes({
    head: headOf(desk, sight, position),
    store: storeLine(position, store),
    answer: answerOf(position, store),
    facts: factsOf(position, store),
    gradeHistory: store.gradeHistory,
    biocides: store.biocides,
    history: await historyOf(desk, position, id.value),
    findings: position.findings
      .filter((finding) => concerns(finding, id.value))
      .map((finding) => wordOf(position, finding)),
  });
}

function concerns(
  finding: { where: { store?: string }; data: Readonly<Record<string, unknown>> },
  store: string,
): boolean {
  const named = finding.data['stores'];
  return finding.where.store === store || (Array.isArray(named) && named.includes(store));
}

function answerOf(position: Position, store: StorePosition): string {
  const hold = store.hold ?? store.conditional;
  return storeAnswer({
    why: notFreeBecause(position, store),
    grade: store.grade,
    release: store.release,
    hold:
      hold === null
        ? null
        : { hold: hold.hold, since: formatShortStamp(hold.sinceMs, position.dayRule), reason: hold.reason },
  });
}

function factsOf(position: Position, store: StorePosition): StoreSheet['facts'] {
  const litres = (mg: number) => `${Math.round((mg / position.mgPerL) * 10) / 10} L`;
  const { facts } = store;
  return [
    { name: 'capacity', text: litres(facts.capacityMg) },
    ...(facts.fillMg === null ? [] : [{ name: 'filled to', text: litres(facts.fillMg) }]),
    { name: 'usable remainder', text: litres(facts.remainderMg) },
    { name: 'place', text: facts.place },
    ...(store.port === null ? [] : [{ name: 'on port', text: store.port }]),
    ...(facts.visit === null ? [] : [{ name: 'leaves with', text: facts.visit }]),
    { name: 'released on', text: store.release },
    { name: 'how surely', text: store.standing },
    ...(store.readAtMs === null
      ? []
      : [
          {
            name: 'last reading',
            text: `${store.howKnown}, ${formatShortStamp(store.readAtMs, position.dayRule)}`,
          },
        ]),
  ];
}

async function historyOf(desk: Desk, position: Position, store: string): Promise<StoreEvent[]> {
  const events: AnyEntry[] = [];
  for await (const rows of desk.port.scan({ order: 'total' })) {
    for (const row of rows) {
      // The id stands in quotes in the text of every entry that names the store.
      if (row.happenedAtMs > position.atMs || !row.text.includes(`"${store}"`) || row.kind === 'outpost')
        continue;
      events.push(entryOf(row));
      if (events.length > MOST_EVENTS) events.shift();
    }
  }
  return events.map((entry) => ({
    ref: `${entry.site} ${entry.number}`,
    id: entry.id,
    stamp: formatShortStamp(entry.happenedAtMs, position.dayRule),
    kind: entry.kind,
    text: entryInWords(entry, {
      dayRule: position.dayRule,
      mgPerL: position.mgPerL,
      instruments: position.index.instruments,
    }),
  }));
}
