// Stores: the list, and one store with its history and the answer to "may I use this water?".
import { notFreeBecause, type Position, type StorePosition, storageFindings } from '../account/index.ts';
import { formatRange, formatShortStamp } from '../ground/units/index.ts';
import type { Grade } from '../outpost/index.ts';
import { type StoreSheet, type StoresSheet, type StoreUse, storeAnswer } from '../papers/index.ts';
import { type Answer, yes } from './answer.ts';
import { biocideSheet } from './biocide/biocide-sheet.ts';
import { lifeSheet } from './biocide/life-sheet.ts';
import { standingStores } from './biocide/standing-stores.ts';
import { type Desk, type Moment, type Sight, viewOf } from './desk.ts';
import { findName } from './log/context.ts';
import { openFindings, pastFindings } from './open-findings.ts';
import { seenAt } from './quality/seen.ts';
import { storeQuality } from './quality/store-quality.ts';
import { historyOf } from './store-history.ts';
import { familyNodes, gaugingSheet, refsOfResults, refsOfStory } from './store-story.ts';
import { headOf, storeLine, wordOf } from './today.ts';
import { worthOf } from './worth.ts';

export async function storeList(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<StoresSheet>> {
  const seen = await seenAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const { position } = seen.value;
  return yes({
    head: headOf(desk, sight, position),
    stores: position.stores.map((store) => storeLine(position, store)),
    quality: Object.fromEntries(
      position.stores.map((store) => [store.facts.id, storeQuality(seen.value, store)]),
    ),
  });
}

/** Entries that are shown of a store's history where nobody says how many. */
const USUAL_HISTORY = 10;

export interface StoreQuery {
  readonly store: string;
  /** At most so many entries, the youngest ones. */
  readonly history?: number;
}

export async function storeShow(
  desk: Desk,
  query: StoreQuery,
  sight: Sight,
  moment: Moment,
): Promise<Answer<StoreSheet>> {
  const seen = await seenAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const { position } = seen.value;
  const id = findName(
    'store',
    query.store,
    position.stores.map((store) => store.facts.id),
  );
  if (!id.ok) return id;
  const store = position.stores.find((one) => one.facts.id === id.value) as StorePosition;
  const view = viewOf(sight);
  const told = await desk.story(id.value, view);
  if (!told.ok) return told;
  const story = told.value;
  const refOf = await refsOfStory(desk.port, story);
  const { storage } = story;
  const states = standingStores(position, storage);
  const refOfResult = await refsOfResults(desk.port, states.get(id.value)?.results ?? []);
  const standing = storageFindings(storage, [...states.values()], position);
  const history = await historyOf(desk, position, {
    store: id.value,
    view,
    most: query.history ?? USUAL_HISTORY,
  });
  return yes({
    head: headOf(desk, sight, position),
    store: storeLine(position, store),
    answer: answerOf(position, store),
    quality: storeQuality(seen.value, store),
    facts: factsOf(position, store),
    gradeHistory: store.gradeHistory,
    biocides: store.biocides,
    biocide: biocideSheet(position, store, {
      state: states.get(id.value) ?? null,
      storage,
      refOf: refOfResult,
    }),
    life: lifeSheet(position, store, storage),
    worth: worthOf(position, id.value),
    history: history.events,
    olderEvents: history.older,
    family: familyNodes(position, store, { parts: story.family, refOf }),
    gauging: gaugingSheet(position, store, { story, refOf }),
    // As Today has them, in its order; then what is past.
    findings: [...openFindings(position), ...standing, ...pastFindings(position)]
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
  const grade = store.grade === null ? undefined : position.index.grades.get(store.grade);
  return storeAnswer({
    why: notFreeBecause(position, store),
    grade: store.grade,
    release: store.release,
    usableFor: usesOf(grade),
    enters: grade?.mayEnterUnits ?? [],
    content: contentOf(store),
    hold:
      hold === null
        ? null
        : { hold: hold.hold, since: formatShortStamp(hold.sinceMs, position.dayRule), reason: hold.reason },
  });
}

/** A file may leave the uses of its best grade unsaid: that is what people drink. */
function usesOf(grade: Grade | undefined): readonly string[] {
  if (grade === undefined) return [];
  return grade.usableFor.length === 0 && grade.rank === 1 ? ['drink'] : grade.usableFor;
}

function contentOf({ massMg, facts }: StorePosition): StoreUse['content'] {
  if (massMg < 0) return 'below nothing';
  return massMg <= facts.remainderMg ? 'nothing usable' : 'some';
}

/** Said where empty or full cuts the band off: then ± alone would say more than there is. */
function bandOf(position: Position, store: StorePosition): StoreSheet['facts'] {
  const isCut = store.lowMg > store.massMg - 2 * store.uMg || store.highMg < store.massMg + 2 * store.uMg;
  // A best value beyond empty or full is said as a finding, and has no band around it.
  if (!isCut || store.massMg < store.lowMg || store.massMg > store.highMg) return [];
  const litres = (mg: number) => mg / position.mgPerL;
  const middle = litres(store.massMg);
  const range = { middle, low: litres(store.lowMg), high: litres(store.highMg), unit: 'L' };
  return [{ name: 'band', text: formatRange(range, { style: 'screen' }) }];
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
    ...bandOf(position, store),
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
