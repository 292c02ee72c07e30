// A line of a table that has one act in each: what was done, from where to where, how much.
import { nearest } from '../../ground/units/index.ts';
import { USES } from '../../outpost/index.ts';
import type { PlainRequest } from '../log/make.ts';
import { ACT_WORDS, ACTS, type Act } from './act-words.ts';
import { isNothing } from './cell-number.ts';
import { quoted } from './inbox-finding.ts';
import type { Role } from './meaning.ts';
import { rowAmount } from './row-amount.ts';
import { rowNote } from './row-note.ts';
import type { RowReading } from './row-reading.ts';
import { rowTime } from './row-time.ts';
import { bare } from './vocabulary.ts';

const actOfWord: ReadonlyMap<string, Act> = new Map(
  ACTS.flatMap((act) => ACT_WORDS[act].map((word) => [bare(word), act] as const)),
);

export function readActRow(reading: RowReading): void {
  const happened = rowTime(reading);
  const act = actOf(reading);
  const request = act === null ? null : requests[act](reading);
  const spare = act === null ? [] : spareCells(reading, act);
  const beside = act !== null && WITH_GRADE.has(act) ? gradeOf(reading) : {};
  // The note of a line is the text of a note, and beside every other act.
  if (act !== 'note') reading.note = rowNote(reading, spare);
  if (happened === null || request === null || reading.faults.length > 0) return;
  reading.ask({ request, happened, beside });
}

/** Without a column of acts every line is a movement: it has a from and a to. */
function actOf(reading: RowReading): Act | null {
  const { at } = reading.sheet;
  if (at.act < 0) return 'move';
  const text = reading.of('act').trim();
  if (text === '') {
    reading.sayMissing('act');
    return null;
  }
  const act = actOfWord.get(bare(text));
  if (act !== undefined) return act;
  reading.say('cell-act-unknown', at.act, {
    received: quoted(text),
    nearest: nearest(text.slice(0, 60), ACTS),
  });
  return null;
}

/** What an act takes; a role behind a bar stands in for the one before it where that is empty. */
const TAKES: Readonly<Record<Act, readonly string[]>> = {
  move: ['from', 'to|store', 'amount'],
  fill: ['store|to', 'from', 'amount'],
  drink: ['from|store', 'amount', 'person'],
  use: ['from|store', 'amount', 'use', 'person'],
  make: ['from', 'to|store', 'amount'],
  weigh: ['store|to', 'amount'],
  gauge: ['store|to', 'amount'],
  empty: ['store|from', 'amount'],
  full: ['store|to', 'amount'],
  hookup: ['store|from', 'port|to'],
  note: ['store'],
};
/** Of a movement the grade is a part; beside other acts it is noted. */
const WITH_GRADE: ReadonlySet<Act> = new Set(['move', 'fill', 'make', 'drink', 'use']);
/** A place or an amount that the act has no part for says that something else is meant. */
const TELLING: readonly Role[] = ['store', 'from', 'to', 'port', 'amount'];
const NOTED: readonly Role[] = ['grade', 'people', 'person', 'use'];

/** Columns for the note; a cell that speaks against the act is said to. */
function spareCells(reading: RowReading, act: Act): readonly number[] {
  const { at } = reading.sheet;
  const filled = (role: Role) => !isNothing(reading.of(role));
  const used = new Set<string>(
    TAKES[act].flatMap((roles) => {
      const [first, other] = roles.split('|') as [Role, Role?];
      return other === undefined || filled(first) ? [first] : [first, other];
    }),
  );
  if (WITH_GRADE.has(act)) used.add('grade');
  for (const role of TELLING)
    if (filled(role) && !used.has(role))
      reading.say('cell-unused', at[role], { received: quoted(reading.of(role).trim()), act });
  return NOTED.filter((role) => filled(role) && !used.has(role)).map((role) => at[role]);
}

type Request = (reading: RowReading) => PlainRequest | null;

const requests: Readonly<Record<Act, Request>> = {
  move: (reading) => {
    const [from, to] = [endOf(reading, 'from'), endOf(reading, filledOf(reading, 'to', 'store'))];
    const amount = amountOf(reading, [to, from], 'needed');
    if (from !== undefined && from === to) reading.say('row-ends-same', -1, { name: from });
    if (from === undefined && to === undefined) reading.sayMissing(reading.sheet.at.to < 0 ? 'from' : 'to');
    return amount === null ? null : { what: 'move', amount, ...part('from', from), ...part('to', to) };
  },
  fill: (reading) => {
    const [store, from] = [storeOf(reading, 'store', 'to'), endOf(reading, 'from')];
    const amount = amountOf(reading, [store, from], 'needed');
    return amount === null || store === undefined
      ? null
      : { what: 'fill', store, amount, ...part('from', from) };
  },
  drink: (reading) => {
    const from = endOf(reading, filledOf(reading, 'from', 'store'));
    const amount = amountOf(reading, [from], 'needed');
    return amount === null ? null : { what: 'drink', amount, ...part('from', from), ...personOf(reading) };
  },
  use: (reading) => {
    const from = endOf(reading, filledOf(reading, 'from', 'store'));
    const amount = amountOf(reading, [from], 'needed');
    const use = USES.find((each) => each === reading.of('use').trim().toLowerCase());
    if (use === undefined) sayWord(reading, 'use', USES);
    if (amount === null || use === undefined) return null;
    return { what: 'use', amount, use, ...part('from', from), ...personOf(reading) };
  },
  make: (reading) => {
    const [from, to] = [endOf(reading, 'from'), endOf(reading, filledOf(reading, 'to', 'store'))];
    const amount = amountOf(reading, [to], 'needed');
    return amount === null ? null : { what: 'make', amount, ...part('from', from), ...part('to', to) };
  },
  weigh: (reading) => readingOf(reading, 'weigh'),
  gauge: (reading) => readingOf(reading, 'gauge'),
  empty: (reading) => {
    const store = storeOf(reading, 'store', 'from');
    const residual = amountOf(reading, [store], 'may lack');
    return store === undefined || residual === null
      ? null
      : { what: 'empty', store, ...part('residual', residual) };
  },
  full: (reading) => {
    const store = storeOf(reading, 'store', 'to');
    const amount = amountOf(reading, [store], 'may lack');
    return store === undefined || amount === null ? null : { what: 'full', store, ...part('amount', amount) };
  },
  hookup: (reading) => {
    const store = storeOf(reading, 'store', 'from');
    const port = portOf(reading);
    return store === undefined || port === undefined ? null : { what: 'hookup', store, port };
  },
  note: (reading) => {
    const text = rowNote(reading);
    if (text === undefined) reading.sayMissing('note');
    const told = reading.of('store').trim();
    const about = reading.sheet.vocabulary.end(told) ?? told;
    return text === undefined
      ? null
      : {
          what: 'told',
          kind: 'note',
          fields: about === '' ? { text } : { text, about: about.slice(0, 80).toWellFormed() },
        };
  },
};

function readingOf(reading: RowReading, what: 'weigh' | 'gauge'): PlainRequest | null {
  const store = storeOf(reading, 'store', 'to');
  const amount = amountOf(reading, [store], 'needed');
  return store === undefined || amount === null ? null : { what, store, amount };
}

function part<const Name extends string>(
  name: Name,
  text: string | undefined,
): { readonly [K in Name]?: string } {
  return (text === undefined ? {} : { [name]: text }) as { readonly [K in Name]?: string };
}

/** Undefined where the cell is empty, or where it was said that the name is not known. */
function endOf(reading: RowReading, role: 'from' | 'to' | 'store'): string | undefined {
  const text = reading.of(role).trim();
  if (isNothing(text)) return undefined;
  const end = reading.sheet.vocabulary.end(text);
  if (end !== null) return end;
  sayName(reading, role, { what: 'store', names: reading.sheet.vocabulary.endNames });
  return undefined;
}

function filledOf<const One extends Role, const Other extends Role>(
  reading: RowReading,
  role: One,
  other: Other,
) {
  return isNothing(reading.of(role)) && !isNothing(reading.of(other)) ? other : role;
}

function storeOf(reading: RowReading, role: Role, other: Role): string | undefined {
  const wanted = filledOf(reading, role, other);
  const text = reading.of(wanted).trim();
  if (isNothing(text)) {
    reading.sayMissing(wanted, 'store');
    return undefined;
  }
  const store = reading.sheet.vocabulary.store(text);
  if (store !== null) return store;
  sayName(reading, wanted, { what: 'store', names: reading.sheet.vocabulary.storeNames });
  return undefined;
}

function portOf(reading: RowReading): string | undefined {
  const role = isNothing(reading.of('port')) ? 'to' : 'port';
  const text = reading.of(role).trim();
  if (isNothing(text)) {
    reading.sayMissing('port');
    return undefined;
  }
  const ports = [...reading.sheet.vocabulary.fold.ports.keys()];
  const port = ports.find((each) => bare(each) === bare(text));
  if (port === undefined) sayName(reading, role, { what: 'port', names: ports });
  return port;
}

function sayName(
  reading: RowReading,
  role: Role,
  of: { readonly what: string; readonly names: readonly string[] },
) {
  const received = quoted(reading.of(role).trim());
  const near = nearest(received.slice(0, 60), of.names);
  reading.say('cell-name-unknown', reading.sheet.at[role], { what: of.what, received, nearest: near });
}

function sayWord(reading: RowReading, role: Role, words: readonly string[]): void {
  const received = quoted(reading.of(role).trim());
  if (received === '') reading.sayMissing(role);
  else
    reading.say('cell-name-unknown', reading.sheet.at[role], {
      what: role,
      received,
      nearest: words.slice(0, 8),
    });
}

/** Null where it was said why there is none; undefined where there need not be one. */
function amountOf(reading: RowReading, stores: readonly (string | undefined)[], how: 'needed'): string | null;
function amountOf(
  reading: RowReading,
  stores: readonly (string | undefined)[],
  how: 'may lack',
): string | null | undefined;
function amountOf(
  reading: RowReading,
  stores: readonly (string | undefined)[],
  how: 'needed' | 'may lack',
): string | null | undefined {
  const { at } = reading.sheet;
  if (isNothing(reading.of('amount'))) {
    if (how === 'may lack') return undefined;
    reading.sayMissing('amount');
    return null;
  }
  const known = stores.filter((store) => store !== undefined);
  return rowAmount(reading, { column: at.amount, stores: known, unitColumn: at.unit, doubtColumn: at.doubt });
}

function personOf(reading: RowReading): { readonly person?: string } {
  const person = reading.of('person').trim();
  return person === '' ? {} : { person: person.slice(0, 80).toWellFormed() };
}

/** The grade as the line says it, by name or letter; the account compares it with what it believes. */
function gradeOf(reading: RowReading): Readonly<Record<string, string>> {
  const text = reading.of('grade').trim();
  if (isNothing(text)) return {};
  const { grades, gradesByLetter } = reading.sheet.vocabulary.fold.index;
  const grade =
    gradesByLetter.get(text.toUpperCase()) ?? [...grades.values()].find(({ id }) => bare(id) === bare(text));
  if (grade !== undefined) return { grade: grade.id };
  sayName(reading, 'grade', { what: 'grade', names: [...grades.keys()] });
  return {};
}
