// Which questions are asked about which kind of entry: before it is folded, against what is believed until then.
import type { AnyEntry, Entry, Kind } from '../../book/index.ts';
import type { Fold } from '../fold.ts';
import { askHeld, askResult, askSample } from './bottles.ts';
import { askContent, askRest } from './contents.ts';
import { askCounted, countedIn } from './counted.ts';
import { askDose, askDraw } from './draws.ts';
import { askOpening, askStoreAdded } from './first-told.ts';
import { askFlow, askPushed } from './flows.ts';
import { askRawGauging } from './gauging.ts';
import { askGrade, gradeOfLabel } from './grades.ts';
import { askHour } from './hours.ts';
import { askArrival, askPeopleInLine, rememberPeople } from './people.ts';
import { askHookup, askTakenOff } from './ports.ts';
import { askSameWater } from './same-water.ts';
import { askSpots } from './spots.ts';
import { askSwapCounters } from './swap-counters.ts';
import { askTaste } from './tastes.ts';
import { askEntered, askLineTime } from './times.ts';
import { askBerth, askDeparture, askLeakCheck } from './visits.ts';

type Ask<K extends Kind> = (fold: Fold, entry: Entry<K>) => void;

/** Kinds without a line here are asked about their times alone. */
const asks: { readonly [K in Kind]?: Ask<K> } = {
  movement: askFlow,
  'run-pause': askFlow,
  'run-finish': askFlow,
  push: askPushed,
  'day-line': askLine,
  meter: (fold, entry) => askSwapCounters(fold, entry, entry.body.readings),
  'declared-empty': askEmptied,
  'declared-full': askFilled,
  hookup: askHookup,
  weigh: askWeighed,
  gauge: askWeighed,
  pvt: askGauged,
  'source-change': askDraw,
  dose: askDose,
  sample: askSample,
  result: askResult,
  release: (fold, entry) => askHeld(fold, entry, entry.body.stores, entry.body.hold),
  downgrade: askDowngrade,
  relabel: askRelabel,
  check: askLeakCheck,
  taste: askTaste,
  'cabin-window': rememberWindow,
  roster: (fold, entry) =>
    askArrival(fold, entry, entry.body.change === 'arrive' ? entry.body.people : -entry.body.people),
  'store-added': (fold, entry) => askStoreAdded(fold, entry, entry.body),
  'visit-berth': askBerth,
  'visit-depart': askDeparture,
};

/** Words about other entries and about the book: they move no water, and may be said at any time. */
const notAsked: ReadonlySet<Kind> = new Set<Kind>([
  'outpost',
  'opening',
  'undo',
  'correction',
  'duplicate-decision',
  'day-close',
  'note',
  'refused',
  'anomaly',
  'explanation',
]);

/** Asks about an entry. It counts as it stands, whatever is asked. */
export function askAbout(fold: Fold, entry: AnyEntry): void {
  if (entry.kind === 'opening') askOpening(fold, entry);
  if (fold.openingMs === null || notAsked.has(entry.kind) || entry.happenedAtMs < fold.openingMs) return;
  askEntered(fold, entry);
  askHour(fold, entry);
  askKind(fold, entry);
}

function askKind<K extends Kind>(fold: Fold, entry: Entry<K>): void {
  asks[entry.kind]?.(fold, entry);
}

/** After an entry was folded: what it changed among the people aboard. */
export function askedAbout(fold: Fold): void {
  rememberPeople(fold);
}

function askLine(fold: Fold, entry: Entry<'day-line'>): void {
  askLineTime(fold, entry);
  const counted = countedIn(fold, entry);
  askCounted(fold, entry, counted, askSameWater(fold, entry, counted));
  askSpots(fold, entry);
  askPeopleInLine(fold, entry);
  fold.habits.movedInMg.clear();
}

function askEmptied(fold: Fold, entry: Entry<'declared-empty'>): void {
  const { store, bookMg, residual, counters } = entry.body;
  if (bookMg !== undefined && residual !== undefined)
    askContent(fold, entry, { store, amount: residual, bookBeforeMg: bookMg });
  askTakenOff(fold, entry);
  askRest(fold, entry);
  askSwapCounters(fold, entry, counters, store);
}

function askFilled(fold: Fold, entry: Entry<'declared-full'>): void {
  askTakenOff(fold, entry);
  // Of all that are full any other would fit as well: which one it was, its port says.
  askContent(fold, entry, entry.body, false);
}

function askWeighed(fold: Fold, entry: Entry<'weigh'> | Entry<'gauge'>): void {
  const { store, amount } = entry.body;
  if (amount !== null) askContent(fold, entry, { store, amount });
}

function askGauged(fold: Fold, entry: Entry<'pvt'>): void {
  if (askRawGauging(fold, entry)) askContent(fold, entry, entry.body);
}

function askDowngrade(fold: Fold, entry: Entry<'downgrade'>): void {
  const { store, fromGrade, hold } = entry.body;
  askGrade(fold, entry, { store, said: fromGrade, believed: fold.stores.get(store)?.grade });
  if (hold !== undefined) askHeld(fold, entry, [store], hold);
}

function askRelabel(fold: Fold, entry: Entry<'relabel'>): void {
  const { store, fromLabel } = entry.body;
  askGrade(fold, entry, {
    store,
    said: gradeOfLabel(fold, fromLabel),
    believed: fold.stores.get(store)?.grade,
  });
}

function rememberWindow(fold: Fold, entry: Entry<'cabin-window'>): void {
  fold.habits.cabinWindow = { duringKPa: entry.body.duringKPaAbs, untilMs: entry.body.untilMs };
}
