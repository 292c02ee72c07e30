// The quarantine notice: what is not to be used and why, what its water touched, what waits for it, and the ways out.
import { roundCoverDays } from '../../../ground/units/index.ts';
import type { HeldStore, HoldSheet } from '../../sheets/holds.ts';
import type { HoldNoticeSheet } from '../../sheets/papers-quality.ts';
import { saidLacks } from '../../words/en/holds.ts';
import { saidDays } from '../../words/en/labels.ts';
import { notice as words } from '../../words/en/papers-quality.ts';
import { listed } from '../../words/en/said.ts';
import type { DocumentHazard, DocumentPart, DocumentTable, PaperDocument } from '../document.ts';
import { saidWater, treeNodes } from './hold-tree.ts';

type Sheet = HoldNoticeSheet['sheet'];

/** Only the sum of what people drank is in it: lines that name who did are not looked at. */
export function holdNoticePaper({ book, sheet }: HoldNoticeSheet): PaperDocument {
  const { hold } = sheet;
  return {
    paper: 'hold-notice',
    of: hold.hold,
    language: 'en',
    isWide: false,
    title: words.title(hold.hold),
    head: sheet.head,
    book,
    parts: [
      ...topOf(sheet),
      ...touchedOf(sheet),
      ...waitsOf(sheet),
      ...waysOf(sheet),
      ...(sheet.findings.length === 0
        ? []
        : [
            { part: 'heading', text: words.findingsHead } as const,
            { part: 'list', items: sheet.findings.map(({ text }) => text) } as const,
          ]),
      {
        part: 'signatures',
        people: [
          { office: 'keeper', says: words.keeper },
          { office: 'medic', says: words.medic },
        ],
      },
    ],
  };
}

function topOf({ hold }: Sheet): readonly DocumentPart[] {
  const verdict: DocumentPart = hold.open
    ? {
        part: 'verdict',
        word: saidVerdict(hold),
        text: words.says(hold.since, hold.reason),
      }
    : { part: 'verdict', word: words.ended, text: words.endedSays };
  if (!hold.open) return [verdict, factsOf(hold)];
  const names = hold.stores.filter(({ as }) => as !== 'waived').map(({ store }) => store);
  const labels: DocumentHazard = {
    part: 'hazard',
    ...words.unsafe,
    step: [{ part: 'ticks', items: words.hung(names) }],
  };
  return [verdict, factsOf(hold), ...storesOf(hold), { part: 'heading', text: words.hungHead }, labels];
}

/** What is held before what is touched; what is waived is neither. */
function saidVerdict({ stores }: HoldSheet['hold']): string {
  const of = (as: HeldStore['as']) => stores.filter((one) => one.as === as).map(({ store }) => store);
  if (of('hold').length > 0) return `${words.doNotUse}: ${listed(of('hold'))}`;
  return of('conditional').length > 0
    ? `${words.conditionalOnly}: ${listed(of('conditional'))}`
    : words.waivedOnly;
}

function factsOf(hold: HoldSheet['hold']): DocumentPart {
  const { fact } = words;
  return {
    part: 'facts',
    facts: [
      { name: fact.hold, said: hold.hold },
      { name: fact.since, said: hold.since },
      { name: fact.failed, said: listed(hold.failed) },
      { name: fact.sample, said: hold.sample ?? words.noSample },
      { name: fact.entry, said: hold.ref ?? '' },
      { name: fact.held, said: hold.volume.value > 0 ? saidWater(hold.volume) : '' },
      {
        name: fact.conditional,
        said: hold.conditionalVolume.value > 0 ? saidWater(hold.conditionalVolume) : '',
      },
    ].filter(({ said }) => said !== ''),
  };
}

function storesOf({
  stores,
  parked,
  leftFree,
  conditionalVolume,
}: HoldSheet['hold']): readonly DocumentPart[] {
  const of = (as: HeldStore['as']) => stores.filter((one) => one.as === as);
  const conditional = of('conditional');
  const block = (as: HeldStore['as'], head: string): readonly DocumentPart[] =>
    of(as).length === 0 ? [] : [{ part: 'heading', text: head }, storeTable(as, of(as))];
  const names = conditional.map(({ store }) => store);
  return [
    ...block('hold', words.storesHead),
    ...block('conditional', words.conditionalHead),
    ...(names.length === 0
      ? []
      : [{ part: 'text', text: words.reserve(names, saidWater(conditionalVolume)) } as const]),
    ...block('waived', words.waivedHead),
    ...(parked === null ? [] : [{ part: 'text', text: words.parked(parked) } as const]),
    ...(leftFree.length === 0 ? [] : [{ part: 'text', text: words.leftFree(leftFree) } as const]),
  ];
}

export function storeTable(name: string, stores: readonly HeldStore[]): DocumentTable {
  const { columns } = words;
  const hasEnd = stores.some(({ until }) => until !== null);
  return {
    part: 'table',
    name: `stores-${name}`,
    empty: words.noSample,
    columns: [
      { head: columns.store, key: 'store', align: 'left' },
      { head: columns.volume, key: 'volume', unit: 'L', align: 'figure' },
      { head: columns.grade, key: 'grade', align: 'left' },
      ...(hasEnd ? [{ head: columns.until, key: 'until', align: 'left', least: 9 } as const] : []),
      { head: columns.lacks, key: 'lacks', align: 'left', least: 20 },
    ],
    rows: stores.map(({ store, volume, grade, until, lacks }) => [
      store,
      volume,
      grade ?? '',
      ...(hasEnd ? [until ?? ''] : []),
      saidLacks(lacks),
    ]),
  };
}

function touchedOf({ hold, trace, sampleIsGuess }: Sheet): readonly DocumentPart[] {
  const head: DocumentPart = { part: 'heading', text: words.touchedHead };
  if (trace === null) return [head, { part: 'text', text: words.noTrace }];
  const { drunk } = trace;
  const people =
    drunk === null ? words.nobodyDrank : words.drank(saidWater(drunk.volume), drunk.sinceDay, drunk.untilDay);
  return [
    head,
    ...(sampleIsGuess && trace.sample !== null
      ? [{ part: 'text', text: words.guessed(trace.sample) } as const]
      : []),
    { part: 'tree', nodes: treeNodes(trace, new Set(hold.stores.map(({ store }) => store))) },
    { part: 'text', text: people },
  ];
}

function waitsOf({ waits, hold }: Sheet): readonly DocumentPart[] {
  if (!hold.open) return [];
  const items = waits.map(({ grade, volume, days }) =>
    words.waits(grade, saidWater(volume), days === null ? null : saidDays(roundCoverDays(days))),
  );
  return [
    { part: 'heading', text: words.waitsHead },
    items.length === 0 ? { part: 'text', text: words.noWaits } : { part: 'list', items },
  ];
}

function waysOf({ ways }: Sheet): readonly DocumentPart[] {
  if (ways.length === 0) return [];
  return [
    { part: 'heading', text: words.waysHead },
    { part: 'list', items: ways.map(({ act, text, command }) => `${act}: ${text} (${command})`) },
  ];
}
