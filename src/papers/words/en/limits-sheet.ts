// English of the papers on limits: what a limit reads as, what a choice does, and why water that is dosed right cannot meet some.
import type { LimitClash, LimitLine, LimitSides, LimitTypedSheet } from '../../sheets/limits.ts';
import { counted, listed, saidValue } from './said.ts';
import { word } from './say.ts';

const space = '\u00A0';

/** Begins large and ends with a point. */
function sentence(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;
}

export const NO_LIMIT = 'no limit set: hold';

/** `at most 3 mg/L as C`, `0.05 to 0.4 mg/L`. */
export function saidLimit({ limit, unit, basis }: Pick<LimitLine, 'limit' | 'unit' | 'basis'>): string {
  if (limit === null) return NO_LIMIT;
  return `${saidSides(limit, unit)}${basis === 'as itself' ? '' : ` ${basis.replaceAll(' ', space)}`}`;
}

export function saidSides({ atLeast, atMost }: LimitSides, unit: string): string {
  if (atLeast === undefined)
    return atMost === undefined ? 'no figure' : `at${space}most${space}${saidValue(atMost, unit)}`;
  if (atMost === undefined) return `at${space}least${space}${saidValue(atLeast, unit)}`;
  return `${saidValue(atLeast, '')} to${space}${saidValue(atMost, unit)}`;
}

export const saidExposure = (exposure: string): string => (exposure === 'any' ? '' : exposure);

export function saidEvidence({ evidence, typed }: Pick<LimitLine, 'evidence' | 'typed'>): string {
  return typed === null ? evidence : 'typed';
}

/** A set as one word of a command line. */
export const setWord = (id: string): string => word(id.replaceAll(' ', '-'));

export const limitLabels = {
  columns: {
    row: 'ROW',
    parameter: 'PARAMETER',
    limit: 'LIMIT',
    exposure: 'DRUNK FOR',
    evidence: 'KNOWN BY',
    where: 'WHERE',
    required: 'REQUIRED',
    set: 'SET',
    rows: 'ROWS',
    on: 'WITH FIGURE',
    off: 'OFF',
    from: 'FROM',
    store: 'STORE',
    volume: 'VOLUME L',
    fails: 'FAILS',
    mark: 'NOW',
  },
  byFile: 'These limits bear on release. Nobody has chosen others: the outpost file counts.',
  byEntry: (ref: string, by: string, at: string, reason: string): string =>
    `These limits bear on release. Chosen by ${by} at ${at}, entry ${ref}: ${reason}${/[.!?]$/.test(reason) ? '' : '.'}`,
  exposure: (days: number): string => `The water is drunk for ${counted(days, 'day')}.`,
  acts: 'CAUSE, CONSEQUENCE AND FIRST ACT',
  act: (line: Pick<LimitLine, 'cause' | 'consequence' | 'firstAct' | 'timeToActH'>): string => {
    const within = line.timeToActH === null ? '' : `, within ${saidValue(line.timeToActH, 'h')}`;
    const parts = [
      line.cause === '' ? '' : sentence(line.cause),
      line.consequence === '' ? '' : sentence(line.consequence),
      line.firstAct === '' ? '' : `First: ${line.firstAct}${within}.`,
    ].filter((part) => part !== '');
    return parts.length === 0 ? 'Nothing is written of them.' : parts.join(' ');
  },
  sources: 'SOURCES',
  typed: ({ by, copy, at }: NonNullable<LimitLine['typed']>): string => `typed by ${by}, ${at}, from ${copy}`,
  off: 'OFF',
  offIs: (off: number): string =>
    `${counted(off, 'row')} without a figure: ${NO_LIMIT}. Where such a row is required, no water of that use is counted on.`,
  remembered: (rows: readonly Pick<LimitLine, 'id' | 'remembered' | 'unit'>[]): string => {
    const known = rows.flatMap(({ id, remembered, unit }) =>
      remembered === null ? [] : [`${id} ${saidSides(remembered, unit)}`],
    );
    const bare = rows.filter(({ remembered }) => remembered === null).map(({ id }) => id);
    return [
      ...(known.length === 0 ? [] : [`From memory, judged by nobody: ${known.join('; ')}.`]),
      ...(bare.length === 0 ? [] : [`Without anything: ${listed(bare)}.`]),
    ].join(' ');
  },
  typeIt: (set: string): string =>
    `To switch one on, type it from your own copy: waterwright quality limits type ${set} ROW --at-most FIGURE --copy "title, edition, page".`,
  more: 'All sets: waterwright quality limits list. One set whole: waterwright quality limits show SET.',
  look: (set: string): string =>
    `What choosing it would do: waterwright quality limits choose ${set} --dry-run.`,
  choose: 'What a choice would do: waterwright quality limits choose SET --dry-run.',
  uses: (uses: readonly string[]): string => `For ${listed(uses)}.`,
  required: { yes: 'yes', no: '' },
  from: { 'outpost file': 'outpost file', program: 'program', book: 'book' },
  files: 'docs/limit-sets.md says how a set of your own is written; it is chosen with --file PATH.',
} as const;

export const choiceLabels = {
  chosen: (names: readonly string[], kept: boolean, beside: boolean): string =>
    `${kept ? 'Chosen' : 'Would choose'}: ${listed(names)}, ${beside ? 'beside what was in force' : 'instead of what was in force'}.`,
  entry: (ref: string, by: string, reason: string | null): string =>
    `Entry ${ref} by ${by}${reason === null ? '' : `, because ${reason}`}.`,
  none: (kept: boolean): string =>
    `${kept ? 'It holds' : 'It would hold'} no water: nothing that is known of it fails.`,
  holds: (stores: number, figure: string, kept: boolean): string =>
    `${kept ? 'It holds' : 'It would hold'} ${counted(stores, 'store')}, ${figure}:`,
  already: 'already waits',
  ends: (stores: readonly string[], kept: boolean): string =>
    `${kept ? 'No longer held' : 'Would be held no longer'} by an earlier choice: ${listed(stores)}.`,
  free: (grade: string, before: string, after: string): string =>
    before === after ? `Free ${grade} water stays ${after}` : `Free ${grade} water ${before} -> ${after}`,
  cover: (before: string | null, after: string | null): string => {
    if (before === null && after === null) return '';
    const said = (days: string | null) => days ?? 'no figure';
    return before === after
      ? `; days of cover stay ${said(after)} (19 of 20).`
      : `; days of cover ${said(before)} -> ${said(after)} (19 of 20).`;
  },
  off: (grade: string, rows: readonly string[]): string =>
    `${sentence(NO_LIMIT)} ${counted(rows.length, 'required row')} ${rows.length === 1 ? 'has' : 'have'} no figure (${listed(rows)}): no ${grade} water is counted on until each is typed from a copy, or left out with --rows.`,
  notMeasured: (
    grade: string,
    what: { parameters: readonly string[]; stores: number; volume: string; fails: readonly string[] },
  ): string =>
    `Not measured yet: ${listed(what.parameters)}, in ${counted(what.stores, 'store')} of free ${grade} water, ${what.volume}. It stays free on the release that it has; the next release asks for ${what.parameters.length === 1 ? 'it' : 'them'}.${what.fails.length === 0 ? '' : ` Dosed as it should be, it will fail by ${listed(what.fails)}.`}`,
  noMore: (rows: readonly string[]): string => `Would bear on release no more: ${listed(rows)}.`,
  isNoMore: (rows: readonly string[]): string => `Bears on release no more: ${listed(rows)}.`,
  clash: 'CANNOT BE MET',
  partClash: 'CLASH',
  nothing: 'Nothing was written. To choose it: --reason "WHY" --yes in place of --dry-run.',
  nothingTyped: 'Nothing was written.',
  undo: (ref: string | null): string =>
    ref === null
      ? ''
      : `To go back: waterwright log undo ${ref.includes(' ') ? `"${ref}"` : ref}, or choose again.`,
  typed: ({ row, setName, copy, kept }: LimitTypedSheet): string =>
    `${kept ? 'Typed' : 'Would type'}: ${row.id} of ${setName}, ${saidLimit(row)}, from ${copy}.`,
  notInForce: 'It is not required now: nothing changes before its set is chosen with it.',
} as const;

/** Why the two cannot both be met, in the figures of both. */
export function saidClash(clash: Omit<LimitClash, 'text'>): string {
  const { kind, set, row, grade, biocide, rowMgPerL, policyMgPerL } = clash;
  const dose = clash.doseMgPerL === null ? '' : saidValue(clash.doseMgPerL, 'mg/L');
  const limit = `${row} of ${set} asks for ${saidSides(rowMgPerL, 'mg/L')}`;
  const own = policyMgPerL === null ? '' : saidSides(policyMgPerL, 'mg/L');
  switch (kind) {
    case 'dose-above':
      return `Correctly dosed water cannot meet it: ${grade} water is kept by ${dose} of ${biocide}, and ${limit}. No care in dosing mends that; it is the choice of the set.`;
    case 'dose-below':
      return `Correctly dosed water cannot meet it: ${grade} water is dosed to ${dose} of ${biocide}, and ${limit}. It would have to be dosed higher.`;
    case 'no-water-meets-both':
      return `No water meets both: the outpost's own policy asks for ${own} of ${biocide}, and ${limit}.`;
    case 'part-of-policy-fails':
      return `Some of what the outpost's own policy allows, ${own} of ${biocide}, fails: ${limit}.`;
  }
}
