// Holds as texts: the list, and one with its trace, its origins, what waits on it and the ways out.
import { roundCoverDays } from '../../ground/units/index.ts';
import type {
  DrankLine,
  HeldStore,
  HoldLine,
  HoldOrigin,
  HoldSheet,
  HoldsSheet,
  WaitingOn,
} from '../sheets/holds.ts';
import { holdLabels, saidLacks } from '../words/en/holds.ts';
import { dropped, saidDays } from '../words/en/labels.ts';
import { saidHoldReason } from '../words/en/store-answer.ts';
import { amountOf, fieldsOf, said } from './figures.ts';
import { findingRecords } from './finding-records.ts';
import { findingLines } from './findings.ts';
import { saidBare, traceLines, traceRecords } from './hold-tree.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { page, record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { headLines } from './today-head.ts';
import { hanging, wrap } from './wrap.ts';

const { columns } = holdLabels;

const prose = (sentence: string, options: TextOptions): string[] =>
  wrap(signed(sentence, options.style), proseWidth(options));

function holdColumns(options: TextOptions): readonly Column<HoldLine>[] {
  return [
    { head: columns.hold, align: 'left', priority: 0, cell: ({ hold }) => hold, least: 8 },
    { head: columns.since, align: 'left', priority: 2, cell: ({ since }) => since },
    { head: columns.stores, align: 'left', priority: 0, cell: ({ stores }) => storesOf(stores), least: 20 },
    {
      head: columns.volume,
      align: 'figure',
      priority: 1,
      cell: ({ volume, conditionalVolume }) =>
        amountOf(volume.value > 0 ? volume : conditionalVolume, options),
    },
    {
      head: columns.reason,
      align: 'left',
      priority: 0,
      cell: ({ reason }) => saidHoldReason(reason),
      least: 20,
    },
  ];
}

function storesOf(stores: readonly HeldStore[]): string {
  return stores
    .map(({ store, as }) =>
      as === 'hold' ? store : `${store} ${as === 'waived' ? 'WAIVED' : 'CONDITIONAL'}`,
    )
    .join(', ');
}

export function holdsText(sheet: HoldsSheet, options: TextOptions): string {
  if (options.style === 'plain')
    return page([...sheet.holds.flatMap(holdRecords), ...waitRecords(sheet.waits)], options);
  const head = [...headLines(sheet.head, options), ''];
  if (sheet.holds.length === 0) return page([...head, ...prose(holdLabels.none, options)], options);
  const { lines, dropped: gone } = table(holdColumns(options), sheet.holds, options);
  return page(
    [
      ...head,
      ...lines,
      ...(gone.length === 0 ? [] : prose(dropped(gone), options)),
      '',
      ...waitLines(sheet.waits, options),
      ...prose(holdLabels.next, options),
    ],
    options,
  );
}

export function waitLines(waits: readonly WaitingOn[], options: TextOptions): string[] {
  const lines = waits.map(({ grade, volume, days }) =>
    holdLabels.waitsFor(
      grade,
      said(amountOf(volume, options), options),
      days === null ? null : saidDays(roundCoverDays(days)),
    ),
  );
  return lines.length === 0 ? [] : prose(`${holdLabels.waits} ${lines.join('; ')}.`, options);
}

export function holdText(sheet: HoldSheet, options: TextOptions): string {
  if (options.style === 'plain') return page(plainHold(sheet), options);
  const { hold, trace, sampleIsGuess, ways, drank } = sheet;
  const blocks = [
    headLines(sheet.head, options),
    headOf(hold, options),
    storeTable(hold.stores, options),
    waitLines(sheet.waits, options),
    trace === null
      ? prose(holdLabels.noTrace, options)
      : [
          holdLabels.wouldHold,
          ...(sampleIsGuess && trace.sample !== null ? prose(holdLabels.guessed(trace.sample), options) : []),
          ...traceLines(trace, options),
        ],
    drank === undefined ? [] : drankLines(drank, options),
    originLines(sheet.origins, options),
    ways.length === 0 ? [] : [holdLabels.waysOut, ...ways.flatMap((way) => wayLines(way, options))],
    findingLines(sheet.findings, options),
  ].filter((lines) => lines.length > 0);
  return page(
    blocks.flatMap((lines, k) => (k === 0 ? lines : ['', ...lines])),
    options,
  );
}

function headOf(hold: HoldLine, options: TextOptions): string[] {
  const { parked, leftFree } = hold;
  return [
    holdLabels.hold(hold.hold, hold.since, hold.reason),
    ...(hold.open ? [] : [holdLabels.ended]),
    ...(parked === null ? [] : [holdLabels.parked(parked.owner, parked.until, parked.over)]),
    ...(leftFree.length === 0 ? [] : [holdLabels.leftFree(leftFree)]),
  ].flatMap((sentence) => prose(sentence, options));
}

function storeTable(stores: readonly HeldStore[], options: TextOptions): string[] {
  if (stores.length === 0) return [];
  const list: readonly Column<HeldStore>[] = [
    { head: columns.store, align: 'left', priority: 0, cell: ({ store }) => store },
    {
      head: columns.mark,
      align: 'left',
      priority: 0,
      cell: ({ as, until }) =>
        as === 'hold' ? 'HOLD' : as === 'conditional' ? 'CONDITIONAL' : `WAIVED until ${until ?? ''}`,
      least: 11,
    },
    { head: columns.volume, align: 'figure', priority: 1, cell: ({ volume }) => amountOf(volume, options) },
    { head: columns.lacks, align: 'left', priority: 0, cell: ({ lacks }) => saidLacks(lacks), least: 24 },
  ];
  return [...table(list, stores, options).lines];
}

const INDENT = 13;

function wayLines({ act, text, command }: HoldSheet['ways'][number], options: TextOptions): string[] {
  const at = { width: proseWidth(options), indent: INDENT };
  return [
    ...hanging(`  ${act}`, signed(text, options.style), at),
    ...hanging('', signed(command, options.style), at),
  ];
}

function originLines(origins: readonly HoldOrigin[], options: TextOptions): string[] {
  if (origins.length === 0) return [];
  // Stores whose water came the same way are told together.
  const groups = new Map<string, HoldOrigin[]>();
  for (const origin of origins) {
    const key = origin.parts
      .map(({ kind, name, share }) => `${kind} ${name} ${Math.round(share * 100)}`)
      .join('|');
    groups.set(key, [...(groups.get(key) ?? []), origin]);
  }
  const lines = [...groups.values()].flatMap((group) => {
    const [first] = group;
    const parts = first?.parts.map(({ name, visit, share, since }) => {
      const from = visit === null ? name : `${name} (delivery of ${visit})`;
      return `${Math.round(share * 100)}\u00A0% ${from} since ${since}`;
    });
    return hanging(
      `  ${group.map(({ store }) => store).join(', ')}`,
      signed((parts ?? []).join('; '), options.style),
      {
        width: proseWidth(options),
        indent: 18,
      },
    );
  });
  return [holdLabels.origins, ...lines];
}

function drankLines(drank: readonly DrankLine[], options: TextOptions): string[] {
  const list: readonly Column<DrankLine>[] = [
    { head: columns.when, align: 'left', priority: 0, cell: ({ at }) => at },
    { head: columns.who, align: 'left', priority: 0, cell: ({ person }) => person ?? holdLabels.notTold },
    { head: columns.from, align: 'left', priority: 1, cell: ({ from }) => from },
    {
      head: columns.drank,
      align: 'left',
      priority: 1,
      cell: ({ volume }) => saidBare(volume, options),
    },
    {
      head: columns.suspect,
      align: 'left',
      priority: 0,
      cell: ({ suspect }) => saidBare(suspect, options),
    },
    { head: columns.ref, align: 'left', priority: 2, cell: ({ ref }) => ref },
  ];
  return [
    holdLabels.drank,
    ...(drank.length === 0 ? [holdLabels.nobodyDrank] : table(list, drank, options).lines),
  ];
}

const plain = (fields: readonly string[]): string => record(fields.map((field) => signed(field, 'plain')));

/** hold name state since reason sample · on hold store as L ± lacks */
export function holdRecords({ hold, open, since, reason, sample, stores, parked }: HoldLine): string[] {
  return [
    plain(['hold', hold, open ? 'open' : 'ended', since, saidHoldReason(reason), sample ?? '']),
    ...(parked === null ? [] : [plain(['parked', hold, parked.owner, parked.until])]),
    ...stores.map(({ store, as, volume, lacks, until }) =>
      plain(['on', hold, store, as, ...fieldsOf(volume), lacks.join('; '), until ?? '']),
    ),
  ];
}

export function waitRecords(waits: readonly WaitingOn[]): string[] {
  return waits.map(({ grade, volume, days }) =>
    plain(['waits', grade, ...fieldsOf(volume), days === null ? '' : roundCoverDays(days)]),
  );
}

function plainHold(sheet: HoldSheet): string[] {
  return [
    ...holdRecords(sheet.hold),
    ...waitRecords(sheet.waits),
    ...(sheet.trace === null ? [] : traceRecords(sheet.trace)),
    ...(sheet.drank ?? []).map(({ at, person, from, volume, suspect, ref }) =>
      plain(['drank', at, person ?? '', from, fieldsOf(volume)[0], fieldsOf(suspect)[0], ref]),
    ),
    ...sheet.origins.flatMap(({ store, parts }) =>
      parts.map(({ kind, name, visit, volume, share, since }) =>
        plain(['origin', store, kind, name, visit ?? '', ...fieldsOf(volume), `${share}`, since]),
      ),
    ),
    ...sheet.ways.map(({ act, command }) => plain(['way', act, command])),
    ...findingRecords(sheet.findings, 'finding'),
  ];
}
