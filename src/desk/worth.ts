// What a reading would be worth: every store that can be read, the best bargain of crew minutes first.
import type { Position, ReadingAhead } from '../account/index.ts';
import { type CoverAfter, type CoverInDoubt, coverAfter, coversInDoubt } from '../forecast/index.ts';
import type { Because, BeforeAndAfter, ReadingWorth, SheetFigure } from '../papers/index.ts';
import { coveredGrades } from './covered-grades.ts';
import { volumeFigure } from './figures.ts';

/** Minutes below this count as this many: a look costs something, too. */
const LEAST_MINUTES = 1;

/** What a reading of each store that can be read would be worth: gain of cover by the minute, then of the content. */
export function bestReadings(position: Position): readonly ReadingWorth[] {
  const covers = coversOf(position);
  return position.stores
    .map((store) => worthOf(position, store.facts.id, covers))
    .filter((worth) => worth !== null)
    .sort(byBargain);
}

/** Covers on which readings may bear. */
export function coversOf(position: Position): readonly CoverInDoubt[] {
  return coversInDoubt(position, coveredGrades(position));
}

/** What a reading of one store would be worth; null where it cannot be read at any time. */
export function worthOf(
  position: Position,
  id: string,
  covers: readonly CoverInDoubt[] = coversOf(position),
): ReadingWorth | null {
  const ahead = position.afterReading(id);
  const store = position.stores.find(({ facts }) => facts.id === id);
  if (ahead === null || store === undefined) return null;
  const because: Because = {
    // What the content rests on in all stands with the content itself.
    entries: store.because.slice(0, 1),
    method: 'worth-of-a-reading',
    inputs: [
      { name: 'store', value: id, unit: '' },
      { name: 'instrument', value: ahead.instrument, unit: '' },
      { name: '± of the reading', value: (2 * ahead.readingUMg) / position.mgPerL, unit: 'L' },
    ],
  };
  const stockBoth = (massMg: number, u: { before: number; after: number }): BeforeAndAfter => ({
    before: volumeFigure(position, { massMg, uMg: u.before }, because),
    after: volumeFigure(position, { massMg, uMg: u.after }, because),
  });
  const cover = ownCover(covers, id);
  return {
    store: id,
    way: ahead.way,
    instrument: ahead.instrument,
    task: taskOf(position, id),
    readingU95L: (2 * ahead.readingUMg) / position.mgPerL,
    content: stockBoth(store.massMg, { before: store.uMg, after: ahead.uOf([id]) }),
    cover: cover === undefined ? null : coverWorth(position, { cover, ahead, because, stockBoth }),
  };
}

/** The cover that counts this store: of the free water where it is free, else the one to the floor of the reserve. */
function ownCover(covers: readonly CoverInDoubt[], store: string): CoverInDoubt | undefined {
  const counting = covers.filter(({ stores }) => stores.includes(store));
  return counting.find(({ reach }) => reach === 'free') ?? counting[0];
}

function coverWorth(
  position: Position,
  of: {
    readonly cover: CoverInDoubt;
    readonly ahead: ReadingAhead;
    readonly because: Because;
    readonly stockBoth: (massMg: number, u: CoverAfter['stockUMg']) => BeforeAndAfter;
  },
): NonNullable<ReadingWorth['cover']> {
  const { cover, because } = of;
  const { grade, reach, stockMg, stockUMg, halfWidthDays } = coverAfter(position, of.ahead, cover);
  const { before, after } = halfWidthDays;
  const { middleDays: middle } = cover;
  const days = (value: number, u95: number): SheetFigure => ({ value, u95, unit: 'd', because });
  return {
    grade,
    reach,
    stock: of.stockBoth(stockMg, stockUMg),
    days:
      middle === null || before === null || after === null
        ? null
        : { before: days(middle, before), after: days(middle, after) },
  };
}

function taskOf(position: Position, store: string): ReadingWorth['task'] {
  const { index } = position;
  const task = index.tasks.get(index.stores.get(store)?.readingTask ?? '');
  return task === undefined ? null : { id: task.id, minutes: task.minutes, people: task.people };
}

/** Equal ones stay in the order of the outpost file; those without minutes come last. */
function byBargain(a: ReadingWorth, b: ReadingWorth): number {
  const [minutesA, minutesB] = [minutesOf(a), minutesOf(b)];
  if (minutesA === null || minutesB === null) {
    if (minutesA !== minutesB) return minutesA === null ? 1 : -1;
    return gainOfCover(b) - gainOfCover(a) || gainOfContent(b) - gainOfContent(a);
  }
  return (
    gainOfCover(b) / minutesB - gainOfCover(a) / minutesA ||
    gainOfContent(b) / minutesB - gainOfContent(a) / minutesA
  );
}

/** Minutes of all who are at it. */
function minutesOf({ task }: ReadingWorth): number | null {
  return task === null ? null : Math.max(LEAST_MINUTES, task.minutes * task.people);
}

function gainOfCover({ cover }: ReadingWorth): number {
  return cover === null || cover.days === null ? 0 : gainOf(cover.days);
}

function gainOfContent({ content }: ReadingWorth): number {
  return gainOf(content);
}

function gainOf({ before, after }: BeforeAndAfter): number {
  return Math.max(0, (before.u95 ?? 0) - (after.u95 ?? 0));
}
