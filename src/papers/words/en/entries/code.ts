// English for entries about the codes by which a second person confirms.
import type { Body } from '../../../../book/index.ts';

const why: Readonly<Record<Body<'code-set'>['because'], string>> = {
  first: 'the first one',
  changed: 'the old one was given',
  lost: 'the old one was lost',
};

export function codeSet({ office, because }: Body<'code-set'>): string {
  return `code of the ${office} set, ${why[because]}`;
}
