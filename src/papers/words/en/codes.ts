// English around the codes of offices: the list of who has one, what is asked at a prompt, what is told beside an entry.
import type { CodeLine } from '../../sheets/codes.ts';
import { counted } from './said.ts';

export const codeColumns = { office: 'OFFICE', code: 'CODE' } as const;

export function saidCode({ since, waitsMs }: CodeLine): string {
  if (since === null) return 'none: what it confirms is declared, not verified';
  const waits =
    waitsMs === 0 ? '' : `; waits ${counted(Math.ceil(waitsMs / 60_000), 'minute')} after wrong ones`;
  return `set ${since}${waits}`;
}

export const codeLabels = {
  own: (office: string): string => `Code of the ${office}: `,
  confirm: (office: string): string => `Code of the ${office} (Enter alone: declared, not verified): `,
  old: (office: string): string => `Old code of the ${office}: `,
  fresh: (office: string): string => `New code of the ${office}, 4 to 12 digits: `,
  again: 'The same once more: ',
  notAsked: (office: string): string =>
    `The ${office} was not asked for a code, so the entry says: declared, not verified.`,
  notTyped: (office: string): string =>
    `The ${office} typed no code, so the entry says: declared, not verified.`,
  askedLater: (office: string): string => `The ${office} is asked for a code when it is entered.`,
  wouldBeFit: 'Nothing speaks against setting it. No code was asked for.',
  next: 'From now on the code is asked for where the office is named with --second.',
} as const;
