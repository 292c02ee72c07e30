// English for what acts on a whole book end with.
import { counted } from './said.ts';

const entries = (count: number): string => counted(count, 'entry', 'entries');

export const begun = (sheet: {
  readonly outpost: string;
  readonly book: string;
  readonly entries: number;
  readonly practice: boolean;
}): string =>
  `${sheet.practice ? 'The practice book' : 'The book'} of ${sheet.outpost} is at ${sheet.book}, with ${entries(sheet.entries)}.`;

export const openNext =
  'Next: its opening stocks, waterwright log opening --from FILE.json, or a field log that begins with them, waterwright import FILE.';

export const practiceNote = 'Nothing in the practice book is real: try what you like.';

/** Three things to try, and what they do. */
export const tries = [
  ['log drink 8', 'a drink of 8 strokes; log undo takes it back'],
  ['store show R1', 'may I use this water?'],
  ['log day', 'the line of the evening, meter by meter'],
] as const;

export const startLabels = {
  tryNext: 'TRY',
  all: (command: string): string => `All commands: ${command}`,
} as const;

export function imported(sheet: {
  readonly understood: number;
  readonly added: number;
  readonly alreadyKept: number;
  readonly dryRun: boolean;
  readonly format: string;
}): string {
  const { understood, added, alreadyKept, dryRun, format } = sheet;
  const kept = alreadyKept === 0 ? '' : `, ${alreadyKept} in the book already`;
  return `${counted(understood, 'line')} of a ${format} understood: ${entries(added)} ${dryRun ? 'would be added' : 'added'}${kept}.`;
}

export const leftOut = (count: number): string =>
  `${counted(count, 'line')} not taken; why is said above. Corrected and imported again, they are added.`;
export const made = (path: string): string => `A new book was made: ${path}.`;
export const nothing = 'Nothing was written.';
export const findingsToSee = (count: number): string => `${counted(count, 'finding')} about these entries:`;

export const checkLabels = {
  whole: (count: number): string => `Every chain is whole: ${entries(count)}.`,
  closes: 'The account closes to 0 mg.',
  closesNot: (mg: number): string => `The account does not close: ${mg} mg.`,
  noAccount: 'There is no account yet: the book has no outpost file.',
  digest: 'digest',
} as const;

export const exported = (file: string, count: number): string => `Exported to ${file}: ${entries(count)}.`;

export const copied = (sheet: { readonly path: string; readonly entries: number }): string =>
  `The copy at ${sheet.path} was read back and is whole: ${entries(sheet.entries)}.`;

export const outpostPut = (outpost: string): string =>
  `The outpost file of ${outpost} counts from now on; the older ones stay in the book.`;
