// Holds the table of rooms in ARCHITECTURE.md against the one that the check uses.
import type { Fault } from '../tree/source-file.ts';
import { ROOMS } from './table.ts';

const PATH = 'ARCHITECTURE.md';

/** Rows of the first table whose columns are floor, room, what it is, may import. */
export function checkArchitecture(text: string): readonly Fault[] {
  const rows = rowsOf(text);
  const missing = ROOMS.filter(({ room, written }) => rows.get(room)?.written !== written).map(
    ({ room, written }) => ({
      path: PATH,
      line: rows.get(room)?.line ?? 1,
      says: rows.has(room)
        ? `says that ${room} may import "${rows.get(room)?.written}"; the check holds "${written}"`
        : `has no row for the room ${room}`,
    }),
  );
  const known = new Set(ROOMS.map(({ room }) => room));
  const unknown = [...rows]
    .filter(([room]) => !known.has(room))
    .map(([room, { line }]) => ({
      path: PATH,
      line,
      says: `names the room ${room}, which the check does not know`,
    }));
  return [...missing, ...unknown];
}

function rowsOf(text: string): ReadonlyMap<string, { written: string; line: number }> {
  const rows = new Map<string, { written: string; line: number }>();
  text.split('\n').forEach((line, at) => {
    const [, floor, rooms, , written] = line.split('|').map((cell) => cell.trim());
    if (!/^\d+$/.test(floor ?? '') || rooms === undefined || written === undefined) return;
    for (const room of rooms.split(', '))
      rows.set(room.replaceAll('`', ''), { written: written.replaceAll('`', ''), line: at + 1 });
  });
  return rows;
}
