// Table of all flags: one name means one thing in every command that takes it.
import type { Flag } from './flag.ts';
import { LIMIT_FLAGS } from './limit-flags.ts';
import { RECKON_FLAGS } from './reckon-flags.ts';

export type { Flag };

/** Every command takes these, where they have a meaning. */
export const GLOBAL_FLAGS: readonly Flag[] = [
  { name: 'book', value: 'PATH', what: 'the book to work on' },
  { name: 'json', what: 'one JSON object instead of text' },
  { name: 'plain', what: 'one record a line, tabs between the fields, ASCII signs' },
  { name: 'output', short: 'o', value: 'FILE', what: 'write the data to FILE; - is standard output' },
  { name: 'dry-run', short: 'n', what: 'show what would happen and write nothing' },
  { name: 'yes', short: 'y', what: 'say yes to every question' },
  { name: 'no-input', what: 'never ask; end with 2 where an answer is needed' },
  { name: 'quiet', short: 'q', what: 'data and errors only, no hints' },
  { name: 'verbose', what: 'say which book it is, and more about a failure' },
  { name: 'no-color', what: 'no colour; NO_COLOR and TERM=dumb do the same' },
  { name: 'at', value: 'TIME', what: 'reading: as known at TIME; entering: when it happened' },
  { name: 'as-of', value: 'TIME', what: 'reading: the state at TIME by all that is known now' },
  { name: 'by', value: 'OFFICE', what: 'who says so; else the keeper' },
  {
    name: 'second',
    value: 'OFFICE',
    what: 'the second person of a two-person act, who is asked for a code if there is one',
  },
  {
    name: 'codes-from-stdin',
    what: 'without a terminal: codes come from standard input, one a line, in the order of the questions',
  },
  {
    name: 'happened',
    value: 'REASON',
    what: 'it has already happened although a rule speaks against it: kept, with a finding',
  },
  { name: 'late', value: 'REASON', what: 'why it comes after its day was closed' },
  { name: 'units', value: 'L|kg', what: 'litres, or kilograms' },
  { name: 'width', value: 'N', what: 'columns of the text; else those of the terminal' },
  {
    name: 'fail-on',
    value: 'LEVEL',
    what: 'end with 6 when a finding is that grave: act-now, act-today or know',
  },
  { name: 'help', short: 'h', what: 'help for a command' },
  { name: 'version', what: 'name and version of this program' },
];

/** Said with any entry. */
export const CIRCUMSTANCE_FLAGS: readonly Flag[] = [
  { name: 'note', value: 'TEXT', what: 'a note to the entry' },
  { name: 'minutes', value: 'N', what: 'crew minutes spent, all people together' },
  { name: 'crew', value: 'N', what: 'people who took part' },
  { name: 'source', value: 'WHO', what: 'who copied it, when it was not the person who did it' },
];

/** Flags of single commands, by name. */
const OWN_FLAGS: readonly Flag[] = [
  { name: 'from', value: 'PLACE', what: 'where the water comes from: a store, a port, a unit, outside' },
  { name: 'to', value: 'PLACE', what: 'where it goes: a store, a port, a unit, people, outside' },
  {
    name: 'for',
    value: 'USE',
    what: 'drink, food, hygiene, flush, electrolyser, sample, sample-flush, suit, plants, animals, medical, spill-air, spill-lost or vent',
  },
  { name: 'person', value: 'OFFICE', what: 'who drank or used it' },
  { name: 'hose', value: 'HOSE', what: 'the hose that it went through' },
  { name: 'method', value: 'WORD', what: 'how it was moved' },
  {
    name: 'also',
    value: 'MEANS=AMOUNT',
    many: true,
    what: 'the same water by another means: an instrument, or words such as weight difference',
  },
  { name: 'set', value: 'NAME=VALUE', many: true, what: 'a reading; may be given again' },
  { name: 'people', value: 'N', what: 'people aboard for the whole day' },
  { name: 'day', value: 'D46', what: 'an outpost day' },
  { name: 'until', value: 'D46', what: 'only what happened up to the end of that day' },
  { name: 'left', value: 'AMOUNT', what: 'what is left in it' },
  { name: 'flow-stopped', what: 'the flow stopped by itself' },
  { name: 'flow-goes-on', what: 'called empty, but the flow had not stopped' },
  { name: 'counter', value: 'NAME=VALUE', many: true, what: 'a counter read at the same moment' },
  { name: 'photo', value: 'NAME', what: 'name of the picture of the new label' },
  { name: 'value', value: 'AMOUNT', what: 'the right amount' },
  { name: 'reason', value: 'REASON', what: 'why' },
  { name: 'practice', what: 'the practice book of the invented outpost Corrie' },
  { name: 'outpost', value: 'FILE', what: 'the outpost file of the new book' },
  { name: 'template', value: 'NAME', what: 'write an example outpost file: corrie, polar or lunar' },
  { name: 'site', value: 'NAME', what: 'the name under which this book numbers its entries' },
  { name: 'no-open', what: 'open no browser; none is opened anyway' },
  { name: 'no-serve', what: 'print and end' },
  { name: 'findings', what: 'every finding of the book, also those that Today shows no more' },
  { name: 'kind', value: 'KIND', what: 'only entries of this kind' },
  { name: 'store', value: 'STORE', what: 'only entries that name this store' },
  { name: 'find', value: 'TEXT', what: 'only entries whose line has TEXT in it' },
  { name: 'most', value: 'N', what: 'at most so many, the youngest ones' },
  { name: 'history', value: 'N', what: 'at most so many entries, the youngest ones' },
  { name: 'svg', what: 'the plot as an SVG picture' },
  { name: 'csv', what: 'the figures of the plot as a table for spreadsheets' },
  { name: 'capacity', value: 'AMOUNT', what: 'what it can hold' },
  { name: 'remainder', value: 'AMOUNT', what: 'what stays in it when it runs dry; else nothing' },
  { name: 'grade', value: 'GRADE', what: 'the grade of what is in it; else it was never used' },
  { name: 'amount', value: 'AMOUNT', what: 'what is in it' },
  { name: 'name', value: 'TEXT', what: 'what people call it' },
  { name: 'place', value: 'TEXT', what: 'where it is' },
  {
    name: 'decimal',
    value: 'SIGN',
    what: 'decimal sign of a table: comma or point; else what its columns prove',
  },
  {
    name: 'dates',
    value: 'ORDER',
    what: 'order of its dates: day-first or month-first; else what they prove',
  },
  { name: 'zone', value: 'OFFSET', what: 'the clock that a table is written by: +05:30, or UTC' },
  { name: 'columns', value: 'HEADING=MEANING', many: true, what: 'meaning of a column; empty leaves it out' },
  {
    name: 'sheet-day-one',
    value: 'DATE',
    what: 'the date that a table calls its day 1; else that of the outpost',
  },
  { name: 'all', what: 'those that are settled, too' },
  { name: 'unit', value: 'UNIT', what: 'the unit of the bare amounts of a line' },
  {
    name: 'act',
    value: 'ACT',
    what: 'what was done: move, fill, drink, use, make, weigh, gauge, empty, full, hookup, note',
  },
  {
    name: 'port',
    value: 'PORT',
    what: 'of a store: the port that it was put on; of a server: where it listens, else 7480 or the next that is free',
  },
  { name: 'places', value: 'PLACES', what: 'only these, commas between; parts is one of them' },
  { name: 'say', what: 'the page in words to be read aloud, 400 characters at the most' },
  { name: 'tests', value: 'NAMES', what: 'what it is tested for, commas between; else what a release needs' },
  { name: 'bottles', value: 'NAMES', what: 'the bottles, commas between; else its own name is on one' },
  { name: 'drawn-from', value: 'TEXT', what: 'where it was drawn, when not from the contents' },
  { name: 'batch', value: 'NAME', what: 'the batch that it belongs to' },
  { name: 'duplicate-of', value: 'SAMPLE', what: 'the sample that it is a second one of' },
  { name: 'laboratory', what: 'read by a laboratory; else aboard' },
  {
    name: 'custody',
    value: 'kept|broken',
    what: 'the chain from bottle to reading; a broken one proves nothing',
  },
  { name: 'preliminary', what: 'not yet confirmed by who read it' },
  { name: 'degassed', value: 'yes|no', what: 'whether the gas was taken out of the water before' },
  { name: 'taken', value: 'TIME', what: 'when it was drawn, where it has no entry; else when it was read' },
  {
    name: 'hold',
    value: 'all|only',
    what: 'what is held if it fails: all that is proposed, or only STORE …',
  },
  { name: 'only', value: 'STORES', what: 'of what the trace proposes only these, commas between' },
  { name: 'conditional', value: 'STORES', what: 'for an emergency only, commas between' },
  { name: 'sample', value: 'SAMPLE', what: 'the sample that it rests on' },
  { name: 'samples', value: 'SAMPLES', what: 'the samples that it rests on, commas between' },
  { name: 'owner', value: 'OFFICE', what: 'who looks after it' },
  { name: 'recipe', value: 'NAME', what: 'the recipe of the outpost file; else the only one for its grade' },
  { name: 'dose', value: 'AMOUNT', what: 'what is added' },
  { name: 'drank', what: 'who drank of it, and when; opens with the code of the medic' },
  { name: 'point', value: 'POINT', what: 'a sampling point' },
  { name: 'lost', what: 'the old code is lost: the chief and a second person set it anew' },
  { name: 'since', value: 'SITE:N', many: true, what: 'only what comes after entry N of SITE' },
];

const byName: ReadonlyMap<string, Flag> = new Map(
  [...GLOBAL_FLAGS, ...CIRCUMSTANCE_FLAGS, ...OWN_FLAGS, ...LIMIT_FLAGS, ...RECKON_FLAGS].map((flag) => [
    flag.name,
    flag,
  ]),
);

export function flagNamed(name: string): Flag | undefined {
  return byName.get(name);
}

export const ALL_FLAGS: readonly Flag[] = [...byName.values()];
