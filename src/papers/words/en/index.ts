// All English tables of findings as one.
import type { Words } from '../shape.ts';
import { accountWords } from './account.ts';
import { bookWords } from './book.ts';
import { cardWords } from './cards.ts';
import { cliWords } from './cli.ts';
import { codeWords } from './code.ts';
import { deskWords } from './desk.ts';
import { diskWords } from './disk.ts';
import { fieldLogWords } from './field-log.ts';
import { inboxWords } from './inbox.ts';
import { limitWords } from './limits.ts';
import { outpostWords } from './outpost.ts';
import { runWords } from './runs.ts';
import { serverWords } from './server.ts';
import { tableWords } from './table.ts';
import { unitsWords } from './units.ts';

/** The tables by room; no two of them share a code. */
export const englishTables: Readonly<Record<string, Words<string>>> = {
  units: unitsWords,
  outpost: outpostWords,
  limits: limitWords,
  cards: cardWords,
  runs: runWords,
  book: bookWords,
  disk: diskWords,
  account: accountWords,
  desk: deskWords,
  code: codeWords,
  'field log': fieldLogWords,
  inbox: inboxWords,
  table: tableWords,
  'command line': cliWords,
  server: serverWords,
};

/** Words by code. A Map, so that no code can be mistaken for a member that every object has. */
export const englishWords: ReadonlyMap<string, Words<string>[string]> = new Map(
  Object.values(englishTables).flatMap((table) => Object.entries(table)),
);
