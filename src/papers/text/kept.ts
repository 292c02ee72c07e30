// What an entry did, or would do, as a text: the entry in words, the stores that it changed, the days of cover.
import { roundCoverDays } from '../../ground/units/index.ts';
import type { KeptSheet } from '../sheets/book.ts';
import * as words from '../words/en/labels.ts';
import { fieldsOf, said } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { wrap } from './wrap.ts';

/** More stores than this are not told one by one. */
const MOST_STORES = 6;

export function keptText(sheet: KeptSheet, options: TextOptions): string {
  return page(options.style === 'plain' ? keptRecords(sheet) : keptLines(sheet, options), options);
}

/** The same as lines, for a text that has more to tell. */
export function keptLines(sheet: KeptSheet, options: TextOptions): string[] {
  const { kept, line, stores, cover } = sheet;
  const { keptLabels } = words;
  const told = stores.slice(0, MOST_STORES).map((change) => changeOf(change, kept, options));
  const rest = stores.length - MOST_STORES;
  const more = rest > 0 ? [`${words.andMore(rest)}: ${words.moreStores}`] : [];
  const sentences = [
    ...[line, ...(sheet.also ?? [])].map((each) =>
      kept ? keptLabels.kept(each) : keptLabels.wouldKeep(each),
    ),
    ...(told.length === 0 ? [] : [`${[...told, ...more].join('; ')}.`]),
    ...sheet.became,
    ...cover.map(({ grade, beforeQ05, afterQ05 }) =>
      keptLabels.cover(kept, grade, days(beforeQ05), days(afterQ05)),
    ),
    kept ? keptLabels.undo : keptLabels.nothing,
  ];
  const prose = sentences.flatMap((sentence) => wrap(signed(sentence, options.style), proseWidth(options)));
  return [...prose, ...findingLines(sheet.findings, options)];
}

type Change = KeptSheet['stores'][number];

function changeOf({ before, after }: Change, kept: boolean, options: TextOptions): string {
  const now = `${after.id}\u00A0${said({ value: after.valueL, u95: after.u95L, unit: 'L' }, options)}`;
  if (before === null) return now;
  return words.keptLabels.change(
    kept,
    now,
    said({ value: before.valueL, u95: before.u95L, unit: 'L' }, options),
  );
}

const days = (value: number | null): string | null => (value === null ? null : roundCoverDays(value));

/** kept or would-keep, then ref id kind happened by text · store id L ± before-L ± · became sentence · cover grade before after · a record for each finding. */
export function keptRecords({ kept, line, also, stores, became, cover, findings }: KeptSheet): string[] {
  return [
    ...[line, ...(also ?? [])].map(({ ref, id, kind, happened, by, text }) =>
      record([
        kept ? 'kept' : 'would-keep',
        ...[ref, id, kind, happened, by, text].map((field) => signed(field, 'plain')),
      ]),
    ),
    ...stores.map(({ before, after }) =>
      record([
        'store',
        signed(after.id, 'plain'),
        ...fieldsOf({ value: after.valueL, u95: after.u95L }),
        ...(before === null ? ['', ''] : fieldsOf({ value: before.valueL, u95: before.u95L })),
      ]),
    ),
    ...became.map((sentence) => record(['became', signed(sentence, 'plain')])),
    ...cover.map(({ grade, beforeQ05, afterQ05 }) =>
      record(['cover', signed(grade, 'plain'), days(beforeQ05) ?? '', days(afterQ05) ?? '']),
    ),
    ...findingRecords(findings, 'finding'),
  ];
}
