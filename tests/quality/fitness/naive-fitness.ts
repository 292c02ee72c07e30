// A naive model of which water is fit to be counted on: any milligram of tainted water taints the whole store.
import type { AnyEntry, Entry } from '../../../src/book/index.ts';
import type { OutpostIndex } from '../../../src/outpost/index.ts';
import { HOLM_DAY_ONE_MS, MG_PER_L } from '../../journeys/holm.ts';
import {
  failing,
  hasRunOut,
  type NaiveResult,
  type NaiveRow,
  POLICY_ROWS,
  provenUntilMs,
  resultsIn,
} from './naive-results.ts';
import { Water } from './water.ts';

const DAY_MS = 86_400_000;
const FOR_EVER = Number.POSITIVE_INFINITY;
/** PB of Holm: it is another water when it was filled five times. */
const OTHER_WATER_MG = 5 * 10 * MG_PER_L;

export class NaiveFitness {
  readonly #index: OutpostIndex;
  readonly #waters = new Map<string, Water>();
  readonly #samples = new Map<string, { stores: string[]; takenAtMs: number; inflowMg: number }>();
  readonly #ports = new Map<string, string>();
  #rows: readonly NaiveRow[] = POLICY_ROWS;

  constructor(index: OutpostIndex) {
    this.#index = index;
  }

  /** Why a store may not be counted on; an empty list: it may. */
  against(store: string, atMs: number): string[] {
    const water = this.#waters.get(`store:${store}`);
    if (water === undefined) return ['never told of'];
    const facts = this.#index.stores.get(store);
    const why: string[] = [];
    for (const [name, { waivedUntilMs }] of water.holds)
      if (waivedUntilMs <= atMs) why.push(waivedUntilMs > 0 ? `waiver over: ${name}` : `hold ${name}`);
    if (water.conditional.size > 0) why.push('conditional');
    if (water.noWord) why.push('not released');
    if (water.certificate) {
      const policy = this.#index.outpost.policy.deliveredWater;
      if (policy?.usableOnLoadersCertificate !== true) why.push('certificate is not taken');
      if (hasRunOut(this.#rowsOf(water), this.#known(store, water), atMs)) why.push('certificate over');
    }
    if (water.endsMs <= atMs) why.push('release over');
    if (water.grades.has(null) || water.grades.size === 0) why.push('grade unknown');
    const grade = [...water.grades]
      .map((id) => this.#index.grades.get(id ?? ''))
      .sort(byRank)
      .at(-1);
    if (grade?.terminal === true) why.push('waste');
    if (grade?.emergencyOnly === true) why.push('emergency');
    if (facts?.reserve === true) why.push('reserve');
    if (facts?.kind === 'wasteContainer') why.push('waste');
    if (water.dry || water.setAside) why.push('empty');
    if (this.#rowsOf(water).some(({ limit }) => limit === null)) why.push('row off');
    return why;
  }

  #rank(id: string | null): number {
    return id === null ? FOR_EVER : (this.#index.grades.get(id)?.rank ?? 0);
  }

  /** Rows bear on what people drink: nothing else than drinking water in it. */
  #rowsOf({ grades }: Water): readonly NaiveRow[] {
    return [...grades].every((grade) => grade === 'drinking') && grades.size > 0 ? this.#rows : [];
  }

  #water(account: string): Water {
    let water = this.#waters.get(account);
    if (water === undefined) {
      water = new Water();
      this.#waters.set(account, water);
    }
    return water;
  }

  #unitInto(account: string) {
    return this.#index.outpost.units.find(
      ({ feeds }) => 'store' in feeds && `store:${feeds.store}` === account,
    );
  }

  /** Water went from one account into another. */
  flow(entry: AnyEntry, { from, to, massMg }: { from: string; to: string; massMg: number }): void {
    if (massMg <= 0) return;
    if (!/^(store|line):/.test(to)) {
      if (from.startsWith('line:')) this.#waters.delete(from);
      return;
    }
    const water = this.#water(to);
    const unit = this.#unitInto(to);
    water.inflowMg += massMg;
    if (/^(store|line):/.test(from)) {
      const source = this.#water(from);
      const takes = unit?.takes.some((end) => 'store' in end && `store:${end.store}` === from) === true;
      if (takes && entry.kind !== 'movement' && !entry.kind.startsWith('run'))
        this.#made(entry, source, water, unit.id);
      else this.#mix(entry, source, water, from.startsWith('store:') ? from.slice(6) : source.filledFrom);
      // A hose is emptied at once.
      if (from.startsWith('line:')) this.#waters.delete(from);
    } else if (from === 'unaccounted' || entry.kind === 'dose' || entry.kind === 'treatment') {
      if (from === 'unaccounted' && entry.kind === 'movement') water.sameSinceMs = entry.happenedAtMs;
    } else if (unit?.takes.some((end) => 'pool' in end && end.pool === from) === true) {
      water.noWord = water.noWord && !water.dry;
    } else {
      water.noWord = true;
      water.sameSinceMs = entry.happenedAtMs;
      // What comes by itself from people is waste, wherever it goes.
      if ((from === 'people' || from === 'ahead') && entry.kind !== 'movement') water.grades.add('waste');
    }
    if (entry.kind === 'dose' || entry.kind === 'treatment') return;
    water.dry = false;
    water.setAside = false;
  }

  #made(entry: AnyEntry, source: Water, water: Water, unit: string): void {
    if (water.dry) Object.assign(water, { noWord: false, certificate: false, endsMs: FOR_EVER });
    this.#bring(source, water);
    const mayEnter = [...source.grades].every(
      (id) => id !== null && (this.#index.grades.get(id)?.rank ?? 9) <= this.#rankThatEnters(unit),
    );
    const isHeld = [...water.holds.values()].some(
      ({ ofUnit, waivedUntilMs }) => ofUnit && waivedUntilMs === 0,
    );
    if (!mayEnter && !isHeld)
      water.hold(`rule ${entry.site} ${entry.number}`, entry.happenedAtMs, {
        ofUnit: true,
        needsTreatment: true,
      });
  }

  #rankThatEnters(unit: string): number {
    const entering = this.#index.outpost.grades.filter(({ mayEnterUnits }) => mayEnterUnits.includes(unit));
    return Math.max(...entering.map(({ rank }) => rank));
  }

  #mix(entry: AnyEntry, source: Water, water: Water, name: string | null): void {
    const atMs = entry.happenedAtMs;
    const enemies =
      !water.dry &&
      !water.grades.has('waste') &&
      [...source.biocides].some((one) => [...water.biocides].some((other) => this.#neverMeet(one, other)));
    if (water.dry) {
      Object.assign(water, {
        noWord: false,
        certificate: false,
        endsMs: FOR_EVER,
        results: [],
        added: [],
        badSinceMs: atMs,
      });
      water.sameSinceMs = atMs;
      water.grades.delete(null);
    }
    this.#bring(source, water);
    water.noWord ||= source.noWord;
    water.certificate ||= source.certificate;
    water.endsMs = Math.min(water.endsMs, source.endsMs);
    water.sameSinceMs = Math.max(water.sameSinceMs, atMs, source.sameSinceMs);
    for (const grade of source.grades) this.#grade(water, grade);
    for (const one of source.biocides) water.biocides.add(one);
    if (name !== null) water.filledFrom = name;
    if (!enemies) return;
    const sides = entry.kind === 'movement' || entry.kind.startsWith('run') ? [source, water] : [water];
    for (const side of sides) side.hold(`rule ${entry.site} ${entry.number}`, atMs, { needsTreatment: true });
  }

  /** Holds and conditions go with any water; of two waivers of one hold the shorter one counts. */
  #bring(source: Water, water: Water): void {
    for (const [name, hold] of source.holds) {
      const there = water.holds.get(name);
      const waivedUntilMs = Math.min(hold.waivedUntilMs, there?.waivedUntilMs ?? FOR_EVER);
      water.hold(name, hold.sinceMs, { ...hold, waivedUntilMs });
    }
    for (const name of source.conditional) water.conditional.add(name);
  }

  #grade(water: Water, grade: string | null): void {
    water.grades.add(grade);
    if (grade !== null) water.everHeld.add(grade);
  }

  #neverMeet(one: string, other: string): boolean {
    const says = (a: string, b: string) =>
      this.#index.outpost.biocides.some(({ id, neverMeets }) => id === a && neverMeets.includes(b));
    return says(one, other) || says(other, one);
  }

  /** What an entry says beside the water that it moved. */
  act(entry: AnyEntry): void {
    const act = this.#acts[entry.kind];
    if (act !== undefined) (act as (one: AnyEntry) => void)(entry);
  }

  readonly #acts: { [K in AnyEntry['kind']]?: (entry: Entry<K>) => void } = {
    opening: ({ body, ...entry }) => {
      for (const { store, amount, grade } of body.stores)
        this.#told(store, { litres: amount.massMg / MG_PER_L, grade, word: 'people' }, { body, ...entry });
      for (const { port, store } of body.ports) this.#ports.set(port, store ?? '');
    },
    'visit-berth': (entry) => {
      for (const { store, amount, grade } of entry.body.stores)
        this.#told(store, { litres: (amount?.massMg ?? 0) / MG_PER_L, grade, word: 'loader' }, entry);
    },
    'store-added': ({ body, ...entry }) => {
      const { store, amount, grade } = body;
      this.#told(
        store,
        { litres: (amount?.massMg ?? 0) / MG_PER_L, grade, word: 'none' },
        { body, ...entry },
      );
    },
    'visit-depart': ({ body }) => {
      for (const store of body.took) this.#waters.delete(`store:${store}`);
    },
    hookup: ({ body }) => {
      if (!this.#waters.has(`store:${body.store}`)) return;
      for (const [port, store] of this.#ports) if (store === body.store) this.#ports.delete(port);
      this.#ports.set(body.port, body.store);
    },
    'declared-full': ({ body }) => {
      if (!this.#waters.has(`store:${body.store}`)) return;
      for (const [port, store] of this.#ports) if (store === body.store) this.#ports.delete(port);
    },
    'declared-empty': ({ body }) => {
      const water = this.#waters.get(`store:${body.store}`);
      if (water === undefined) return;
      if (body.flowStopped ?? !body.store.startsWith('F')) water.dry = true;
      // A container is of what it is known to have held.
      if (water.dry && water.grades.size > 1) water.grades.delete(null);
      else water.setAside = true;
    },
    hold: ({ body, happenedAtMs }) => {
      for (const water of this.#aboard(body.stores)) water.hold(body.hold, happenedAtMs);
      for (const water of this.#aboard(body.conditional)) water.conditional.add(body.hold);
    },
    waiver: ({ body }) => {
      const waivedUntilMs = dayStartMs(body.untilDay + 1);
      for (const water of this.#aboard(body.stores)) {
        const hold = water.holds.get(body.hold);
        // Nobody waives anew what is waived.
        if (hold !== undefined && (!hold.needsTreatment || water.isBroughtBack))
          water.holds.set(body.hold, { ...hold, waivedUntilMs });
      }
    },
    release: (entry) => {
      for (const store of entry.body.stores) this.#release(entry, store);
    },
    sample: ({ body, happenedAtMs: takenAtMs }) => {
      const inside = body.store === undefined ? undefined : this.#waters.get(`store:${body.store}`);
      const store = body.drawnFrom === undefined ? body.store : (inside?.filledFrom ?? body.store);
      const stores = store === undefined ? this.#behind(body.point) : [store];
      const inflowMg = this.#waters.get(`store:${stores[0] ?? ''}`)?.inflowMg ?? 0;
      this.#samples.set(body.sample, { stores, takenAtMs, inflowMg });
    },
    result: (entry) => this.#result(entry),
    'result-set-aside': ({ body }) => {
      const isMeant = (one: NaiveResult) =>
        one.sample === body.sample && (body.parameter ?? one.parameter) === one.parameter;
      for (const water of this.#waters.values()) water.results = water.results.filter((one) => !isMeant(one));
    },
    'limits-chosen': ({ body, happenedAtMs }) => {
      this.#rows = body.sets.flatMap(({ rows }) => rows);
      this.#judgeAnew(happenedAtMs);
    },
    'limit-typed': ({ body, happenedAtMs }) => {
      this.#rows = this.#rows.map((row) =>
        `${row.parameter} row` === body.row && row.limit === null
          ? { ...row, limit: { ...(body.atMost !== undefined && { atMost: body.atMost }) } }
          : row,
      );
      this.#judgeAnew(happenedAtMs);
    },
    relabel: (entry) => this.#label(entry, entry.body),
    downgrade: (entry) => {
      const { body } = entry;
      const water = this.#waters.get(`store:${body.store}`);
      if (water === undefined) return;
      // Of an empty container that was never used nothing is unknown.
      const known = [...water.grades].filter((grade) => grade !== null || !water.dry);
      const worst = Math.max(0, ...known.map((grade) => this.#rank(grade)));
      const isDown =
        this.#rank(body.toGrade) > this.#rank(body.fromGrade) && this.#rank(body.toGrade) >= worst;
      this.#label(entry, body);
      if (!isDown) return;
      for (const [name, { ofResults, needsTreatment }] of water.holds)
        if (
          (!needsTreatment || water.isBroughtBack) &&
          (ofResults || body.hold === undefined || name === body.hold)
        )
          water.holds.delete(name);
    },
    treatment: (entry) => this.#treatment(entry),
    dose: ({ body, happenedAtMs: atMs, ...entry }) => {
      for (const water of this.#aboard(body.stores)) {
        this.#addBiocide(water, body.biocide, { name: `rule ${entry.site} ${entry.number}`, atMs });
        water.sameSinceMs = Math.max(water.sameSinceMs, atMs);
        water.added = [...water.added, { biocide: body.biocide, atMs }];
      }
    },
  };

  /** What was mixed already is mixed no more by more of it. */
  #addBiocide(water: Water, biocide: string, { name, atMs }: { name: string; atMs: number }): void {
    const there = [...water.biocides];
    const wereEnemies = there.some((one) => there.some((other) => this.#neverMeet(one, other)));
    const enemies =
      !wereEnemies && !there.includes(biocide) && there.some((one) => this.#neverMeet(one, biocide));
    if (biocide !== 'none') water.biocides.add(biocide);
    if (enemies) water.hold(name, atMs, { needsTreatment: true });
  }

  #aboard(stores: readonly string[]): Water[] {
    return stores.flatMap((store) => this.#waters.get(`store:${store}`) ?? []);
  }

  #told(
    store: string,
    { litres, grade, word }: { litres: number; grade: string | null; word: 'people' | 'loader' | 'none' },
    { happenedAtMs: atMs, site, number }: AnyEntry,
  ): void {
    const entry = `${site} ${number}`;
    const water = this.#water(`store:${store}`);
    const wasDry = water.dry;
    const worst = Math.max(...[...water.grades].map((one) => this.#rank(one)));
    if (!wasDry && grade !== null && this.#rank(grade) < worst)
      water.hold(`rule ${entry}`, atMs, { needsTreatment: worst !== FOR_EVER });
    water.grades = new Set([grade]);
    if (grade !== null) water.everHeld.add(grade);
    const biocide = this.#index.grades.get(grade ?? '')?.biocide ?? 'none';
    if (biocide !== 'none' && litres > 0) water.biocides.add(biocide);
    if (wasDry) water.endsMs = FOR_EVER;
    water.dry = litres <= (this.#index.stores.get(store)?.usableRemainderL ?? 0.6);
    water.setAside = false;
    // A second word about water that waits is no release of it.
    water.noWord = word === 'none' || (!wasDry && water.noWord);
    water.certificate = word === 'loader' || (!wasDry && water.certificate);
    water.sameSinceMs = atMs;
    if (wasDry) water.badSinceMs = atMs;
  }

  #behind(point: string | undefined): string[] {
    const port = this.#ports.get(point ?? '');
    if (port !== undefined) return port === '' ? [] : [port];
    return point === 'purifier' ? ['PB'] : point === 'condenser' ? ['KB'] : [];
  }

  /** Results that speak of the water that is in a store now. */
  #known(store: string, water: Water, more: readonly NaiveResult[] = []): NaiveResult[] {
    const isAnswered = ({ takenAtMs, parameter, unit }: NaiveResult) =>
      water.added.some(
        ({ biocide, atMs }) =>
          takenAtMs < atMs && (biocide === null || parameter === biocide || unit.startsWith('CFU')),
      );
    const own = [...water.results, ...more].filter(
      (one) => one.takenAtMs >= water.badSinceMs && !isAnswered(one),
    );
    if (this.#unitInto(`store:${store}`) === undefined) return own;
    return own.filter(
      (old) =>
        !own.some((one) => one.parameter === old.parameter && one.inflowMg - old.inflowMg >= OTHER_WATER_MG),
    );
  }

  #result({ id: entry, body, happenedAtMs }: Entry<'result'>): void {
    const taken = this.#samples.get(body.sample);
    const named = body.store === undefined ? this.#behind(body.point) : [body.store];
    const stores = taken === undefined || taken.stores.length === 0 ? named : taken.stores;
    for (const store of stores) {
      const water = this.#waters.get(`store:${store}`);
      if (water === undefined) continue;
      const results = resultsIn(body.values, {
        ...{ entry, sample: body.sample, inflowMg: taken?.inflowMg ?? water.inflowMg },
        takenAtMs: taken?.takenAtMs ?? body.takenAtMs ?? happenedAtMs,
        isProven: body.preliminary !== true && body.custody !== 'broken',
      });
      this.#hear(water, `result ${body.sample}`, results, happenedAtMs);
    }
  }

  #hear(water: Water, hold: string, results: readonly NaiveResult[], atMs: number): void {
    water.results = [...water.results, ...results];
    const own = results.filter(({ takenAtMs }) => takenAtMs >= water.badSinceMs);
    if (water.dry || water.setAside) return;
    if (failing(this.#rowsOf(water), own).length > 0) water.hold(hold, atMs, { ofResults: true });
  }

  #release({ id: entry, site, number, body, happenedAtMs: nowMs }: Entry<'release'>, store: string): void {
    const water = this.#waters.get(`store:${store}`);
    if (water === undefined) return;
    const sample = body.samples?.[0] ?? `release ${site} ${number}`;
    const more = resultsIn(body.values, {
      ...{ entry, sample, takenAtMs: nowMs, isProven: true, inflowMg: water.inflowMg },
    });
    const isDrunk = [...water.grades].every((grade) => grade === 'drinking');
    const proof = provenUntilMs(this.#rows, this.#known(store, water, more), {
      ...{ sinceMs: water.sameSinceMs, nowMs },
    });
    if (more.length > 0) this.#hear(water, `release ${site} ${number}`, more, nowMs);
    if (isDrunk && proof === null) return;
    for (const [name, { needsTreatment }] of water.holds)
      if ((body.hold ?? name) === name && (!needsTreatment || water.isBroughtBack)) water.holds.delete(name);
    for (const name of water.conditional)
      if (body.hold === undefined || name === body.hold) water.conditional.delete(name);
    water.noWord = false;
    water.certificate = false;
    water.badSinceMs = Math.max(water.badSinceMs, ...water.added.map(({ atMs }) => atMs));
    const dayMs = body.untilDay === undefined ? FOR_EVER : dayStartMs(body.untilDay + 1);
    water.endsMs = Math.min(dayMs, isDrunk ? (proof ?? FOR_EVER) : FOR_EVER);
  }

  /** A word that makes water better than it is, or known, holds it. */
  #label({ site, number, happenedAtMs }: AnyEntry, body: { store: string; toGrade: string }): void {
    const water = this.#waters.get(`store:${body.store}`);
    if (water === undefined) return;
    const worst = Math.max(...[...water.grades].map((grade) => this.#rank(grade)));
    const wasUnknown = water.grades.has(null) && !water.dry;
    const goesUp = worst !== FOR_EVER && this.#rank(body.toGrade) < worst;
    if (goesUp || wasUnknown) water.hold(`rule ${site} ${number}`, happenedAtMs, { needsTreatment: goesUp });
    water.grades = new Set([body.toGrade]);
    water.everHeld.add(body.toGrade);
  }

  #treatment({ site, number, second, body, happenedAtMs: atMs }: Entry<'treatment'>): void {
    const water = this.#waters.get(`store:${body.store}`);
    if (water === undefined) return;
    const recipe = this.#index.treatments.get(body.recipe);
    const isAllowed =
      recipe?.allowed === true &&
      recipe.to === body.toGrade &&
      !recipe.neverHeld.some((grade) => water.everHeld.has(grade));
    const name = `${site} ${number}`;
    water.hold(`treated ${name}`, atMs);
    if (!isAllowed) water.hold(`rule ${name}`, atMs, { needsTreatment: true });
    this.#addBiocide(water, this.#index.grades.get(body.toGrade)?.biocide ?? 'none', {
      name: `rule ${name}`,
      atMs,
    });
    water.noWord = true;
    water.grades = new Set([body.toGrade]);
    water.everHeld.add(body.toGrade);
    water.added = [...water.added, { biocide: null, atMs }];
    water.sameSinceMs = Math.max(water.sameSinceMs, atMs + (recipe?.sampleAfterDays ?? 0) * DAY_MS);
    water.isBroughtBack = isAllowed && second !== undefined;
  }

  #judgeAnew(atMs: number): void {
    for (const [account, water] of this.#waters) {
      const before = water.holds.get('limits chosen');
      water.holds.delete('limits chosen');
      const known = [...this.#known(account.slice(6), water), ...(before?.failed ?? [])];
      const failed = water.dry || water.setAside ? [] : failing(this.#rowsOf(water), known);
      if (failed.length === 0) continue;
      const waivedUntilMs = namesOf(before?.failed) === namesOf(failed) ? (before?.waivedUntilMs ?? 0) : 0;
      water.hold('limits chosen', before?.sinceMs ?? atMs, { ofResults: true, waivedUntilMs, failed });
    }
  }
}

const byRank = (one?: { rank: number }, other?: { rank: number }): number =>
  (one?.rank ?? 0) - (other?.rank ?? 0);

const namesOf = (results: readonly NaiveResult[] = []): string =>
  [...new Set(results.map(({ parameter }) => parameter))].sort().join();

const dayStartMs = (day: number): number => HOLM_DAY_ONE_MS + (day - 1) * DAY_MS;
