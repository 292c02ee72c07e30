// The trend sheet: the control chart of a parameter at a place, its words, its limits and every result in a table.

import type { TrendPaperSheet } from '../../sheets/papers-quality.ts';
import type { Trend } from '../../sheets/quality-trend.ts';
import { trendPlot } from '../../svg/trend-plot.ts';
import { trendPaperWords as words } from '../../words/en/papers-quality.ts';
import {
  apartInWords,
  chartInWords,
  gapsInWords,
  headInWords,
  markInWords,
  methodsInWords,
  saidAgainst,
  saidMade,
  saidMeasure,
  trendTitle,
  whole,
} from '../../words/en/quality-trend.ts';
import { saidValue } from '../../words/en/said.ts';
import type { DocumentPart, DocumentTable, PaperDocument } from '../document.ts';

const { columns, limitColumns } = words;

/** @param trend that of the sheet: a paper without a parameter is none */
export function trendSheetPaper({ book, sheet }: TrendPaperSheet, trend: Trend): PaperDocument {
  const said = [
    headInWords(trend),
    ...chartInWords(trend),
    ...trend.marks.map((mark) => markInWords(mark, trend.unit)),
    ...gapsInWords(trend),
    ...methodsInWords(trend),
    ...apartInWords(trend),
  ];
  return {
    paper: 'trend-sheet',
    of: trendTitle(trend),
    language: 'en',
    isWide: true,
    title: words.title(trendTitle(trend)),
    head: sheet.head,
    book,
    parts: [
      { part: 'drawing', svg: trendPlot(trend, sheet.head), says: words.picture },
      ...said.map((text): DocumentPart => ({ part: 'text', text })),
      { part: 'heading', text: words.limitHead },
      limitTable(trend),
      { part: 'heading', text: words.tableHead },
      resultTable(trend),
    ],
  };
}

function limitTable({ limits, unit }: Trend): DocumentTable {
  return {
    part: 'table',
    name: 'limits',
    empty: words.noLimits,
    columns: [
      { head: limitColumns.row, key: 'row', align: 'left', least: 10 },
      { head: limitColumns.limit, key: 'limit', align: 'left', least: 12 },
      { head: limitColumns.source, key: 'source', align: 'left', least: 14 },
      { head: limitColumns.act, key: 'first_act', align: 'left', least: 16 },
    ],
    rows: limits.map(({ row, side, value, source, evidence, firstAct }) => [
      row,
      value === null ? words.off : `${side} ${saidValue(value, unit)}`,
      [source, evidence].filter((part) => part !== '').join(', '),
      firstAct,
    ]),
  };
}

function resultTable(trend: Trend): DocumentTable {
  return {
    part: 'table',
    name: 'results',
    empty: words.none,
    columns: [
      { head: columns.day, key: 'day', align: 'left' },
      { head: columns.sample, key: 'sample', align: 'left', least: 8 },
      { head: columns.place, key: 'place', align: 'left', least: 8 },
      { head: columns.figure, key: 'figure', unit: saidMeasure(trend), align: 'figure' },
      { head: columns.is, key: 'against_limit', align: 'left', least: 8 },
      { head: columns.made, key: 'read', align: 'left', least: 8 },
      { head: columns.entry, key: 'entry', align: 'left', least: 6 },
    ],
    rows: trend.points.map((point) => [
      `Day\u00A0${whole(point.day)}`,
      point.sample,
      point.place?.name ?? '',
      { told: point.figure.value, censored: point.told.censored },
      saidAgainst(point),
      saidMade(point),
      point.ref.replaceAll(' ', '\u00A0'),
    ]),
  };
}
