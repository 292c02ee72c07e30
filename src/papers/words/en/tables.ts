// English around tables and the inbox: what was made of a table, what waits, what became of a line.
import type { DroppedSheet, InboxLine, TableSheet, TakenSheet } from '../../sheets/inbox.ts';
import { counted, listed } from './said.ts';

const shapes = { days: 'one day a line', acts: 'one act a line' } as const;

export const tableLabels = {
  head: ({ file, format, shape, lines }: TableSheet): string =>
    `${file}: ${format}, ${shapes[shape]}, ${counted(lines, 'line')} under the headings.`,
  columns: { heading: 'HEADING', means: 'MEANS' },
  intoNote: '(kept in the note)',
  leftOut: '(left out)',
  noHeading: '(none)',
  preview: { line: 'LINE', what: 'BECOMES', text: 'WHAT IT SAYS' },
  nothing: 'Nothing was written.',
  remembered: 'These headings are read so from now on, by everybody who keeps this book.',
  whyWaits: 'WAITS',
} as const;

const zones: Readonly<Record<string, string>> = {
  declared: 'as declared',
  heading: 'as the heading says',
  'last time': 'as declared for these headings before',
  'outpost clock': 'the clock of the outpost',
  'known entries': 'proven by acts that the book has already',
};

export function saidZone({ zone }: TableSheet): string {
  return `Times are read at UTC${zone.offset}, ${zones[zone.by] ?? zone.by}.`;
}

export function saidDates({ dates }: TableSheet): string {
  return dates === null ? '' : `Dates are ${dates === 'day-first' ? 'day first' : 'month first'}.`;
}

/** In place of a reason that an earlier line of the table has in full. */
export const sameReason = (line: number): string => `for the same reason as line ${line}`;

/** `24 lines taken: 51 entries added. 2 lines known already. 5 lines wait: waterwright inbox list.` */
export function saidCounts(sheet: TableSheet): readonly string[] {
  const { taken, entries, known, waiting, settled, saysNothing, dryRun } = sheet;
  const lines = (count: number) => counted(count, 'line');
  const would = dryRun ? 'would be ' : '';
  return [
    `${lines(taken)} ${would}taken: ${counted(entries, 'entry', 'entries')} ${would}added.`,
    ...(known === 0 ? [] : [`${lines(known)} known already, and ${known === 1 ? 'adds' : 'add'} nothing.`]),
    ...(saysNothing === 0 ? [] : [`${lines(saysNothing)} with a date and nothing read.`]),
    ...(settled === 0 ? [] : [`${lines(settled)} of these waited in the inbox before.`]),
    ...(waiting === 0
      ? []
      : [`${lines(waiting)} ${dryRun ? 'would wait' : waiting === 1 ? 'waits' : 'wait'} in the inbox.`]),
  ];
}

export const waitTalk = (count: number): string =>
  `${counted(count, 'line waits', 'lines wait')} in the inbox; see why: waterwright inbox list`;

export const becomes = {
  entry: 'entry',
  known: 'known',
  waits: 'waits',
  'says nothing': 'nothing',
} as const;

export const saidKnown = (name: string): string =>
  name === 'inbox'
    ? 'it waits in the inbox already'
    : `the same as ${name.startsWith('line ') ? name : `entry ${name}`}`;

export const inboxLabels = {
  empty: 'Nothing waits in the inbox.',
  settled: (count: number): string =>
    `${counted(count, 'line')} settled; to see them too: waterwright inbox list --all.`,
  columns: { ref: 'LINE', from: 'FROM', why: 'WHY IT WAITS', since: 'SINCE' },
  next: 'Look at one: waterwright inbox show NUMBER. Take it: waterwright inbox take NUMBER --unit L. Drop it: waterwright inbox drop NUMBER --reason "REASON".',
  could: 'COULD BE',
  why: 'WHY',
  says: 'SAYS',
  taken: (entries: readonly string[], ref: string): string => `taken as ${listed(entries)} (${ref})`,
  dropped: (reason: string | null, ref: string): string =>
    `dropped (${ref})${reason === null ? '' : `: ${reason}`}`,
} as const;

/** `april.csv line 12` */
export function placeOf({ file, line }: Pick<InboxLine, 'file' | 'line'>): string {
  return line === null ? `note ${file}` : `${file} line ${line}`;
}

export function headOfLine(line: InboxLine): string {
  const { settled } = line;
  const since = `Line ${line.ref}, from ${placeOf(line)}, by the ${line.by}, since ${line.since}`;
  if (settled === null) return `${since}.`;
  const { taken, dropped } = inboxLabels;
  return `${since}: ${settled.how === 'taken' ? taken(settled.entries, settled.ref) : dropped(settled.reason, settled.ref)}.`;
}

export function takenWords({ kept, line, entries }: TakenSheet): readonly string[] {
  const head = `Line ${line.ref} (${placeOf(line)}) ${kept ? 'is taken' : 'would be taken'}.`;
  const said = entries.map(
    ({ ref, text, happened }) => `${ref === '' ? 'Entry' : `Entry ${ref}`}: ${text}, ${happened}.`,
  );
  return [
    head,
    ...said,
    kept ? `Undo: waterwright log undo ${(entries[0]?.ref ?? '').replace(' ', ':')}` : tableLabels.nothing,
  ];
}

export function droppedWords({ kept, line, reason }: DroppedSheet): readonly string[] {
  const head = `Line ${line.ref} (${placeOf(line)}) ${kept ? 'is dropped' : 'would be dropped'}: ${reason.replace(/\.$/, '')}.`;
  return kept ? [head, 'It stays settled when the file comes again.'] : [head, tableLabels.nothing];
}
