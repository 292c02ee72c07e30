// A day as it was typed, `D60` or `60`: the last day of a release, of a waiver, of a word about held water.
import { dayOf, parseNumber } from '../../ground/units/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Context } from '../log/context.ts';

export function readDay({ fold, presentMs }: Context, text: string): Answer<number> {
  const where = { where: { field: 'until' } };
  const today = dayOf(presentMs, fold.dayRule);
  const misfit = () =>
    no(
      'bad input',
      deskFinding(
        'field-needed',
        { field: 'until', received: text.slice(0, 40), expected: `an outpost day from D${today} on` },
        where,
      ),
    );
  const match = /^\s*(?:D|Day\s*)?(\d{1,5})\s*$/i.exec(text);
  if (match === null) return misfit();
  const read = parseNumber(match[1] ?? '');
  if (!read.ok) return no('bad input', read.finding);
  return read.value < today ? misfit() : yes(read.value);
}
