// Holds and their ways out: waiver, treatment, parking, a result set aside, and who drank, which is for the medic alone.
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  addResult,
  addSample,
  allFindings,
  type Desk,
  type HoldAct,
  holdAct,
  holdList,
  holdShow,
  log,
  qualityToday,
  sampleShow,
  storeList,
  storeShow,
  today,
} from '../../src/desk/index.ts';
import { holdText } from '../../src/papers/index.ts';
import {
  addBad,
  deskOfLines,
  EIGHT,
  KEEPER,
  linesBefore,
  MEDIC,
  must,
  refusal,
  withSecond,
} from './before-result.ts';

const NOW = { kind: 'now' } as const;
const SCREEN = { width: 100, style: 'screen', colour: false, units: 'L' } as const;

describe('ways out of Q-01', () => {
  let desk: Desk;
  beforeEach(async () => {
    desk = await deskOfLines(linesBefore('E0053'));
    await must(addBad(desk, { hold: 'all' }));
  });
  const act = (request: HoldAct, moment = KEEPER, more = {}) => holdAct(desk, moment, request, more);

  test('a waiver takes a second person and an end, counts as free, and is marked', async () => {
    const waive = {
      act: 'waive',
      hold: 'Q-01',
      stores: ['C-13'],
      reason: 'nothing else is left',
      until: 'D20',
    } as const;
    expect(await refusal(act(waive))).toBe('refused: second-needed');
    expect(await refusal(act({ ...waive, until: 'D2' }))).toBe('bad input: field-needed');
    await must(act(waive, withSecond(KEEPER, 'medic')));
    const shown = await must(storeShow(desk, { store: 'C-13' }, NOW, KEEPER));
    expect(shown.store.mark).toBe('WAIVED');
    expect(shown.quality).toMatchObject({
      word: 'WAIVED',
      waived: [{ by: 'keeper', second: 'medic', hold: 'Q-01' }],
    });
    const { ending } = await must(qualityToday(desk, NOW, KEEPER));
    expect(ending).toMatchObject([{ store: 'C-13', kind: 'waiver', untilDay: 21 }]);
  });

  test('parked water stays held, with its owner in the queue', async () => {
    await must(act({ act: 'park', hold: 'q01', owner: 'medic', until: 'D30' }));
    const { parked, waiting } = await must(qualityToday(desk, NOW, KEEPER));
    expect(parked).toMatchObject([{ hold: 'Q-01', parked: { owner: 'medic', untilDay: 30, over: false } }]);
    expect(waiting.map(({ store }) => store)).toEqual(expect.arrayContaining([...EIGHT, 'R2']));
    expect(waiting.every(({ lacks }) => lacks.length > 0)).toBe(true);
  });

  test('who waits on it stands in litres and days of use', async () => {
    const { waits } = await must(qualityToday(desk, NOW, KEEPER));
    const drinking = waits.find(({ grade }) => grade === 'drinking');
    expect(Math.abs((drinking?.volume.value ?? 0) - 159)).toBeLessThan(3);
    expect(Math.abs((drinking?.days ?? 0) - 159 / 4.25)).toBeLessThan(4);
  });

  test('only the medic sets a result aside; the hold stands until it is released', async () => {
    const aside = {
      act: 'aside',
      sample: 'SMP-03',
      parameter: 'plate count',
      reason: 'the plate was opened',
    } as const;
    expect(await refusal(act(aside))).toBe('refused: intention-refused releases');
    await must(act(aside, MEDIC));
    const { sample } = await must(sampleShow(desk, { sample: 'SMP-03' }, NOW, KEEPER));
    expect(sample.figures.find(({ parameter }) => parameter === 'plate count')?.setAside).toBe(true);
    expect((await must(holdList(desk, NOW, KEEPER))).holds).toHaveLength(1);
  });

  test('a name that is not open, and a store that is not on it', async () => {
    expect(await refusal(act({ act: 'release', of: ['Q-77'] }, MEDIC))).toBe('not in book: not-in-book');
    expect(await refusal(act({ act: 'release', of: ['Q-01', 'C-02'] }, MEDIC))).toBe(
      'bad input: not-on-hold',
    );
  });

  test('a downgrade goes down only', async () => {
    const up = { act: 'downgrade', store: 'C-09', grade: 'drinking' } as const;
    expect(await refusal(act(up))).toBe('refused: intention-refused grade-up');
  });

  test('a trace by the name of its sample proposes the same', async () => {
    const more = await must(act({ act: 'add', sample: 'SMP-03' }, KEEPER, { dryRun: true }));
    for (const store of EIGHT) expect(more.line.text).toContain(store);
    expect(more.line.text).toMatch(/^HOLD Q-02 on .*CONDITIONAL R2/);
    expect(await refusal(act({ act: 'add', stores: ['C-02'] }))).toBe('wrong use: field-needed');
  });
});

describe('a treatment', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await deskOfLines(linesBefore('E0175'));
  });

  test('is for the water of its recipe alone', async () => {
    const second = withSecond(KEEPER, 'second');
    const treat = (store: string, moment = second) =>
      refusal(holdAct(desk, moment, { act: 'treat', store }, { dryRun: true }));
    expect(await treat('C-10')).toBe('kept');
    expect(await treat('C-10', KEEPER)).toBe('refused: second-needed');
    expect(await treat('V-1')).toBe('refused: intention-refused treatment');
    // FB is waste by then, and has been.
    expect(
      await refusal(holdAct(desk, second, { act: 'treat', store: 'FB', recipe: 'technical to drinking' })),
    ).toBe('refused: intention-refused treatment');
  });

  test('takes its parts, holds the water, and asks for a sample after its days', async () => {
    const own = await deskOfLines(linesBefore('E0175'));
    const kept = await must(
      holdAct(own, withSecond(KEEPER, 'second'), { act: 'treat', store: 'C-10', dose: '10mL' }),
    );
    expect(kept.also?.map(({ kind }) => kind)).toEqual(['part-used', 'part-used']);
    const shown = await must(storeShow(own, { store: 'C-10' }, NOW, KEEPER));
    expect(shown.quality).toMatchObject({ word: 'HOLD', treated: { biocide: null } });
    const { due } = await must(qualityToday(own, NOW, KEEPER));
    expect(due.find(({ kind }) => kind === 'treated')).toMatchObject({
      name: 'C-10',
      dueDay: 41,
      parameters: ['silver', 'plate count'],
    });
    expect(await refusal(holdAct(own, MEDIC, { act: 'release', of: ['C-10'] }))).toBe(
      'refused: intention-refused release',
    );
  });
});

describe('who drank', () => {
  let desk: Desk;
  const KEY = { opens: () => Promise.resolve(true) };
  beforeAll(async () => {
    // A result that comes late: two people drank of C-18 after its sample was drawn.
    desk = await deskOfLines(linesBefore('E0053'));
    await must(addSample(desk, KEEPER, { of: ['C-18'], sample: 'LATE-1' }, { at: 'D14T12:00' }));
    for (const [person, hour] of [
      ['second', 13],
      ['chief', 14],
    ] as const)
      await must(
        log(desk, KEEPER, { what: 'drink', amount: '300mL', from: 'C-18', person }, { at: `D14T${hour}:00` }),
      );
    await must(
      addResult(
        desk,
        KEEPER,
        { of: 'LATE-1', figures: { silver: '0.2mg/L', 'plate-count': '900' }, hold: 'all' },
        { at: 'D14T18:00', sure: true },
      ),
    );
  });

  test('with the key of the medic: who, when and how much', async () => {
    const { drank, trace } = await must(holdShow(desk, { hold: 'Q-01', drank: true, key: KEY }, NOW, MEDIC));
    const named = (drank ?? []).filter(({ person }) => person !== null);
    expect(named.map(({ person, at }) => [person, at])).toEqual([
      ['second', 'Day 14 13:00 UTC'],
      ['chief', 'Day 14 14:00 UTC'],
    ]);
    expect(named[0]?.volume.value).toBeCloseTo(0.3, 6);
    expect((trace?.drunk?.volume.value ?? 0) >= 0.6).toBe(true);
  });

  test('without it: refused, and nowhere else either', async () => {
    expect(await refusal(holdShow(desk, { hold: 'Q-01', drank: true }, NOW, MEDIC))).toBe(
      'refused: medics-code',
    );
    const wrong = { opens: () => Promise.resolve(false) };
    expect(await refusal(holdShow(desk, { hold: 'Q-01', drank: true, key: wrong }, NOW, MEDIC))).toBe(
      'refused: medics-code',
    );
    const shown = await must(holdShow(desk, { hold: 'Q-01' }, NOW, MEDIC));
    const outputs = [
      shown,
      holdText(shown, SCREEN),
      holdText(shown, { ...SCREEN, style: 'plain' }),
      await must(holdList(desk, NOW, KEEPER)),
      await must(qualityToday(desk, NOW, KEEPER)),
      await must(sampleShow(desk, { sample: 'LATE-1' }, NOW, KEEPER)),
      await must(today(desk, NOW, KEEPER)),
      await must(storeList(desk, NOW, KEEPER)),
      await must(allFindings(desk, NOW, KEEPER)),
    ].map((output) => (typeof output === 'string' ? output : JSON.stringify(output)));
    expect(outputs).toHaveLength(9);
    for (const output of outputs) expect(output).not.toMatch(/\b(?:second|chief)\b(?! OFFICE)(?!":null)/);
    // Control: the sheet of the medic has them, so that the search would find them.
    const medics = await must(holdShow(desk, { hold: 'Q-01', drank: true, key: KEY }, NOW, MEDIC));
    expect(JSON.stringify(medics)).toMatch(/"second"/);
    expect(holdText(medics, SCREEN)).toMatch(/\bchief\b/);
    expect(shown.trace?.touched.some(({ name }) => name === 'people')).toBe(false);
    expect(shown.trace?.drunk).not.toBeNull();
  });
});

test('the hold of the log, which names no sample, is followed from the result before it', async () => {
  const later = await deskOfLines(linesBefore('E0064'));
  const { sampleIsGuess, trace, ways, origins } = await must(holdShow(later, { hold: 'Q-01' }, NOW, KEEPER));
  expect({ sampleIsGuess, sample: trace?.sample }).toEqual({ sampleIsGuess: true, sample: 'SMP-03' });
  expect(ways.map(({ act }) => act)).toEqual(['sample', 'downgrade', 'waive', 'park']);
  expect(origins.find(({ store }) => store === 'C-13')?.parts).toMatchObject([
    { name: 'FA', visit: 'Pannier 8' },
  ]);
});
