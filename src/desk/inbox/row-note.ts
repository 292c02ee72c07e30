// What goes into the note of an entry: the note of the line, and the cells of columns that mean nothing here.
import { quoted } from './inbox-finding.ts';
import type { RowReading } from './row-reading.ts';

const LONGEST_NOTE = 4000;

/** Undefined where nothing is to be noted; a note that is too long is said to be. */
export function rowNote(reading: RowReading, also: readonly number[] = []): string | undefined {
  const { sheet } = reading;
  const parts: string[] = [];
  sheet.columns.forEach(({ meaning }, column) => {
    const text = reading.cell(column).trim();
    if (meaning?.means.what === 'note' && text !== '') parts.push(text);
  });
  for (const column of [...sheet.besides, ...also]) {
    const text = reading.cell(column).trim();
    const heading = sheet.columns[column]?.heading ?? '';
    if (text !== '') parts.push(heading === '' ? text : `${heading}: ${text}`);
  }
  const note = parts.join('; ');
  if (note.length <= LONGEST_NOTE) return note === '' ? undefined : note;
  reading.say('cell-too-long', sheet.at.note, {
    received: quoted(note),
    length: note.length,
    most: LONGEST_NOTE,
  });
  return undefined;
}

/** The office that says so; undefined where the line names none. */
export function rowOffice(reading: RowReading): string | undefined {
  const text = reading.of('by').trim();
  if (text === '') return undefined;
  const offices = [...reading.sheet.vocabulary.fold.index.offices.keys()];
  const office = offices.find((each) => each === text || each.toLowerCase() === text.toLowerCase());
  if (office === undefined)
    reading.say('cell-name-unknown', reading.sheet.at.by, {
      what: 'office',
      received: quoted(text),
      nearest: offices.slice(0, 6),
    });
  return office;
}
