// Follows the beds of one purifier through a pass: what goes through them, what is read of their water, and changes.
import type { AnyEntry, Entry } from '../../book/index.ts';
import { msPerDay } from '../../ground/units/index.ts';
import type { FlowEnd, Unit } from '../../outpost/index.ts';
import { CrewCount } from '../crew-days.ts';
import type { Flow, Fold, Watcher } from '../fold.ts';
import type { FedInterval } from './bed-story.ts';

export type Purifier = Extract<Unit, { readonly kind: 'purifier' }>;

/** Where the counters stood: litres fed since the book began, up to an instant. */
export interface FedPoint {
  readonly atMs: number;
  readonly fedL: number;
}

/** A service entry that says of a bed that it is another one now. */
export interface BedChange {
  readonly atMs: number;
  readonly entry: string;
  readonly position: string;
  readonly toldL: number | null;
}

/** A figure of a result, and where its water was drawn. */
export interface HeardResult {
  readonly atMs: number;
  readonly entry: string;
  readonly sample: string;
  readonly place: string;
  readonly parameter: string;
  readonly value: number;
  readonly unit: string;
  readonly below: boolean;
}

const NO_LISTENER = { onArrived: () => {}, onMixed: () => {} };
const OTHER_BED = /\b(changed|replaced|swapped|new bed)\b/i;

export class BedWatch {
  readonly #purifier: Purifier;
  readonly #crew = new CrewCount(NO_LISTENER);
  readonly points: FedPoint[] = [];
  readonly fed: FedInterval[] = [];
  readonly changes: BedChange[] = [];
  readonly results: HeardResult[] = [];
  readonly cabin: { readonly atMs: number; readonly temperatureC: number }[] = [];
  /** Litres that the opening tells of a bed, by the name of its item in small letters. */
  readonly toldAtOpening = new Map<string, { readonly litres: number; readonly entry: string }>();
  openingMs: number | null = null;
  /** Sum of the squares of the doubts that were new in each flow. */
  varianceMg = 0;
  #fedMg = 0;
  #closedMg = 0;
  #lineMs: number | null = null;
  readonly #takenMs = new Map<string, number>();

  constructor(purifier: Purifier) {
    this.#purifier = purifier;
  }

  readonly watcher: Watcher = {
    onEntry: (fold, entry) => {
      this.#crew.advance(fold, entry.happenedAtMs);
      this.#crew.hear(fold, entry);
      this.#quality(entry);
      if (entry.kind === 'service') this.#service(entry);
      if (entry.kind === 'opening') this.#opening(entry);
    },
    onFlow: (fold, _entry, what) => {
      if (this.#isFeed(fold, what)) {
        this.#fedMg += what.massMg;
        this.varianceMg += what.uMg * what.uMg;
      }
      return undefined;
    },
    onApplied: (fold, entry) => {
      if (entry.kind === 'day-line') this.#line(fold, entry);
    },
  };

  /** Water that the counters say went from where the purifier takes it, to wherever. */
  #isFeed(fold: Fold, { from, plumbing }: Flow): boolean {
    if (plumbing !== true) return false;
    return this.#purifier.takes.some((end) => isAt(fold, end, from));
  }

  #opening({ body, id: entry }: Entry<'opening'>): void {
    this.openingMs = body.asOfMs;
    this.#lineMs = body.asOfMs;
    for (const { item, value, unit } of body.service)
      if (unit === 'L') this.toldAtOpening.set(item.toLowerCase(), { litres: value, entry });
    this.points.push({ atMs: body.asOfMs, fedL: 0 });
  }

  #service({ body, happenedAtMs: atMs, id: entry }: Entry<'service'>): void {
    const position = positionOf(this.#purifier, body.item);
    if (position === null || !OTHER_BED.test(body.what)) return;
    const told = body.readings.find(({ unit }) => unit === 'L');
    this.changes.push({ atMs, entry, position, toldL: told?.value ?? null });
  }

  #quality(entry: AnyEntry): void {
    if (entry.kind === 'sample') this.#takenMs.set(entry.body.sample, entry.happenedAtMs);
    if (entry.kind !== 'result') return;
    const { body, id, happenedAtMs } = entry;
    const atMs = this.#takenMs.get(body.sample) ?? happenedAtMs;
    const place = body.point ?? body.store ?? '';
    for (const { parameter, value, unit, below } of body.values)
      this.results.push({
        atMs,
        entry: id,
        sample: body.sample,
        place,
        parameter,
        value,
        unit,
        below: below === true,
      });
  }

  /** Closes the interval, unless the purifier's counter was not read: then it stays open. */
  #line(fold: Fold, { body, happenedAtMs: atMs, id: entry }: Entry<'day-line'>): void {
    for (const { instrument, value } of body.readings)
      if (value !== null && fold.index.instruments.get(instrument)?.measures === 'temperature')
        this.cabin.push({ atMs, temperatureC: value });
    const counter = fold.counterOfUnit.get(this.#purifier.id)?.id;
    const isRead = body.readings.some(({ instrument, value }) => instrument === counter && value !== null);
    const days = this.#lineMs === null ? 0 : Math.round((atMs - this.#lineMs) / msPerDay);
    if (!isRead || days < 1) return;
    this.points.push({ atMs, fedL: this.#fedMg / fold.mgPerL });
    const { personDays } = this.#crew.take(atMs, { people: body.peopleAboard, days });
    const massMg = this.#fedMg - this.#closedMg;
    this.fed.push({ day: body.day, endMs: atMs, days, peopleAboard: personDays / days, massMg, entry });
    this.#closedMg = this.#fedMg;
    this.#lineMs = atMs;
  }
}

function isAt(fold: Fold, end: FlowEnd, from: Flow['from']): boolean {
  if ('pool' in end) return from.account === end.pool;
  if (from.store === null) return false;
  const { id } = from.store.facts;
  return 'store' in end ? end.store === id : fold.portOf(id) === end.port;
}

/** `lead bed`, `lead` or `purifier lead bed`, in any letters; null for an item that is no bed of this purifier. */
export function positionOf({ id, beds }: Purifier, item: string): string | null {
  const said = item.toLowerCase();
  const names = (position: string): string[] => [
    position,
    `${position} bed`,
    `${id} ${position}`,
    `${id} ${position} bed`,
  ];
  return beds?.positions.find((position) => names(position.toLowerCase()).includes(said)) ?? null;
}
