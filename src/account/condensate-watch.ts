// Follows the water of the cabin air through a pass: people, humidity, leaks and condensers, from line to line.
import type { AnyEntry, Entry } from '../book/index.ts';
import { condensateShortfall, expectedCondensate } from '../ground/physics/index.ts';
import { msPerDay } from '../ground/units/index.ts';
import type { Outpost } from '../outpost/index.ts';
import { airReading } from './air-reading.ts';
import type {
  Condensate,
  CondensateDay,
  CondensatePartName,
  FoundCondensate,
  NoExpectation,
} from './condensate-day.ts';
import { type CondensateNorms, CondensateRate, type CrewDays } from './condensate-rate.ts';
import { CrewCount } from './crew-days.ts';
import { type Flow, type Fold, MG_PER_KG, type Watcher } from './fold.ts';
import { LetIn } from './let-in.ts';
import { NORM_RELATIVE_U } from './norms.ts';
import { CABIN_AIR, takesFrom } from './people-and-air.ts';

/** A line without a reading of the humidity: so much may have changed since the last one, one standard deviation. Ours, no source. */
const UNREAD_PERCENT_U = 3;
/** Vapour of one point of humidity in a cubic metre at 22 °C, kg. @source ground/physics, moist air */
const KG_PER_PERCENT_M3 = 0.0001945;

/** What the outpost file has to tell, or what is missing of it. */
export function condensateNorms(outpost: Outpost): CondensateNorms | NoExpectation {
  const { norms, instruments } = outpost;
  const { vapourCollectedLPerPersonDay: litres, vapourBetweenDaysRelative: betweenDays, restDay } = norms;
  if (litres === undefined || litres <= 0) return 'norm of vapour';
  if (!instruments.some((instrument) => takesFrom(instrument, CABIN_AIR))) return 'counter of a condenser';
  const kgPerL = outpost.outpost.waterDensityKgPerM3 / 1000;
  return {
    rateKg: litres * kgPerL,
    rateU: litres * kgPerL * NORM_RELATIVE_U,
    betweenDays: betweenDays ?? UNTOLD_BETWEEN_DAYS,
    restLessKg: (restDay?.vapourLessL ?? 0) * kgPerL,
    restLessU: (restDay?.vapourLessDoubtL ?? 0) * kgPerL,
  };
}

/** How much days differ where the file does not say. Ours, no source. */
const UNTOLD_BETWEEN_DAYS = 0.05;

const CREW_CHANGES: ReadonlySet<AnyEntry['kind']> = new Set(['roster', 'visit-berth', 'visit-depart']);

interface Lesson {
  readonly enteredAtMs: number;
  readonly crew: CrewDays;
  readonly kg: number;
  readonly u: number;
}

/** The air at a line, by the last reading of it. */
interface Air {
  readonly kg: number;
  readonly u: number;
}

export class CondensateWatch {
  readonly #rate: CondensateRate;
  readonly #norms: CondensateNorms;
  readonly #crew: CrewCount;
  readonly #letIn = new LetIn();
  readonly #days: CondensateDay[] = [];
  readonly #found: FoundCondensate[] = [];
  /** Lines that were entered later than the ones behind them teach only from then on. */
  #lessons: Lesson[] = [];
  #sinceMs: number | null = null;
  #lastDay: number | null = null;
  #air: Air | null = null;
  #collectedMg = 0;
  #collectedVariance = 0;
  #isSpoilt = false;
  /** Findings that there were before the present entry. */
  #findingsBefore = 0;

  constructor(norms: CondensateNorms) {
    this.#norms = norms;
    this.#rate = new CondensateRate(norms);
    this.#crew = new CrewCount({
      onArrived: () => this.#rate.greetNewcomers(),
      onMixed: (share) => this.#rate.changeCrew(share),
    });
  }

  get result(): Condensate {
    const mg = (kg: number): number => Math.round(kg * MG_PER_KG);
    const { kg, u } = this.#rate.rate;
    return {
      days: this.#days,
      found: this.#found,
      rate: { massMg: mg(kg), uMg: mg(u), normMg: mg(this.#norms.rateKg), normUMg: mg(this.#norms.rateU) },
      taughtBy: this.#rate.taught,
      spreadFactor: this.#rate.spreadFactor,
    };
  }

  readonly watcher: Watcher = {
    onEntry: (fold, entry) => {
      this.#findingsBefore = fold.findings.length;
      this.#crew.advance(fold, entry.happenedAtMs);
      // What those before have taught is not to be undone by who comes after them.
      if (CREW_CHANGES.has(entry.kind)) this.#learn(entry.happenedAtMs);
      this.#crew.hear(fold, entry);
      this.#letIn.hear(fold, entry);
    },
    onFlow: (_fold, entry, what) => this.#flow(entry, what),
    onApplied: (fold, entry) => {
      if (entry.kind === 'opening') this.#begin(entry.body.asOfMs, null);
      if (entry.kind === 'day-line') this.#line(fold, entry);
      else if (fellBack(fold, this.#findingsBefore)) this.#isSpoilt = true;
    },
  };

  #flow(entry: AnyEntry, { from, to, massMg, uMg, leftEarlier }: Flow): undefined {
    if (from.account !== CABIN_AIR || massMg === 0) return undefined;
    if (leftEarlier === true && to.store !== null) {
      const { id: store } = to.store.facts;
      this.#found.push({ store, massMg, uMg, atMs: entry.happenedAtMs, entry: entry.id });
      return undefined;
    }
    this.#collectedMg += massMg;
    this.#collectedVariance += uMg * uMg;
    return undefined;
  }

  #begin(atMs: number, day: number | null): void {
    this.#sinceMs = atMs;
    this.#lastDay = day;
    this.#collectedMg = 0;
    this.#collectedVariance = 0;
    this.#isSpoilt = false;
    this.#letIn.begin();
  }

  /** Closes the interval, unless a condenser was not read: then it stays open. */
  #line(fold: Fold, entry: Entry<'day-line'>): void {
    const { body, happenedAtMs: atMs } = entry;
    this.#isSpoilt ||= fellBack(fold, this.#findingsBefore);
    const read = new Set(
      body.readings.filter(({ value }) => value !== null).map(({ instrument }) => instrument),
    );
    const condensers = fold.index.outpost.instruments.filter((each) => takesFrom(each, CABIN_AIR));
    if (!condensers.every(({ id }) => read.has(id))) return;
    const sinceMs = this.#sinceMs;
    const days = sinceMs === null ? 0 : (atMs - sinceMs) / msPerDay;
    // A second line on one day closes nothing: what it counted belongs to the day after.
    if (sinceMs !== null && Math.round(days) < 1) return;
    const crew = this.#crewOf(fold, body, { atMs, days });
    const airBefore = this.#air;
    this.#air = this.#airAt(fold, entry, days);
    if (sinceMs !== null && !this.#isSpoilt) this.#close(fold, entry, { crew, airBefore });
    this.#begin(atMs, body.day);
  }

  #crewOf(
    fold: Fold,
    body: Entry<'day-line'>['body'],
    { atMs, days }: { readonly atMs: number; readonly days: number },
  ): CrewDays {
    const counted = this.#crew.take(atMs, { people: body.peopleAboard, days });
    const first = (this.#lastDay ?? body.day - Math.round(days)) + 1;
    return { days, ...counted, restDays: restDaysIn(fold.index.outpost, { first, last: body.day }) };
  }

  #airAt(fold: Fold, entry: Entry<'day-line'>, days: number): Air | null {
    const read = airReading(fold.index, entry.body.readings);
    if (read !== null) return { kg: read.massKg, u: read.uKg };
    const before = this.#air;
    if (before === null) return null;
    const volumeM3 = fold.index.outpost.outpost.cabinVolumeM3 ?? 0;
    const u = UNREAD_PERCENT_U * KG_PER_PERCENT_M3 * volumeM3;
    return { kg: before.kg, u: Math.sqrt(before.u * before.u + u * u * Math.min(1, days)) };
  }

  #close(
    fold: Fold,
    entry: Entry<'day-line'>,
    { crew, airBefore }: { readonly crew: CrewDays; readonly airBefore: Air | null },
  ): void {
    this.#learn(entry.enteredAtMs);
    this.#rate.walk(crew.days);
    const people = this.#rate.expect(crew);
    const peopleU = Math.sqrt(people.sharedU * people.sharedU + people.ownU * people.ownU);
    const others = [
      airPart(airBefore, this.#air, fold),
      ...this.#letIn.parts(fold, { sinceMs: this.#sinceMs ?? 0, entry }),
    ];
    const parts = [{ name: 'people' as const, kg: people.kg, u: peopleU }, ...others];
    const expected = expectedCondensate(parts);
    const collectedKg = this.#collectedMg / MG_PER_KG;
    const meterU = Math.sqrt(this.#collectedVariance) / MG_PER_KG;
    // Both sides are counted with the same counter: its calibration bears on the difference alone.
    const calibrationU = calibrationOf(fold) * Math.abs(expected.kg - collectedKg);
    const collected = { kg: collectedKg, u: Math.sqrt(meterU * meterU + calibrationU * calibrationU) };
    const shortfall = condensateShortfall(expected, collected);
    const mg = (kg: number): number => Math.round(kg * MG_PER_KG);
    this.#days.push({
      day: entry.body.day,
      endMs: entry.happenedAtMs,
      entry: entry.id,
      days: Math.round(crew.days),
      personDays: crew.personDays,
      parts: parts.map(({ name, kg, u }) => ({ name, massMg: mg(kg), uMg: mg(u) })),
      expectedMg: mg(expected.kg),
      expectedUMg: mg(expected.u),
      sharedUMg: mg(people.sharedU),
      collectedMg: this.#collectedMg,
      collectedUMg: mg(meterU),
      shortfallMg: mg(shortfall.kg),
      shortfallUMg: mg(shortfall.u),
      holdsZero: shortfall.holdsZero,
    });
    const otherKg = others.reduce((sum, part) => sum + part.kg, 0);
    const otherVariance = others.reduce((sum, part) => sum + part.u * part.u, meterU * meterU);
    this.#lessons.push({
      enteredAtMs: entry.enteredAtMs,
      crew,
      kg: collectedKg - otherKg,
      u: Math.sqrt(otherVariance),
    });
  }

  /** Only what had been entered by then: the expectation of a day never looks ahead. */
  #learn(knownAtMs: number): void {
    const waiting: Lesson[] = [];
    for (const lesson of this.#lessons)
      if (lesson.enteredAtMs <= knownAtMs) this.#rate.teach(lesson.crew, lesson);
      else waiting.push(lesson);
    this.#lessons = waiting;
  }
}

/** What the air took up did not come to the condensers. */
function airPart(
  before: Air | null,
  after: Air | null,
  fold: Fold,
): { readonly name: CondensatePartName; readonly kg: number; readonly u: number } {
  const name = 'change of the air' as const;
  if (before !== null && after !== null)
    return { name, kg: before.kg - after.kg, u: Math.sqrt(before.u * before.u + after.u * after.u) };
  const volumeM3 = fold.index.outpost.outpost.cabinVolumeM3 ?? 0;
  return { name, kg: 0, u: UNREAD_PERCENT_U * KG_PER_PERCENT_M3 * volumeM3 };
}

/** The greatest relative calibration doubt of the condensers' counters. */
function calibrationOf({ index }: Fold): number {
  const doubts = index.outpost.instruments
    .filter((each) => takesFrom(each, CABIN_AIR))
    .map(({ calibration }) => calibration?.relative ?? 0);
  return Math.max(0, ...doubts);
}

/** Two readings of a condenser that tell no amount: the counter fell, or is a new one. */
function fellBack(fold: Fold, since: number): boolean {
  return fold.findings
    .slice(since)
    .some(
      ({ code, where }) =>
        (code === 'counter-backwards' || code === 'counter-replaced') && takesFromAir(fold, where.field),
    );
}

function takesFromAir({ index }: Fold, instrument: string | undefined): boolean {
  const found = index.instruments.get(instrument ?? '');
  return found !== undefined && takesFrom(found, CABIN_AIR);
}

function restDaysIn(
  { norms }: Outpost,
  { first, last }: { readonly first: number; readonly last: number },
): number {
  const { restDay } = norms;
  if (restDay === undefined) return 0;
  const upTo = (day: number): number => Math.floor((day - restDay.firstOnDay) / restDay.everyDays);
  return Math.max(0, Math.max(-1, upTo(last)) - Math.max(-1, upTo(first - 1)));
}
