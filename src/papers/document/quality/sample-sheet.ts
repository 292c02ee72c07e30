// The sample sheet: a bottle from the line to its result, to be filled by hand and typed back, or as it is known.

import type { SamplePaperSheet } from '../../sheets/papers-quality.ts';
import { certificate, saidRow, samplePaper as words } from '../../words/en/papers-quality.ts';
import { listed, saidValue } from '../../words/en/said.ts';
import { saidLimits } from '../../words/en/samples.ts';
import type {
  DocumentCell,
  DocumentHazard,
  DocumentPart,
  DocumentTable,
  PaperDocument,
} from '../document.ts';
import { measureOf, rowTable, standingOf, toldOf, whole } from './figure-parts.ts';

const { columns } = words;

export function sampleSheetPaper(sheet: SamplePaperSheet): PaperDocument {
  const { head, book, sample, place, tests } = sheet;
  return {
    paper: 'sample-sheet',
    of: sample?.sample ?? place,
    language: 'en',
    isWide: false,
    title: words.title(sample?.sample ?? null, place),
    head,
    book,
    parts: [
      factsOf(sheet),
      ...(sample?.result != null ? [] : drawing()),
      { part: 'heading', text: words.testHead },
      ...testing(sheet),
      { part: 'text', text: words.below },
      { part: 'heading', text: words.custodyHead },
      custody(),
      ...(tests.some(({ rows }) => rows.length > 0)
        ? [{ part: 'heading', text: words.sources } as const, rowTable(tests.flatMap(({ rows }) => rows))]
        : []),
      ...backOf(sheet),
      {
        part: 'signatures',
        people: [
          { office: '________', says: words.drawn },
          { office: '________', says: words.read },
        ],
      },
    ],
  };
}

/** What is not known is a line to write on. */
function factsOf({ sample, place, speaksOf, method, volumeL }: SamplePaperSheet): DocumentPart {
  const { facts } = words;
  const known = sample !== null;
  const entries = known ? listed([...(sample.ref === null ? [] : [sample.ref]), ...sample.resultRefs]) : '';
  const all = [
    { name: facts.sample, said: sample?.sample ?? '' },
    { name: facts.place, said: place },
    { name: facts.from, said: sample?.drawnFrom ?? null },
    { name: facts.speaksOf, said: speaksOf.length === 0 ? null : listed(speaksOf) },
    { name: facts.taken, said: sample?.taken ?? '' },
    { name: facts.by, said: known && sample.result !== null ? null : '' },
    { name: facts.bottles, said: listed(sample?.bottles ?? []) },
    { name: facts.batch, said: sample?.batch ?? (known ? null : '') },
    { name: facts.volume, said: volumeL === null ? '' : saidValue(volumeL * 1000, 'mL') },
    { name: facts.twin, said: sample?.duplicateOf ?? null },
    { name: facts.method, said: method.length === 0 ? null : listed(method) },
    { name: facts.entries, said: entries === '' ? null : entries },
  ];
  return {
    part: 'facts',
    facts: all.flatMap(({ name, said }) => (said === null ? [] : [{ name, said }])),
  };
}

function drawing(): readonly DocumentPart[] {
  const unsafe: DocumentHazard = {
    part: 'hazard',
    ...words.unsafe,
    step: [{ part: 'ticks', items: words.draw }],
  };
  return [{ part: 'heading', text: words.drawHead }, unsafe];
}

/** Where a biocide or its reagents are at work the box stands before the tests. */
function testing(sheet: SamplePaperSheet): readonly DocumentPart[] {
  const table = testTable(sheet);
  if (sheet.biocides.length === 0 || sheet.sample?.result != null) return [table];
  const step = [{ part: 'text', text: words.testStep }, table] as const;
  return [{ part: 'hazard', ...words.biocide(sheet.biocides), step }];
}

function testTable({ sample, tests }: SamplePaperSheet): DocumentTable {
  const found = sample?.figures ?? [];
  const measured = new Set(found.map(({ parameter }) => parameter));
  const open = tests.filter(({ parameter }) => !measured.has(parameter));
  const rows: readonly (readonly DocumentCell[])[] = [
    ...found.map((figure) => [
      figure.parameter,
      saidLimits(figure),
      toldOf(figure),
      measureOf(figure),
      standingOf(figure),
      whole(figure.ref),
    ]),
    ...open.map(({ parameter, unit, rows: bearing }) => [
      parameter,
      bearing.map(saidRow).join('; '),
      null,
      unit,
      null,
      null,
    ]),
  ];
  return {
    part: 'table',
    name: 'tests',
    empty: words.noTests,
    columns: [
      { head: columns.test, key: 'parameter', align: 'left', least: 9 },
      { head: columns.limit, key: 'limit', align: 'left', least: 10 },
      { head: columns.found, key: 'found', align: 'figure' },
      { head: columns.unit, key: 'unit', align: 'left' },
      { head: columns.is, key: 'is', align: 'left' },
      { head: columns.entry, key: 'entry', align: 'left' },
    ],
    rows,
  };
}

const HANDS = 4;

function custody(): DocumentTable {
  return {
    part: 'table',
    name: 'custody',
    empty: certificate.none,
    columns: [
      { head: columns.who, key: 'who', align: 'left' },
      { head: columns.when, key: 'when', align: 'left' },
      { head: columns.what, key: 'what', align: 'left', least: 12 },
      { head: columns.sign, key: 'sign', align: 'left' },
    ],
    rows: Array.from({ length: HANDS }, () => [null, null, null, null]),
  };
}

/** A sheet that was filled by hand comes into the book by these. */
function backOf({ sample, place, tests }: SamplePaperSheet): readonly DocumentPart[] {
  if (sample?.result != null && sample.open.length === 0) return [];
  const open = sample === null ? tests : tests.filter(({ parameter }) => sample.open.includes(parameter));
  const name = sample?.sample ?? place;
  const items = [...(sample === null ? [words.backSample(place)] : []), words.backResult(name, open)];
  return [
    { part: 'heading', text: words.back },
    { part: 'list', items },
  ];
}
