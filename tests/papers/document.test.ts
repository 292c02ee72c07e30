// The model of a paper: what hostile texts become in each of its forms, and what its parts promise.
import { describe, expect, test } from 'vitest';
import {
  type DocumentPart,
  documentHtml,
  documentTable,
  documentText,
  type PaperDocument,
  tablesOf,
} from '../../src/papers/index.ts';
import { TAGS } from '../page/hostile-texts.ts';
import { markupOf } from './well-formed.ts';

const TEXT = { width: 80, style: 'screen', colour: false, units: 'L' } as const;
const because = {
  entries: [],
  method: '',
  inputs: [{ name: 'density', value: 997.8, unit: 'kg/m3' }],
} as const;

function paperOf(parts: readonly DocumentPart[], said = 'Corrie'): PaperDocument {
  return {
    paper: 'certificate',
    of: said,
    language: 'en',
    isWide: false,
    title: said,
    head: {
      outpost: said,
      practice: true,
      stamp: 'Day 14',
      day: 14,
      at: '2147-03-14T23:00:00Z',
      view: 'now',
      closedToDay: null,
      peopleAboard: 4,
      entries: 3,
    },
    book: { kept: 3, last: [`${said} 3`], digest: 'abcdef0123456789abcdef' },
    parts,
  };
}

/** Every part with the text in each of its places. */
const every = (said: string): readonly DocumentPart[] => [
  { part: 'verdict', word: said, text: said },
  { part: 'heading', text: said },
  { part: 'list', items: [said, said] },
  { part: 'facts', facts: [{ name: said, said }] },
  {
    part: 'tree',
    nodes: [
      { depth: 0, text: said },
      { depth: 1, text: said },
      { depth: 7, text: said },
      { depth: 0, text: said },
    ],
  },
  {
    part: 'hazard',
    signal: 'WARNING',
    text: said,
    step: [
      {
        part: 'table',
        name: 'stores',
        empty: said,
        columns: [
          { head: said, key: 'store', align: 'left' },
          { head: 'WATER', key: 'volume', unit: 'L', align: 'figure' },
          { head: 'FOUND', key: 'found', align: 'figure' },
        ],
        rows: [
          [said, { value: 20.5, u95: 0.46, unit: 'L', because }, { told: 0.05, censored: 'below' }],
          [null, { value: 3, u95: null, unit: 'L', because }, null],
        ],
      },
    ],
  },
  { part: 'lines', label: said, count: 2 },
  { part: 'ticks', items: [said] },
  { part: 'signatures', people: [{ office: said, says: said }] },
];

const HOSTILE = [...TAGS, '</style><script>1</script>', '"; } body { display: none } /*', '\\27 ]]>&lt;'];

describe('hostile texts', () => {
  const [plainest] = [markupOf(documentHtml(paperOf(every('C-16 word')), { size: 'A4', units: 'L' }))];

  test.each(HOSTILE)('%s is a text and nothing else', (said) => {
    const page = documentHtml(paperOf(every(said), said), { size: 'A4', units: 'L' });
    const { faults, elements, attributes } = markupOf(page);
    expect(faults).toEqual([]);
    expect([...elements].filter((name) => !plainest?.elements.has(name))).toEqual([]);
    expect([...attributes].filter((name) => !plainest?.attributes.has(name))).toEqual([]);
    // Nothing of it stands in the style sheet as anything but letters and numbers of letters.
    const style = page.slice(page.indexOf('<style>'), page.indexOf('</style>'));
    expect(style).not.toMatch(/content: "[^"]*[<>;{}/]/);
  });

  test('the reader of markup finds what is broken', () => {
    for (const broken of ['<p>a', '<p></div>', '<p a=b></p>', '<p>a & b</p>', '<p><img src=x onerror=1></p>'])
      expect(markupOf(broken).faults.length).toBeGreaterThan(0);
  });

  test('signs that turn or hide a text are shown as what they are not', () => {
    const page = documentHtml(paperOf([{ part: 'text', text: 'a\u202Eb\u0000c' }]), {
      size: 'A4',
      units: 'L',
    });
    expect(page).toContain('a\uFFFDb\uFFFDc');
  });
});

describe('forms of one paper', () => {
  const paper = paperOf(every('C-05'));

  test('a stock has its ±, a told value its sign, and what nobody measured is a place to write on', () => {
    const text = documentText(paper, TEXT);
    expect(text).toMatch(/20\.5 ± 0\.5/);
    expect(text).toContain('<0.05');
    expect(text).toContain('about 3');
    expect(text).toContain('________');
    expect(documentText(paper, { ...TEXT, units: 'kg' })).toMatch(/WATER kg/);
  });

  test('no line of a text is wider than asked for', () => {
    for (const width of [40, 60, 80, 100])
      for (const line of documentText(paper, { ...TEXT, width }).split('\n'))
        expect([...line].length).toBeLessThanOrEqual(width);
  });

  test('a table for spreadsheets has numbers with their ± beside them', () => {
    const [table] = tablesOf(paper);
    expect(table === undefined ? '' : documentTable(table)).toBe(
      'store,volume_L,volume_u95_L,found,found_censored\r\nC-05,20.5,0.46,0.05,below\r\n,3,,,\r\n',
    );
  });

  test('every page says its book and its number, heads are repeated, boxes stay with their step', () => {
    const page = documentHtml(paper, { size: 'Letter', units: 'L' });
    expect(page).toContain('size: Letter portrait');
    expect(page).toContain('counter(page) " of " counter(pages)');
    expect(page).toContain('ABCD-EF01-2345-6789');
    expect(page).toContain('table-header-group');
    expect(page).toMatch(/<div class="step"><div class="hazard warning">.*?<\/div><table>/s);
    expect(page).not.toMatch(/https?:|<script|url\(|@import/);
  });
});
