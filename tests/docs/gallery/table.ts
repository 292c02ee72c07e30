// Table of files that no table can be made of: when every finding about one comes, with small caps where a cap is meant.
import { parseTable, TABLE_CAPS, type TableCaps, TableReader } from '../../../src/doors/workers/index.ts';
import type { TableFindingCode } from '../../../src/papers/index.ts';
import { bytesOf } from '../../tables/corrie-desk.ts';
import { failure, type Sample, type Samples, sample } from './sample.ts';

function read(
  code: TableFindingCode,
  when: string,
  text: string | Uint8Array,
  caps: Partial<TableCaps> = {},
): Sample {
  return sample(when, () => {
    const bytes = typeof text === 'string' ? bytesOf(text) : text;
    const outcome = parseTable('sheet.csv', bytes, { ...TABLE_CAPS, ...caps });
    const finding = outcome.ok || outcome.finding.code !== code ? undefined : outcome.finding;
    const said = Object.entries(caps).map(([cap, most]) => `(with a cap of ${most} on ${cap})`);
    const shown =
      typeof text === 'string'
        ? text.split('\n').map((line) => line.slice(0, 80))
        : [`bytes ${[...text].join(' ')}`];
    return failure(
      [
        ...shown.filter((line) => line !== ''),
        ...(shown.every((line) => line === '') ? ['(an empty file)'] : []),
        ...said,
      ],
      finding,
    );
  });
}

function ended(code: TableFindingCode, when: string, caps: Partial<TableCaps>): Sample {
  return sample(when, async () => {
    const reader = new TableReader({ ...TABLE_CAPS, bytes: 100_000_000, columns: 100_000_000, ...caps });
    const outcome = await reader.read('sheet.csv', bytesOf(`${'a,'.repeat(6_000_000)}\n`.repeat(2)));
    await reader.close();
    const finding = outcome.ok || outcome.finding.code !== code ? undefined : outcome.finding;
    return failure(['twelve million cells, with the other caps off'], finding);
  });
}

export const tableSamples: Samples<TableFindingCode> = {
  'table-too-large': read('table-too-large', 'A file of more bytes than are read.', 'a;b\n1;2\n', {
    bytes: 5,
  }),
  'table-no-text': read(
    'table-no-text',
    'Bytes that are no text: a workbook, a picture, another encoding.',
    Uint8Array.from([97, 59, 98, 10, 0xe9, 59, 49]),
  ),
  'table-rows-too-many': read('table-rows-too-many', 'More lines than are read.', 'a;b\n1;2\n3;4\n', {
    rows: 2,
  }),
  'table-columns-too-many': read(
    'table-columns-too-many',
    'A line of more cells than are read.',
    'a;b;c\n1;2;3\n',
    { columns: 2 },
  ),
  'table-cell-too-long': read(
    'table-cell-too-long',
    'A cell longer than any note.',
    'a;b\n1;a very long note\n',
    { cellLength: 8 },
  ),
  'table-not-flat': read(
    'table-not-flat',
    'JSON Lines with a value inside a value.',
    '{"when":"D32","amount":{"value":20,"unit":"kg"}}\n',
  ),
  'table-line-no-json': read(
    'table-line-no-json',
    'A line of JSON Lines that is none.',
    '{"when":"D32","amount":"20 kg"\n',
  ),
  'table-delimiter-open': read(
    'table-delimiter-open',
    'Nothing parts the cells alike.',
    'The water of April\nwas as follows\n',
  ),
  'table-quote-open': read(
    'table-quote-open',
    'A quoted cell that never ends.',
    'When;Notes\nD32;"seen at noon\nD33;fine\n',
  ),
  'table-empty': read('table-empty', 'A file with nothing in it.', '\n\n'),
  'table-too-slow': ended('table-too-slow', 'Reading takes longer than it may.', {
    timeMs: 1,
    memoryMb: 2000,
  }),
  'table-reader-ended': ended('table-reader-ended', 'The reader wants more memory than it is given.', {
    timeMs: 60_000,
    memoryMb: 32,
  }),
};
