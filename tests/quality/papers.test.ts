// The papers of quality on the practice outpost: verdicts, reasons and names at D14, D19 and D46, in every form.
import { beforeAll, describe, expect, test } from 'vitest';
import {
  addResult,
  addSample,
  type Desk,
  holdAct,
  holdShow,
  log,
  PAPER_NAMES,
  type PaperName,
  type PaperQuery,
  paper,
  readSight,
} from '../../src/desk/index.ts';
import {
  documentHtml,
  documentTable,
  documentText,
  holdNoticePaper,
  type PaperDocument,
  tablesOf,
} from '../../src/papers/index.ts';
import { LOG_LINES } from '../field-log/corrie-log.ts';
import { markupOf } from '../papers/well-formed.ts';
import { addBad, deskOfLines, KEEPER, linesBefore, MEDIC, must, withSecond } from './before-result.ts';

const SCREEN = { width: 100, style: 'screen', colour: false, units: 'L' } as const;
const NOW = { kind: 'now' } as const;

async function at(desk: Desk, day: string, name: PaperName, query: PaperQuery): Promise<PaperDocument> {
  const sight = await must(
    readSight(desk, KEEPER, { at: { text: `${day}T23:00`, field: 'at' }, asOf: undefined }),
  );
  return must(paper(desk, name, { query, sight, moment: KEEPER }));
}

function formsOf(document: PaperDocument): readonly string[] {
  return [
    documentText(document, SCREEN),
    documentText(document, { ...SCREEN, style: 'ascii', width: 60 }),
    documentText(document, { ...SCREEN, style: 'plain' }),
    documentHtml(document, { size: 'A4', units: 'L' }),
    JSON.stringify(document),
    ...tablesOf(document).map(documentTable),
  ];
}

/** As a reader takes it: lines and spaces that do not break are one. */
const said = (document: PaperDocument): string => documentText(document, SCREEN).replace(/\s+/g, ' ');

const QUERIES: Readonly<Record<PaperName, readonly PaperQuery[]>> = {
  'sample-sheet': [{ of: 'SMP-03' }, { of: 'R2' }, { of: 'product' }],
  certificate: ['C-05', 'C-06', 'R2', 'PB', 'C-02', 'W-01'].map((of) => ({ of })),
  'hold-notice': [{ of: 'Q-01' }],
  'hold-release': [{ of: 'Q-01' }],
  'trend-sheet': [{ of: 'silver' }, { of: 'plate count', point: 'dispenser cold' }],
};

describe('the practice book', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await deskOfLines(LOG_LINES);
  });

  test.each(['D14', 'D19', 'D46'])('every paper of %s is whole in every form', async (day) => {
    let count = 0;
    for (const name of PAPER_NAMES)
      for (const query of QUERIES[name]) {
        const document = await at(desk, day, name, query);
        const [text = '', , , page = ''] = formsOf(document);
        expect(markupOf(page).faults).toEqual([]);
        expect(text).toMatch(/seal [0-9A-F]{4}(-[0-9A-F]{4}){3}/);
        for (const form of formsOf(document)) {
          expect(form).not.toMatch(/fit to drink|undefined|NaN|\[object/i);
          count += 1;
        }
      }
    expect(count).toBeGreaterThan(70);
  });

  test('D14: C-05 is not released, with its hold and all that it lacks', async () => {
    const text = said(await at(desk, 'D14', 'certificate', { of: 'C-05' }));
    expect(text).toContain('NOT RELEASED 3 things stand against it.');
    expect(text).toContain('Do not use it: HOLD Q-01 since Day 14 16:30 UTC');
    expect(text).toContain('It came on the word of its loader (Day 6 11:40 UTC, corrie 17)');
    expect(text).toContain('By its results: plate count and silver were not measured.');
    expect(text).not.toContain('Nothing in the book speaks against it');
  });

  test('D19: C-05 is released on its figures; at D14 the loader’s word alone was none', async () => {
    const text = said(await at(desk, 'D19', 'certificate', { of: 'C-05' }));
    expect(text).toContain(
      'RELEASED Released by keeper Day 19 08:30 UTC, until Day 106 15:00 UTC, on SMP-05.',
    );
    expect(text).toContain('Nothing in the book speaks against it.');
    expect(text).toMatch(/silver 0\.19 mg\/L 0\.05 to 0\.4 mg\/L within/);
    expect(text).toContain('limits[silver least] of the outpost file');
    const loaders = said(await at(desk, 'D9', 'certificate', { of: 'FA' }));
    expect(loaders).toContain('ON THE LOADER’S CERTIFICATE');
    expect(loaders).toContain('not released for the reserve');
    expect(loaders).not.toContain('Nothing in the book speaks against it');
  });

  test('the opening of the book is no release', async () => {
    const text = said(await at(desk, 'D46', 'certificate', { of: 'PB' }));
    expect(text).toContain('NOT RELEASED, AND IN USE');
    expect(text).toContain('It was taken over with the opening of the book (Day 0 21:00 UTC, corrie 2)');
    expect(said(await at(desk, 'D46', 'certificate', { of: 'C-06' }))).toContain('EMPTY There is nothing');
  });

  test('the notice of D14: eight stores, the reserve conditional, ways with times, no name', async () => {
    const document = await at(desk, 'D14', 'hold-notice', { of: 'Q-01' });
    const text = said(document);
    expect(text).toContain('DO NOT USE: C-05, C-06, C-11, C-12, C-13, C-14, C-15 and C-16');
    expect(text).toMatch(/held 16[2-5] ± 3 L/);
    expect(text).toContain('R2 (180 ± 12 L) is CONDITIONAL');
    expect(text).toMatch(/HOLD C-05: .*?from FA by H-1, first Day 7 10:16 UTC \(corrie 21\)/);
    expect(text).toContain('Nobody drank of it.');
    const held = tablesOf(document).find(({ name }) => name === 'stores-hold');
    expect(held?.rows).toHaveLength(8);
  });

  test('the release of D19: seven released, C-06 downgraded on its own figure, R2 still on it', async () => {
    const document = await at(desk, 'D19', 'hold-release', { of: 'Q-01' });
    const text = said(document);
    expect(text).toContain('A PART IS STILL HELD');
    expect(text).toContain('downgraded C-06; still on it R2.');
    const left = tablesOf(document).find(({ name }) => name === 'left');
    expect(left?.rows.map(([store, became]) => `${store} ${became}`)).toEqual([
      ...['C-05', 'C-11', 'C-12', 'C-13', 'C-14', 'C-15', 'C-16'].map((store) => `${store} RELEASED`),
      'C-06 DOWNGRADED to technical',
    ]);
    const figures = tablesOf(document).find(({ name }) => name === 'figures');
    const ofC06 = figures?.rows.find(([store]) => store === 'C-06');
    expect(ofC06?.slice(2, 4)).toEqual(['plate count', { told: 85, censored: 'no' }]);
    expect(ofC06?.[6]).toBe('ABOVE');
    const before = said(await at(desk, 'D14', 'hold-release', { of: 'Q-01' }));
    expect(before).toContain('NOTHING RELEASED');
  });

  test('a store that left the hold is not called held in its tree', async () => {
    const text = said(await at(desk, 'D46', 'hold-notice', { of: 'Q-01' }));
    expect(text).toContain('FOR AN EMERGENCY ONLY: R2');
    expect(text).not.toMatch(/HOLD C-06/);
  });

  test('a blank sheet: boxes before their steps, limits beside the tests, and how it is typed back', async () => {
    const document = await at(desk, 'D14', 'sample-sheet', { of: 'R2', tests: ['silver', 'chloroform'] });
    const boxes = document.parts.flatMap((part) => (part.part === 'hazard' ? [part] : []));
    expect(boxes.map(({ signal, step }) => [signal, step.length > 0])).toEqual([
      ['WARNING', true],
      ['CAUTION', true],
    ]);
    const text = said(document);
    expect(text).toContain('at least 0.05 mg/L; at most 0.4 mg/L');
    expect(text).toContain('chloroform');
    expect(text).toContain('waterwright sample add R2');
  });

  test('a trend sheet has the chart of the page and every result', async () => {
    const document = await at(desk, 'D46', 'trend-sheet', { of: 'TOC', point: 'product' });
    const page = documentHtml(document, { size: 'A4', units: 'L' });
    expect(page).toContain('size: A4 landscape');
    expect(page).toMatch(/<figure><svg /);
    expect(tablesOf(document).find(({ name }) => name === 'results')?.rows).toHaveLength(7);
  });

  test('a name that the book has not is a finding', async () => {
    for (const name of PAPER_NAMES) {
      const made = await paper(desk, name, { query: { of: 'X-99' }, sight: NOW, moment: KEEPER });
      expect(made.ok).toBe(false);
    }
  });
});

test('a second person without a code stays declared, and a waiver is no release', async () => {
  const desk = await deskOfLines(linesBefore('E0053'));
  await must(addBad(desk, { hold: 'all' }));
  const waive = {
    ...({ act: 'waive', hold: 'Q-01', stores: ['C-13'] } as const),
    ...{ reason: 'nothing <b>else</b> is left', until: 'D20' },
  };
  await must(holdAct(desk, withSecond(KEEPER, 'medic'), waive));
  const document = await must(
    paper(desk, 'certificate', { query: { of: 'C-13' }, sight: NOW, moment: KEEPER }),
  );
  const text = said(document);
  expect(text).toMatch(/WAIVED Waived by keeper and medic \(declared, not verified\)/);
  expect(text).not.toContain('Nothing in the book speaks against it');
  expect(documentHtml(document, { size: 'A4', units: 'L' })).toContain('&lt;b&gt;else&lt;/b&gt;');
  const release = await must(
    paper(desk, 'hold-release', { query: { of: 'Q-01' }, sight: NOW, moment: KEEPER }),
  );
  expect(JSON.stringify(release)).toContain('keeper and medic (declared, not verified)');
});

describe('who drank', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await deskOfLines(linesBefore('E0053'));
    await must(addSample(desk, KEEPER, { of: ['C-18'], sample: 'LATE-1' }, { at: 'D14T12:00' }));
    for (const person of ['planner', 'chief'])
      await must(
        log(desk, KEEPER, { what: 'drink', amount: '300mL', from: 'C-18', person }, { at: 'D14T13:00' }),
      );
    const figures = { silver: '0.2mg/L', 'plate-count': '900' };
    await must(
      addResult(desk, KEEPER, { of: 'LATE-1', figures, hold: 'all' }, { at: 'D14T18:00', sure: true }),
    );
  });

  test('is in no paper and no form of one: only the sum', async () => {
    const key = { opens: () => Promise.resolve(true) };
    const medics = await must(holdShow(desk, { hold: 'Q-01', drank: true, key }, NOW, MEDIC));
    // Control: the sheet of the medic has them, so that the search would find them.
    for (const office of ['chief', 'planner']) expect(JSON.stringify(medics)).toContain(`"${office}"`);
    const book = { kept: 1, last: [], digest: '0' };
    const documents = [
      // Even from a sheet that has them none is made.
      holdNoticePaper({ book, sheet: medics }),
      ...(await Promise.all(
        (
          [
            ['sample-sheet', 'LATE-1'],
            ['sample-sheet', 'C-18'],
            ['certificate', 'C-18'],
            ['hold-notice', 'Q-01'],
            ['hold-release', 'Q-01'],
            ['trend-sheet', 'plate count'],
          ] as const
        ).map(([name, of]) => must(paper(desk, name, { query: { of }, sight: NOW, moment: MEDIC }))),
      )),
    ];
    const forms = documents.flatMap(formsOf);
    expect(forms.length).toBeGreaterThan(35);
    for (const form of forms) expect(form).not.toMatch(/\b(?:chief|planner)\b/);
    expect(said(documents[0] as PaperDocument)).toMatch(/People drank about .* L of it/);
  });
});
