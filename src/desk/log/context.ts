// What the making of an entry needs to know: the fold as it stands, and names, amounts and times read against it.
import { type Fold, isPool } from '../../account/index.ts';
import { type Amount, type BookPort, entryOf, type KeptEntry, LARGEST_AMOUNT_MG } from '../../book/index.ts';
import {
  convert,
  type Finding,
  type Instant,
  nearest,
  parseQuantity,
  parseWhen,
  unitNamesOf,
} from '../../ground/units/index.ts';
import type { Instrument } from '../../outpost/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import type { Desk, Moment } from '../desk.ts';
import { deskFinding } from '../desk-finding.ts';

export interface Context {
  readonly desk: Desk;
  readonly fold: Fold;
  readonly moment: Moment;
  /** The book's present; of a practice book its own. */
  readonly presentMs: number;
}

/** `c07`, `C07` and `C-07` are one name: letters and digits count, case does not. */
function bare(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9]/g, '');
}

/** Two names that nobody could tell apart when they are typed. */
export function isSameName(a: string, b: string): boolean {
  return a === b || (bare(a) === bare(b) && bare(a) !== '');
}

/** The name that is meant among some, or a finding with the nearest ones. */
export function findName(what: string, typed: string, names: readonly string[]): Answer<string> {
  if (names.includes(typed)) return yes(typed);
  const alike = names.filter((name) => bare(name) === bare(typed) && bare(typed) !== '');
  const [only] = alike;
  if (only !== undefined && alike.length === 1) return yes(only);
  const data = { what, name: typed.slice(0, 80), nearest: alike.length > 1 ? alike : near(typed, names) };
  return no('not in book', deskFinding('not-in-book', data, { where: { field: what } }));
}

/** Names that begin as typed come first: people shorten long ones. Where there are few names, all of them are near. */
function near(typed: string, names: readonly string[]): readonly string[] {
  const word = bare(typed);
  const begun = word === '' ? [] : names.filter((name) => bare(name).startsWith(word));
  const found = [...new Set([...begun, ...nearest(typed.slice(0, 80), names)])].slice(0, MOST_NEAR);
  return found.length === 0 && names.length <= FEW_NAMES ? names : found;
}

const MOST_NEAR = 3;
const FEW_NAMES = 4;

export function findStore({ fold }: Context, typed: string): Answer<string> {
  if (fold.stores.get(typed)?.aboard === true) return yes(typed);
  const aboard = [...fold.stores.values()].filter((store) => store.aboard).map((store) => store.facts.id);
  return findName('store', typed, aboard);
}

/** An end of a movement: a store, a port, a unit, or a pool. */
export function findEnd({ fold }: Context, typed: string): Answer<string> {
  if (isPool(typed) || fold.stores.get(typed)?.aboard === true) return yes(typed);
  const stores = [...fold.stores.values()].filter((store) => store.aboard).map((store) => store.facts.id);
  return findName('store', typed, [...stores, ...fold.ports.keys(), ...fold.index.units.keys()]);
}

/** An entry by its number at this site (`1041`), by site and number (`ground 12`), by its id, or by its name in the file that it came from. */
export async function findEntry(desk: Desk, typed: string): Promise<Answer<KeptEntry>> {
  const port: BookPort = desk.port;
  const match = /^(?:([a-z0-9][a-z0-9-]{0,30})[ :])?(\d{1,9})$/.exec(typed.trim());
  const found =
    match === null
      ? ((await port.find(typed.trim().toLowerCase())) ?? (await ofFile(port, typed.trim())))
      : await port.findNumber(match[1] ?? desk.info.site, wholeNumber(match[2] ?? ''));
  if (found !== null) return yes(found);
  return no(
    'not in book',
    deskFinding(
      'not-in-book',
      { what: 'entry', name: typed.slice(0, 60), nearest: [] },
      { where: { field: 'entry' } },
    ),
  );
}

/** `E0247`, as a field log calls it. */
async function ofFile(port: BookPort, name: string): Promise<KeptEntry | null> {
  const inText = JSON.stringify(name);
  for await (const rows of port.scan({ order: 'total' })) {
    const found = rows.find((row) => row.text.includes(inText) && entryOf(row).origin?.ref === name);
    if (found !== undefined) return found;
  }
  return null;
}

/** Digits only, few enough to be exact. */
function wholeNumber(digits: string): number {
  let value = 0;
  for (const digit of digits) value = value * 10 + '0123456789'.indexOf(digit);
  return value;
}

/** Milligrams for one of a unit: by definition for masses, at the outpost's density for volumes, by the counter for counts. */
function mgPerUnit({ fold }: Context, unit: string, counter: Instrument | undefined): number {
  if (unitNamesOf('mass').includes(unit)) return convert(1, unit, 'mg');
  if (unitNamesOf('volume').includes(unit)) return convert(1, unit, 'L') * fold.mgPerL;
  return (counter?.litresPerCount ?? 0) * fold.mgPerL;
}

const WATER_UNITS: readonly string[] = [...unitNamesOf('volume'), ...unitNamesOf('mass')];

/** Reads an amount of water. A bare number is taken only where a counter gives it a unit. */
export function readAmount(
  context: Context,
  text: string,
  how: { readonly field: string; readonly counter?: Instrument | undefined },
): Answer<Amount> {
  const { counter, field } = how;
  const countUnit = counter?.litresPerCount === undefined ? [] : [counter.unit];
  const units = countUnit.length === 0 ? WATER_UNITS : [...WATER_UNITS, ...countUnit];
  const [defaultUnit] = countUnit;
  const read = parseQuantity(text, {
    units,
    where: { field },
    ...(defaultUnit !== undefined && { defaultUnit }),
  });
  if (!read.ok) return no('bad input', read.finding);
  const { value, u95, unit } = read.quantity;
  const factor = mgPerUnit(context, unit, counter);
  const massMg = Math.round(value * factor);
  if (!(massMg <= LARGEST_AMOUNT_MG)) {
    const expected = `at most ${LARGEST_AMOUNT_MG / 1_000_000_000} t of water`;
    return no(
      'bad input',
      deskFinding('field-needed', { field, received: text.slice(0, 40), expected }, { where: { field } }),
    );
  }
  const raw = { value, unit, mgPerUnit: factor };
  return yes(u95 === null ? { massMg, raw } : { massMg, raw, uMg: Math.round((u95 * factor) / 2) });
}

/** Reads when it happened, and holds it against the book's beginning and the present. */
export function readMoment(context: Context, text: string | undefined): Answer<Instant> {
  const { fold, moment, presentMs } = context;
  if (text === undefined) return yes({ utcMs: presentMs, offsetMin: moment.offsetMin });
  const read = parseWhen(text, {
    nowUtcMs: presentMs,
    offsetMin: moment.offsetMin,
    rule: fold.dayRule,
    where: { field: 'at' },
  });
  if (!read.ok) return no('bad input', read.finding);
  const { instant } = read;
  const refuse = (finding: Finding) => no('bad input', finding);
  if (fold.openingMs !== null && instant.utcMs < fold.openingMs) {
    return refuse(
      deskFinding(
        'before-book',
        { happenedAtMs: instant.utcMs, openingMs: fold.openingMs },
        { where: { field: 'at' } },
      ),
    );
  }
  const practice = context.desk.info.purpose === 'practice';
  if (!practice && instant.utcMs > presentMs + SLACK_MS) {
    return refuse(
      deskFinding(
        'in-the-future',
        { happenedAtMs: instant.utcMs, nowMs: presentMs },
        { where: { field: 'at' } },
      ),
    );
  }
  return yes(instant);
}

/** Clocks of one outpost differ by a little. */
const SLACK_MS = 2 * 60_000;
