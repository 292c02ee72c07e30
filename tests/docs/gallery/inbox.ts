// Table of doubtful tables, lines and cells: when every finding about one comes, and the smallest table that brings it.
import {
  importTable,
  inboxDrop,
  inboxShow,
  inboxTake,
  log,
  type TableOptions,
  today,
} from '../../../src/desk/index.ts';
import type { Finding } from '../../../src/ground/units/index.ts';
import type { InboxFindingCode, WordedFinding } from '../../../src/papers/index.ts';
import { corrieDesk, MOMENT, tableOf } from '../../tables/corrie-desk.ts';
import { type Failure, failure, type Sample, type Samples, sample } from './sample.ts';

interface More {
  readonly options?: TableOptions;
  readonly dryRun?: boolean;
  /** A table that was taken before. */
  readonly before?: string;
  readonly closeDay?: number;
  readonly sure?: boolean;
}

const rule = { dayRule: { dayOneUtcMs: Date.UTC(2147, 2, 1), lineMinuteOfDay: 1260 }, mgPerL: 997_800 };

function bring(code: InboxFindingCode, when: string, text: string, more: More = {}): Sample {
  return sample(when, () => brought(code, text, more));
}

async function brought(code: InboxFindingCode, text: string, more: More): Promise<Failure> {
  const desk = await corrieDesk();
  const { options = {}, before, closeDay, sure = true } = more;
  const take = async (each: string, how: Partial<More> = {}) => {
    const read = tableOf(each);
    if (!read.ok) throw new Error(`${code}: no table, ${read.finding.code}`);
    return await importTable(desk, MOMENT, { table: read.table, sure, ...how });
  };
  if (before !== undefined) await take(before);
  if (closeDay !== undefined)
    await log(
      desk,
      MOMENT,
      { what: 'kind', kind: 'day-close', body: { day: closeDay, what: 'day', figures: [] } },
      { at: `D${closeDay}T22:00` },
    );
  const answer = await take(text, { options });
  const lines =
    text.length > 1000
      ? [`${text.split('\n').length} lines`]
      : text.split('\n').filter((line) => line !== '');
  const said = saidOptions(options);
  const given = [
    ...(before === undefined ? [] : [`before: ${before.split('\n')[1] ?? ''}`]),
    ...(closeDay === undefined ? [] : [`Day ${closeDay} is closed`]),
    ...lines,
    ...said,
  ];
  if (!answer.ok) return failure(given, of(code, answer.findings), rule);
  const worded = [...answer.value.findings, ...answer.value.preview.flatMap(({ reasons }) => reasons)];
  return asIs(code, given, worded);
}

function of(code: string, findings: readonly Finding[]): Finding | undefined {
  return findings.find((each) => each.code === code);
}

function asIs(code: string, given: readonly string[], findings: readonly WordedFinding[]): Failure {
  const finding = findings.find((each) => each.code === code);
  if (finding === undefined)
    throw new Error(
      `${code} is not among ${findings.map((each) => each.code).join(', ')}: ${given.join(' | ')}`,
    );
  return { given, finding };
}

function saidOptions({ columns = {}, ...rest }: TableOptions): readonly string[] {
  const pairs = Object.entries(columns).map(([heading, means]) => `--columns "${heading}=${means}"`);
  return [...pairs, ...Object.entries(rest).map(([name, value]) => `(${name}: ${value})`)];
}

/** A line that waits because its amount has no unit, and what is then asked of it. */
const UNITLESS = 'When;What;Store;Amount\n2147-04-08 09:00;weighed;C-02;430\n';

function settled(
  code: InboxFindingCode,
  when: string,
  asked: (
    desk: Awaited<ReturnType<typeof corrieDesk>>,
  ) => Promise<{ readonly said: string; readonly findings: readonly Finding[] }>,
): Sample {
  return sample(when, async () => {
    const desk = await corrieDesk();
    const read = tableOf(UNITLESS);
    if (!read.ok) throw new Error(code);
    await importTable(desk, MOMENT, { table: read.table });
    const { said, findings } = await asked(desk);
    return failure([...UNITLESS.trim().split('\n'), said], of(code, findings), rule);
  });
}

const HEAD = 'When;What;Store;To;Amount;Notes';
const one = (line: string): string => `${HEAD}\n${line}\n`;
const act = (amount: string): string => one(`2147-04-08 09:00;weighed;C-02;;${amount};`);
const findingsOf = (answer: {
  readonly ok: boolean;
  readonly findings?: readonly Finding[];
}): readonly Finding[] => answer.findings ?? [];

export const inboxSamples: Samples<InboxFindingCode> = {
  'sheet-no-headings': bring(
    'sheet-no-headings',
    'No line says what the columns are.',
    '2147-04-02;425\n2147-04-03;431\n',
  ),
  'sheet-no-time': bring('sheet-no-time', 'No column says when.', 'Store;Amount (L);From\nC-02;12;C-03\n'),
  'sheet-no-kind': bring('sheet-no-kind', 'Neither meters nor acts.', 'Date;Weather\n2147-04-02;3\n'),
  'sheet-columns-clash': bring(
    'sheet-columns-clash',
    'Two columns mean one thing.',
    'Date;Amount (L);Water (kg);From\n2147-04-02;1;1;C-02\n',
  ),
  'sheet-heading-open': bring(
    'sheet-heading-open',
    'A heading with two meanings.',
    'Date;cabin\n2147-04-02;22\n',
  ),
  'sheet-heading-unknown': bring(
    'sheet-heading-unknown',
    'A column whose heading means nothing here.',
    'Date;strokes;initials\n2147-04-02;425;ik\n',
  ),
  'sheet-meaning-unknown': bring(
    'sheet-meaning-unknown',
    'A meaning was declared that is none.',
    'Date;clicks\n2147-04-02;425\n',
    { options: { columns: { clicks: 'stroke' } } },
  ),
  'sheet-heading-missing': bring(
    'sheet-heading-missing',
    'A heading was declared that the table does not have.',
    'Date;strokes\n2147-04-02;425\n',
    { options: { columns: { Strokez: 'strokes' } } },
  ),
  'sheet-dates-open': bring(
    'sheet-dates-open',
    'Day and month cannot be told apart.',
    'Date;strokes\n04/05/2147;425\n05/04/2147;431\n',
  ),
  'sheet-zone-open': bring(
    'sheet-zone-open',
    'Every line stands where another clock has the time of the line.',
    'Date;Time;strokes\n2147-04-03;02:30;425\n2147-04-04;02:31;431\n2147-04-05;02:28;440\n',
  ),
  'cell-unit-missing': bring(
    'cell-unit-missing',
    'An amount without a unit, in the cell and in the heading.',
    act('430'),
  ),
  'cell-two-readings': bring(
    'cell-two-readings',
    'A comma that may be a decimal sign, and nothing in the column that proves one.',
    act('1,234 kg'),
  ),
  'cell-no-number': bring('cell-no-number', 'Words or marks beside a number.', act('about 12 kg')),
  'cell-formula': bring('cell-formula', 'A formula where a number is wanted.', act('=E4+6.8')),
  'cell-unit-other': bring('cell-unit-other', 'A unit that is no unit of an amount.', act('12 ML')),
  'cell-negative': bring('cell-negative', 'Less than nothing.', act('-3 L')),
  'cell-over-capacity': bring('cell-over-capacity', 'More than the store can hold.', act('204 kg')),
  'cell-below-last': bring(
    'cell-below-last',
    'A counter that only rises falls.',
    'Day;condensate\nD32;110\nD33;90\n',
  ),
  'cell-name-unknown': bring(
    'cell-name-unknown',
    'A name that is not in the book.',
    one('2147-04-08;weighed;C-99;;12 kg;'),
  ),
  'cell-date-two-readings': bring(
    'cell-date-two-readings',
    'A table that writes dates both ways.',
    'Date;strokes\n13/04/2147;425\n04/14/2147;431\n05/04/2147;440\n',
  ),
  'cell-time-unreadable': bring(
    'cell-time-unreadable',
    'A day that never was.',
    one('2147-02-30;weighed;C-02;;12 kg;'),
  ),
  'cell-time-outside': bring(
    'cell-time-outside',
    'Before the book began, or later than now.',
    one('2147-03-08;weighed;C-02;;12 kg;'),
  ),
  'cell-year-open': bring(
    'cell-year-open',
    'A date without a year that no year of the book has.',
    one('8 Dec;weighed;C-02;;12 kg;'),
  ),
  'cell-missing': bring(
    'cell-missing',
    'A cell that the line needs is empty.',
    one('2147-04-08;weighed;;;12 kg;'),
  ),
  'cell-act-unknown': bring(
    'cell-act-unknown',
    'A word that is no act.',
    one('2147-04-08;looked at;C-02;;;clear'),
  ),
  'cell-unused': bring(
    'cell-unused',
    'A place or an amount that the act has no part for.',
    one('2147-04-08;weighed;C-02;C-03;12 kg;'),
  ),
  'cell-too-long': bring(
    'cell-too-long',
    'A note that is too long for an entry.',
    `Date;strokes;note;more\n2147-04-02;425;${'a'.repeat(3000)};${'b'.repeat(3000)}\n`,
  ),
  'row-days-differ': bring(
    'row-days-differ',
    'Day and date of a line disagree.',
    'Date;Day;strokes\n2147-04-02;40;425\n',
  ),
  'row-twice': bring(
    'row-twice',
    'A line of acts says the same as one before it.',
    'When;What;From;To;Amount\n2147-04-03 10:00;moved;C-02;C-03;1 L\n2147-04-03 10:00;moved;C-02;C-03;1 L\n',
  ),
  'sheet-zone-unsaid': bring(
    'sheet-zone-unsaid',
    'A table of acts names no clock.',
    'When;What;From;To;Amount\n2147-04-03 10:00;moved;C-02;C-03;1 L\n',
  ),
  'row-ends-same': bring(
    'row-ends-same',
    'From a place into itself.',
    'When;From;To;Amount (L)\n2147-04-08;C-02;c02;3\n',
  ),
  'row-total': bring(
    'row-total',
    'A sum of the lines above it.',
    'Date;strokes\n2147-04-02;425\nTotal;425\n',
  ),
  'row-too-wide': bring(
    'row-too-wide',
    'More cells than headings.',
    'Date;strokes\n2147-04-02;425\n2147-04-03;431;ik\n',
  ),
  'row-day-kept': bring('row-day-kept', 'A second line for one day.', 'Date;strokes\n2147-04-02;426\n', {
    before: 'Date;strokes\n2147-04-02;425\n',
  }),
  'row-day-closed': bring(
    'row-day-closed',
    'A line of a closed day.',
    one('2147-04-02;weighed;C-02;;12 kg;'),
    { closeDay: 33 },
  ),
  'note-unit-missing': sample('A note of the book names an amount without its unit.', async () => {
    const desk = await corrieDesk();
    await log(desk, MOMENT, {
      what: 'told',
      kind: 'note',
      fields: { text: 'Pannier 9 water load 430', about: 'manifest' },
    });
    const line = await inboxShow(desk, '3');
    if (!line.ok) throw new Error('the note does not wait');
    return asIs('note-unit-missing', ['note about manifest: Pannier 9 water load 430'], line.value.reasons);
  }),
  'lines-waiting': sample('Lines wait, and Today says how many.', async () => {
    const desk = await corrieDesk();
    const read = tableOf(UNITLESS);
    if (read.ok) await importTable(desk, MOMENT, { table: read.table });
    const sheet = await today(desk, { kind: 'now' }, MOMENT);
    return asIs('lines-waiting', UNITLESS.trim().split('\n'), sheet.ok ? sheet.value.findings : []);
  }),
  'line-not-waiting': settled('line-not-waiting', 'A number that is no line of the inbox.', async (desk) => ({
    said: 'inbox drop 1',
    findings: findingsOf(await inboxDrop(desk, MOMENT, { ref: '1', reason: 'a slip' })),
  })),
  'line-settled': settled('line-settled', 'A line that was taken or dropped before.', async (desk) => {
    await inboxDrop(desk, MOMENT, { ref: '3', reason: 'a slip' });
    return {
      said: 'inbox drop 3, twice',
      findings: findingsOf(await inboxDrop(desk, MOMENT, { ref: '3', reason: 'a slip' })),
    };
  }),
  'line-still-doubtful': settled(
    'line-still-doubtful',
    'What is left of a line says nothing.',
    async (desk) => ({
      said: 'inbox take 3 with every cell but the time left out',
      findings: findingsOf(
        await inboxTake(desk, MOMENT, { ref: '3', fields: { cells: { act: '', store: '', amount: '' } } }),
      ),
    }),
  ),
  'many-lines': bring(
    'many-lines',
    'More lines than are taken without a yes.',
    `Date;strokes;KB (L)\n${Array.from({ length: 101 }, (_, k) => `2147-0${k < 50 ? 4 : 5}-${String(1 + (k % 19)).padStart(2, '0')};${k};1\n`).join('')}`,
    { sure: false },
  ),
};
