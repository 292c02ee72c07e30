// Results and samples that cannot well be true: each with its finding, and nothing changed.
import { beforeAll, describe, expect, test } from 'vitest';
import {
  addResult,
  addSample,
  type Desk,
  type ResultRequest,
  sampleList,
  sampleShow,
} from '../../src/desk/index.ts';
import { practiceDesk } from '../field-log/practice-desk.ts';
import { KEEPER, must, refusal } from './before-result.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await practiceDesk();
});
const NOW = { kind: 'now' } as const;

const say = (request: ResultRequest, more = {}) => refusal(addResult(desk, KEEPER, request, more));
const silver = (text: string): ResultRequest => ({ of: 'C-02', figures: { silver: text } });

test.each([
  ['a unit of something else', silver('0.03 CFU/mL'), 'figure-unread unit does not fit'],
  ['a unit that is none', silver('0.03 mg/gal'), 'figure-unread unit unknown'],
  ['a mass without a unit', silver('0.03'), 'figure-unread unit missing'],
  ['below nothing', silver('-0.03 mg/L'), 'figure-unread negative'],
  ['more than any water holds', silver('30000 g/L'), 'figure-unread too large'],
  ['no number', silver('low'), 'figure-unread number'],
  ['a basis that does not go with it', silver('0.03 mg/L at 25 °C'), 'figure-unread basis does not fit'],
  ['nitrate without its basis', { of: 'C-02', values: ['nitrate=3 mg/L'] }, 'figure-unread basis missing'],
  ['a parameter that is not known', { of: 'C-02', figures: { silvr: '0.2mg/L' } }, 'parameter-unknown'],
  [
    'two figures of one parameter',
    { of: 'C-02', figures: { silver: '0.2mg/L' }, values: ['silver=0.3 mg/L'] },
    'result-contradicts',
  ],
  ['a second word on a sample', { of: 'SMP-05', figures: { silver: '0.3mg/L' } }, 'result-contradicts'],
] as const)('%s', async (_, request, said) => {
  const entries = await desk.port.count();
  expect(await say(request as ResultRequest)).toBe(`bad input: ${said}`);
  expect(await desk.port.count()).toBe(entries);
});

describe('names and times', () => {
  test('an unknown bottle is told with the nearest', async () => {
    const answer = await addResult(desk, KEEPER, { of: 'SMP-99', figures: { silver: '0.2mg/L' } });
    expect(answer).toMatchObject({ ok: false, problem: 'not in book', findings: [{ code: 'not-in-book' }] });
  });

  test('a result of another store than its sample, and one from before it', async () => {
    expect(await say({ of: 'SMP-03', store: 'C-14', values: ['nitrate=3 mg/L as N'] })).toBe(
      'bad input: sample-of-other',
    );
    expect(await say({ of: 'SMP-05', values: ['nitrate=3 mg/L as N'] }, { at: 'D16T12:00' })).toBe(
      'bad input: result-before-sample',
    );
    expect(await say({ ...silver('0.2mg/L'), taken: 'D60T23:00' }, { at: 'D60T22:00' })).toBe(
      'bad input: result-before-sample',
    );
  });

  test('a sample of a day that has not come is asked about', async () => {
    expect(await refusal(addSample(desk, KEEPER, { of: ['R2'] }, { at: 'D70' }))).toBe(
      'ask first: time-ahead',
    );
  });
});

test('a figure far from what was read so far is asked about: 860 or 86?', async () => {
  const asked = addResult(desk, KEEPER, { of: 'product', figures: { cond: '860uS/cm' } });
  expect(await refusal(asked)).toBe('ask first: reading-unusual');
  const answer = await asked;
  const [finding] = answer.ok ? [] : answer.findings;
  expect(finding).toMatchObject({ severity: 'know', data: { value: 860, fits: 86 } });
  // What is usual is asked about by nobody.
  expect(
    await must(addResult(desk, KEEPER, { of: 'product', figures: { cond: '88uS/cm' } }, { dryRun: true })),
  ).toMatchObject({
    findings: [],
    fails: [],
  });
});

describe('a sample', () => {
  test('gets the next name of the series and the tests that a release needs', async () => {
    const own = await practiceDesk();
    const { line, also } = await must(addSample(own, KEEPER, { of: ['R2', 'c02'], volume: '10mL' }));
    expect([line.text, also?.[0]?.text]).toEqual([
      expect.stringContaining('sample SMP-13: 10\u00A0mL of R2'),
      expect.stringContaining('sample SMP-14'),
    ]);
    const { samples } = await must(sampleList(own, {}, NOW, KEEPER));
    expect(samples.at(-2)).toMatchObject({
      sample: 'SMP-13',
      state: 'waits',
      place: 'R2',
      open: ['silver', 'plate count'],
    });
    expect(await refusal(addSample(own, KEEPER, { of: ['R2'], sample: 'smp 13' }))).toBe(
      'bad input: name-taken',
    );
    // A result of its store, and not of it: which one is meant is asked.
    expect(await refusal(addResult(own, KEEPER, { of: 'R2', figures: { silver: '0.2mg/L' } }))).toBe(
      'ask first: sample-waits',
    );
    await must(
      addResult(
        own,
        KEEPER,
        { of: 'SMP-13', figures: { silver: '<0.5mg/L', 'plate-count': '2' } },
        { dryRun: true },
      ),
    );
    const kept = await must(
      addResult(own, KEEPER, { of: 'SMP-13', figures: { silver: '0.2mg/L', 'plate-count': '2' } }),
    );
    expect(kept.figures.map(({ verdict }) => verdict)).toEqual(['within', 'within']);
  });

  test('shows what it touched where it failed', async () => {
    const { sample, tree } = await must(sampleShow(desk, { sample: 'smp03' }, NOW, KEEPER));
    expect(sample).toMatchObject({
      state: 'failed',
      drawnFrom: expect.stringContaining('fill hose'),
      speaksOf: ['FA'],
    });
    expect(tree?.trace.touched.map(({ name }) => name)).toContain('electrolyser');
  });

  test('a result without a sample of its own, and a censored one, are samples too', async () => {
    const { samples, due } = await must(sampleList(desk, { most: 100 }, NOW, KEEPER));
    expect(samples.find(({ sample }) => sample === 'TOC-35')).toMatchObject({
      state: 'passed',
      place: 'product',
    });
    expect(samples.find(({ sample }) => sample === 'SMP-06')).toMatchObject({ state: 'failed' });
    expect(due.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['plate count at the dispenser', 'TOC of the product']),
    );
    const toc = due.find(({ name }) => name === 'TOC of the product');
    expect(toc).toMatchObject({ lastDay: 54, dueDay: 61, overdueDays: 0 });
  });
});
