// English for what the desk asks before limits change, and for choices that cannot stand beside one another.
import { type FindingData, formatFigure } from '../../../ground/units/index.ts';
import type { DeskFindingCode } from '../desk-codes.ts';
import type { Words } from '../shape.ts';
import { listOf, maybeNumber, numberOf } from './data.ts';
import { counted, listed } from './said.ts';
import { say } from './say.ts';

export const limitAskWords = {
  'limits-ask': (data) => {
    const what = listed(listOf(data, 'what'));
    return say(
      [
        `With ${what} in force ${saidHeld(data)}.`,
        ...saidOff(data),
        ...listOf(data, 'clashes'),
        'Nothing was written.',
      ].join(' '),
      'a yes from who chooses',
      'no word yet',
      'Look first what it does: add --dry-run. If it is meant: add --yes.',
    );
  },
  'limit-exposure-differs': (data) => {
    const [was, is] = ['wasDays', 'isDays'].map((key) => saidDays(maybeNumber(data, key)));
    const sets = listed(listOf(data, 'sets'));
    return say(
      `${sets}: chosen for water that is drunk for ${was}; which of the rows count for ${is} is not known here. Nothing was written.`,
      'one time of drinking for all that is in force',
      is ?? '',
      `Choose all sets anew in one command: waterwright quality limits choose SET SET --exposure DAYS --only.`,
    );
  },
} satisfies Partial<Words<DeskFindingCode>>;

function saidHeld(data: FindingData): string {
  const stores = listOf(data, 'stores');
  if (stores.length === 0) return 'no store goes on hold by what is known of it';
  const held = { value: numberOf(data, 'heldL'), u95: numberOf(data, 'u95L'), unit: 'L' };
  const litres = formatFigure(held, { style: 'screen' });
  return `${counted(stores.length, 'store')} would be held, ${litres}: ${listed(stores)}`;
}

function saidOff(data: FindingData): readonly string[] {
  const off = listOf(data, 'off');
  if (off.length === 0) return [];
  const rows = counted(off.length, 'required row');
  return [
    `No limit set: hold. ${rows} without a figure, and no ${listed(listOf(data, 'grades'), 'or')} water would be counted on.`,
  ];
}

const saidDays = (days: number | null): string =>
  days === null ? 'longer than any row is made for' : counted(days, 'day');
