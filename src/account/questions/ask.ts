// Which questions are asked about which kind of entry: before it is folded, against what is believed until then.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { isTwin, pushedFacts } from '../duplicates.ts';
import type { Fold } from '../fold.ts';
import { askHeld, askResult, askSample } from './bottles.ts';
import { askContent, askFirstTold, askRest } from './contents.ts';
import { askCounted, countedIn } from './counted.ts';
import { askDose, askDraw } from './draws.ts';
import { askRawGauging } from './gauging.ts';
import { askGrade, gradeOfLabel, gradeToCome } from './grades.ts';
import { askFlowTimes, learnFlow } from './hoses.ts';
import { askHour } from './hours.ts';
import { askLabels } from './labels.ts';
import { askMoved, askPush } from './moved.ts';
import { askArrival, askPeopleInLine, rememberPeople } from './people.ts';
import { askHookup, askTakenOff } from './ports.ts';
import { askRoom } from './room.ts';
import { askSameWater } from './same-water.ts';
import { askSpots } from './spots.ts';
import { askSwapCounters } from './swap-counters.ts';
import { askEntered, askLineTime } from './times.ts';
import { askLeakCheck, askVisitDay } from './visits.ts';

/** Asks about an entry. It counts as it stands, whatever is asked. */
export function askAbout(fold: Fold, entry: AnyEntry): void {
  if (entry.kind === 'opening') {
    for (const told of entry.body.stores) {
      const facts = fold.stores.get(told.store)?.facts;
      if (facts !== undefined) askFirstTold(fold, entry, { ...facts, ...told });
      askGrade(fold, entry, {
        store: told.store,
        said: told.grade,
        believed: fold.index.stores.get(told.store)?.holds,
      });
    }
    return;
  }
  if (fold.openingMs === null || entry.happenedAtMs < fold.openingMs) return;
  askEntered(fold, entry);
  askHour(fold, entry);
  askByKind(fold, entry);
}

/** After an entry was folded: what it changed among the people aboard. */
export function askedAbout(fold: Fold): void {
  rememberPeople(fold);
}

function askByKind(fold: Fold, entry: AnyEntry): void {
  switch (entry.kind) {
    case 'movement':
    case 'run-pause':
    case 'run-finish':
      return askFlow(fold, entry);
    case 'push':
      if (isTwin(fold, entry, pushedFacts(entry.body))) return;
      askLabels(fold, entry);
      askFlowTimes(fold, entry);
      return askPush(fold, entry);
    case 'day-line':
      return askLine(fold, entry);
    case 'meter':
      return askSwapCounters(fold, entry, entry.body.readings);
    case 'declared-empty':
      if (entry.body.bookMg !== undefined && entry.body.residual !== undefined)
        askContent(fold, entry, {
          store: entry.body.store,
          amount: entry.body.residual,
          bookBeforeMg: entry.body.bookMg,
        });
      askTakenOff(fold, entry);
      askRest(fold, entry);
      return askSwapCounters(fold, entry, entry.body.counters, entry.body.store);
    case 'declared-full':
      askTakenOff(fold, entry);
      // Of all that are full any other would fit as well: which one it was, its port says.
      return askContent(fold, entry, entry.body, false);
    case 'hookup':
      return askHookup(fold, entry);
    case 'weigh':
    case 'gauge': {
      const { store, amount } = entry.body;
      return amount === null ? undefined : askContent(fold, entry, { store, amount });
    }
    case 'pvt':
      if (askRawGauging(fold, entry)) askContent(fold, entry, entry.body);
      return;
    case 'source-change':
      fold.habits.sourceTold.set(entry.body.counter, entry.happenedAtMs);
      return askDraw(fold, entry);
    case 'dose':
      return askDose(fold, entry);
    default:
      return askRecord(fold, entry);
  }
}

function askFlow(fold: Fold, entry: Entry<'movement'> | Entry<'run-pause'> | Entry<'run-finish'>): void {
  const { to, amount, receiverWas, receiverWasEmptied } = entry.body;
  if (
    entry.kind === 'movement' &&
    (fold.counterOfUnit.has(entry.body.from) || isTwin(fold, entry, movedFacts(entry)))
  )
    return;
  askFlowTimes(fold, entry);
  const state = to === undefined ? undefined : fold.stores.get(to);
  if (askMoved(fold, entry)) {
    learnFlow(fold, entry);
    if (state !== undefined) askRoom(fold, entry, state, { massMg: amount.massMg, receiverWasEmptied });
  }
  if (state === undefined) return;
  askGrade(fold, entry, { store: state.facts.id, said: receiverWas, believed: state.grade });
  const { movedInMg } = fold.habits;
  movedInMg.set(state.facts.id, (movedInMg.get(state.facts.id) ?? 0) + amount.massMg);
}

function movedFacts({ body }: Entry<'movement'>) {
  const { from, to, amount, startAtMs = null, person = null } = body;
  return { from, to, massMg: amount.massMg, startAtMs, person };
}

function askLine(fold: Fold, entry: Entry<'day-line'>): void {
  askLineTime(fold, entry);
  const counted = countedIn(fold, entry);
  askCounted(fold, entry, counted, askSameWater(fold, entry, counted));
  askSpots(fold, entry);
  askPeopleInLine(fold, entry);
  fold.habits.movedInMg.clear();
}

/** Entries about what water is fit for, and about who and what comes and goes. */
function askRecord(fold: Fold, entry: AnyEntry): void {
  switch (entry.kind) {
    case 'sample':
      return askSample(fold, entry);
    case 'result':
      return askResult(fold, entry);
    case 'release':
      return askHeld(fold, entry, entry.body.stores, entry.body.hold);
    case 'downgrade':
      askGrade(fold, entry, {
        store: entry.body.store,
        said: entry.body.fromGrade,
        believed: fold.stores.get(entry.body.store)?.grade,
      });
      return entry.body.hold === undefined
        ? undefined
        : askHeld(fold, entry, [entry.body.store], entry.body.hold);
    case 'relabel':
      return askGrade(fold, entry, {
        store: entry.body.store,
        said: gradeOfLabel(fold, entry.body.fromLabel),
        believed: fold.stores.get(entry.body.store)?.grade,
      });
    case 'check':
      return askLeakCheck(fold, entry);
    case 'cabin-window':
      fold.habits.cabinWindow = { duringKPa: entry.body.duringKPaAbs, untilMs: entry.body.untilMs };
      return;
    case 'roster':
      return askArrival(fold, entry, entry.body.change === 'arrive' ? entry.body.people : -entry.body.people);
    default:
      return askVisit(fold, entry);
  }
}

function askVisit(fold: Fold, entry: AnyEntry): void {
  if (entry.kind === 'store-added') askBrought(fold, entry, entry.body);
  if (entry.kind === 'visit-depart') {
    const { visit, peopleDepart } = entry.body;
    askVisitDay(fold, entry, visit, fold.visits.get(visit)?.departDay);
    askArrival(fold, entry, -peopleDepart);
  }
  if (entry.kind !== 'visit-berth') return;
  const { visit, peopleArrive, stores } = entry.body;
  askVisitDay(fold, entry, visit, fold.visits.get(visit)?.berthDay);
  askArrival(fold, entry, peopleArrive);
  for (const store of stores) askBrought(fold, entry, store);
}

function askBrought(fold: Fold, entry: AnyEntry, told: Entry<'store-added'>['body']): void {
  const written = fold.index.stores.get(told.store);
  const fillL = written?.fillL ?? told.fillL;
  askFirstTold(fold, entry, {
    ...{ store: told.store, amount: told.amount, loadedMassMg: told.loadedMassMg },
    capacityMg: (written?.capacityL ?? told.capacityL) * fold.mgPerL,
    fillMg: fillL === undefined ? null : fillL * fold.mgPerL,
  });
  askGrade(fold, entry, { store: told.store, said: told.grade, believed: gradeToCome(fold, told.store) });
}
