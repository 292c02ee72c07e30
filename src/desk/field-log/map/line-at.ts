// What the reading of one line needs to know, and where it says what does not fit: names, grades and times held against the outpost.
import type { Body, CounterReading, Kind } from '../../../book/index.ts';
import { type FindingData, nearest, parseInstantIso } from '../../../ground/units/index.ts';
import type { OutpostIndex } from '../../../outpost/index.ts';
import type { FieldLogFault } from '../log-finding.ts';
import type { Amounts } from './amounts.ts';

/** A kind of the book with its body: what a line becomes. */
export type Made = { [K in Kind]: { readonly kind: K; readonly body: Body<K> } }[Kind];

/** What is the same for all lines of a log. */
export interface LogFacts {
  readonly index: OutpostIndex;
  readonly amounts: Amounts;
  /** Names of the outpost file, and of what visits brought before or bring in this log. */
  readonly stores: ReadonlySet<string>;
  readonly vehicles: ReadonlySet<string>;
  readonly dayOneMs: number;
}

type Named = 'store' | 'port' | 'hose' | 'biocide';

export class LineAt {
  readonly facts: LogFacts;
  readonly amounts: Amounts;
  readonly happenedAtMs: number;
  readonly faults: FieldLogFault[] = [];

  constructor(facts: LogFacts, happenedAtMs: number) {
    this.facts = facts;
    this.amounts = facts.amounts;
    this.happenedAtMs = happenedAtMs;
  }

  get index(): OutpostIndex {
    return this.facts.index;
  }

  /** An `error` keeps the line out; anything else is only said. */
  say(
    code: FieldLogFault['code'],
    field: string,
    data: FindingData,
    severity: FieldLogFault['severity'] = 'error',
  ): void {
    this.faults.push({ code, severity, field, data });
  }

  #known(
    what: Named,
    known: ReadonlySet<string> | ReadonlyMap<string, unknown>,
    name: string,
    field: string,
  ) {
    if (!known.has(name)) {
      this.say('log-name-unknown', field, { what, name, nearest: nearest(name, [...known.keys()]) });
    }
    return name;
  }

  store(name: string, field: string): string {
    return this.#known('store', this.facts.stores, name, field);
  }

  stores(names: readonly string[], field: string): string[] {
    return names.map((name, k) => this.store(name, `${field}[${k + 1}]`));
  }

  port(name: string, field: string): string {
    return this.#known('port', this.index.ports, name, field);
  }

  hose(name: string): string {
    return this.#known('hose', this.index.hoses, name, 'hose');
  }

  biocide(name: string, field: string): string {
    return this.#known('biocide', this.index.biocides, name, field);
  }

  /** Id of the grade behind a letter; `-` is no grade. */
  grade(letter: string, field: string): string {
    const grade = this.index.gradesByLetter.get(letter);
    // Of single letters each is as near as any other.
    if (grade === undefined)
      this.say('log-name-unknown', field, { what: 'grade', name: letter, nearest: [] });
    return grade?.id ?? letter;
  }

  /** As `grade`, and null for a store that was never used. */
  gradeOrNone(letter: string, field: string): string | null {
    return letter === '-' ? null : this.grade(letter, field);
  }

  /** A vehicle that nothing has named before is a fact all the same. */
  vehicle(name: string): string {
    if (!this.facts.vehicles.has(name)) {
      const near = nearest(name, [...this.facts.vehicles]);
      this.say('log-vehicle-unknown', 'vehicle', { name, nearest: near }, 'act-today');
    }
    return name;
  }

  /** The word for a method is kept; without an instrument behind it the doubt of the amount is a wide guess. */
  method(method: string, hose?: string): string {
    if (hose !== undefined && !this.index.hoses.has(hose)) return method;
    const named = this.index.outpost.instruments.filter((each) => each.logMethod === method);
    const fits = (hoses: readonly string[]) =>
      hoses.length === 0 || (hose !== undefined && hoses.includes(hose));
    if (!named.some((each) => fits(each.onHoses))) {
      const words = this.index.outpost.instruments.flatMap(({ logMethod }) => logMethod ?? []);
      const data = { method, hose: hose ?? null, known: [...new Set(words)], named: named.length > 0 };
      this.say('log-method-unknown', 'method', data, 'know');
    }
    return method;
  }

  /** A second time in a line, which has to lie on one side of the line's own. */
  instant(text: string, field: string, side: 'before' | 'after'): number {
    const read = parseInstantIso(text);
    if (!read.ok) {
      this.say('log-time-wrong', field, { ...read.finding.data, problem: read.finding.code });
      return this.happenedAtMs;
    }
    const { utcMs } = read.instant;
    const inOrder = side === 'before' ? utcMs <= this.happenedAtMs : utcMs >= this.happenedAtMs;
    if (!inOrder) {
      const data = { received: text, side, timeMs: utcMs, happenedAtMs: this.happenedAtMs };
      this.say('log-time-order', field, data);
    }
    return utcMs;
  }

  /** Readings of the instruments that the outpost file ties to these fields. Null: not read. */
  readings(fields: Readonly<Record<string, number | null>>, before = ''): CounterReading[] {
    return Object.entries(fields).flatMap(([logField, value]) => {
      const instrument = this.index.instrumentsByLogField.get(logField);
      if (instrument !== undefined) return [{ instrument: instrument.id, value }];
      // Nothing was read on an instrument that is not there: that is no loss.
      if (value !== null) this.say('log-instrument-missing', before + logField, { logField, value });
      return [];
    });
  }

  /** Each name once: of two figures for one store none is the right one. */
  eachOnce(names: readonly string[], field: string): void {
    const seen = new Set<string>();
    for (const name of names) {
      if (seen.has(name)) this.say('log-named-twice', `${field}[${name}]`, { name });
      seen.add(name);
    }
  }
}
