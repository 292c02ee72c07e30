// The family of a store's water as an indented tree: each part with its litres, its share, when it came and by which entries.
import type { FamilyNode } from '../sheets/store-story.ts';
import { dropped as droppedWords } from '../words/en/labels.ts';
import * as words from '../words/en/store-story.ts';
import { amountOf, fieldsOf } from './figures.ts';
import { proseWidth, type TextOptions } from './options.ts';
import { record } from './page.ts';
import { signed } from './signs.ts';
import { type Column, table } from './table.ts';
import { wrap } from './wrap.ts';

interface Row {
  readonly node: FamilyNode;
  readonly depth: number;
}

export function familyLines(family: readonly FamilyNode[], options: TextOptions): string[] {
  if (family.length === 0) return [];
  const { lines, dropped } = table(columns(options), rowsOf(family, 0), options);
  const notes = [words.storyLabels.familyNote, ...(dropped.length === 0 ? [] : [droppedWords(dropped)])];
  return [...lines, ...notes.flatMap((note) => wrap(signed(note, options.style), proseWidth(options)))];
}

function rowsOf(family: readonly FamilyNode[], depth: number): Row[] {
  return family.flatMap((node) => [{ node, depth }, ...rowsOf(node.parts, depth + 1)]);
}

function columns(options: TextOptions): readonly Column<Row>[] {
  const { family, volume, mass, share, came, by } = words.storyLabels;
  return [
    { head: family, align: 'left', priority: 0, cell: whatOf, least: 26 },
    {
      head: options.units === 'kg' ? mass : volume,
      align: 'figure',
      priority: 0,
      cell: ({ node }) => amountOf(node.volume, options),
    },
    { head: share, align: 'right', priority: 1, cell: ({ node }) => percent(node.share) },
    {
      head: came,
      align: 'left',
      priority: 2,
      cell: ({ node }) => (node.days === null ? '' : words.saidDayRange(node.days)),
    },
    {
      head: by,
      align: 'left',
      priority: 3,
      cell: ({ node }) => words.saidRefs(node.refs, node.entryCount),
      least: 10,
    },
  ];
}

/** The grade is told where the water came out of a store: that of a pool is its own affair. */
function whatOf({ node, depth }: Row): string {
  const grade = node.kind === 'store' && node.grade !== null ? `, ${node.grade}` : '';
  return `${'\u00A0\u00A0'.repeat(depth)}${words.saidPart(node)}${grade}`;
}

function percent(share: number): string {
  const whole = Math.round(share * 100);
  return whole === 0 && share > 0 ? '< 1\u00A0%' : `${whole}\u00A0%`;
}

/** family · depth · kind · name · grade · amount · ± · unit · share · first day · last day · entries. */
export function familyRecords(family: readonly FamilyNode[], options: TextOptions): string[] {
  return rowsOf(family, 1).map(({ node, depth }) => {
    const amount = amountOf(node.volume, options);
    const days = node.days === null ? ['', ''] : [`D${node.days.first}`, `D${node.days.last}`];
    return record([
      'family',
      `${depth}`,
      node.kind,
      signed(node.name, 'plain'),
      signed(node.grade ?? '', 'plain'),
      ...fieldsOf(amount),
      amount.unit,
      `${Math.round(node.share * 10_000) / 10_000}`,
      ...days,
      signed(node.refs.join(', '), 'plain'),
    ]);
  });
}
