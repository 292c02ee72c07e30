// The stock count at the desk: what the sheet hides, what is asked about, when two readings look swapped, and what comes into the book.
import { describe, expect, test } from 'vitest';
import { deskOver, NOW } from '../../tests/docs/gallery/asked-desk.ts';
import { HOLM } from '../../tests/journeys/holm.ts';
import { draftOf, holmBook, keep } from '../../tests/journeys/kept.ts';
import { at } from '../../tests/journeys/told.ts';
import { entryOf } from '../book/index.ts';
import { countInBook, finishCount } from './count-finish.ts';
import { readCounted } from './count-reading.ts';
import { beginCount, type CountUnderWay, countSheet } from './count-sheet.ts';
import type { Desk } from './desk.ts';

const PARTS = `parts:
  - { id: purifier bed, onDayOne: 2 }
  - { id: seal, onDayOne: 6 }
bottledOxygen: { onDayOneKg: 40, normalUseKgPerDay: 0.5, floorKg: 5, letsElectrolyserRunLower: false, approvedBy: keeper }
`;

async function holmDesk(): Promise<Desk> {
  const port = await holmBook(`${HOLM}${PARTS}`);
  // Two containers that differ enough for their labels to be told apart.
  await keep(port, [weighed('C-04', 20, 3), weighed('C-02', 8, 4)]);
  return deskOver(port);
}

function weighed(store: string, litres: number, count: number) {
  const amount = {
    massMg: litres * 1_000_000,
    raw: { value: litres, unit: 'L', mgPerUnit: 1_000_000 },
    uMg: 100_000,
  };
  return draftOf('weigh', { store, amount, instrument: 'balance' }, { atMs: at(1, 9), count });
}

async function begun(desk: Desk, typed: Readonly<Record<string, string>> = {}): Promise<CountUnderWay> {
  const count = await beginCount(desk, NOW, []);
  if (!count.ok) throw new Error(JSON.stringify(count.findings));
  return { ...count.value, typed: new Map(Object.entries(typed)) };
}

const codesOf = (answer: { ok: boolean; findings?: readonly { code: string }[] }) =>
  (answer.findings ?? []).map(({ code }) => code);

async function readOne(desk: Desk, name: string, text: string, isKept = false) {
  const read = await readCounted(desk, NOW, [{ name, text }], { keep: isKept });
  return read.ok ? (read.value[0] ?? null) : codesOf(read);
}

describe('the sheet', () => {
  test('has stores by the places in their order, parts last, and no figure of the book', async () => {
    const desk = await holmDesk();
    const sheet = await countSheet(desk, NOW, await begun(desk));
    if (!sheet.ok) throw new Error('no sheet');
    expect(sheet.value.places.map(({ place }) => place)).toEqual(['hut', 'yard', 'parts']);
    expect(sheet.value.places[2]?.items.map(({ id, unit }) => [id, unit])).toEqual([
      ['purifier bed', ''],
      ['seal', ''],
      ['bottled oxygen', 'kg'],
    ]);
    const { head, ...rest } = sheet.value;
    expect(head.day).toBe(2);
    expect(JSON.stringify(rest)).not.toMatch(/mass|volume|u95|value/);
  });

  test('of some places has those, and whatever was typed elsewhere', async () => {
    const desk = await holmDesk();
    const count = await beginCount(desk, NOW, ['YARD', 'parts']);
    if (!count.ok) throw new Error('not begun');
    const sheet = await countSheet(desk, NOW, { ...count.value, typed: new Map([['KB', '-']]) });
    const items = sheet.ok ? sheet.value.places.flatMap((place) => place.items.map(({ id }) => id)) : [];
    expect(items).toEqual(['KB', 'R1', 'W-01', 'W-02', 'purifier bed', 'seal', 'bottled oxygen']);
    expect(codesOf(await beginCount(desk, NOW, ['attic']))).toEqual(['not-in-book']);
  });
});

describe('a reading', () => {
  test('has the doubt that was typed, else that of the gauge of the store', async () => {
    const desk = await holmDesk();
    expect(await readOne(desk, 'c04', '20.1L+-1')).toMatchObject({ store: { counted: { u95: 1 } } });
    expect(await readOne(desk, 'c04', '20.1L')).toMatchObject({ store: { counted: { u95: 0.4 } } });
    expect(await readOne(desk, 'R1', '170L', true)).toMatchObject({ store: { counted: { u95: 3.2 } } });
    expect(await readOne(desk, 'c04', 'Not-Read')).toMatchObject({ text: '-', store: null });
  });

  test('is told by three verdicts, which stand at two and three standard deviations of both', async () => {
    const desk = await holmDesk();
    const exact = await readOne(desk, 'C-04', '20L+-0.2');
    const book = exact !== null && 'store' in exact ? exact.store?.book : undefined;
    const u = Math.sqrt(0.01 + ((book?.u95 ?? 0) / 2) * ((book?.u95 ?? 0) / 2));
    const verdictAt = async (sigmas: number) => {
      const text = `${((book?.value ?? 0) + sigmas * u).toFixed(6)}L+-0.2`;
      const one = await readOne(desk, 'C-04', text, true);
      return one !== null && 'store' in one ? one.store?.verdict : one;
    };
    expect(await Promise.all([1.99, 2.01, 2.99, 3.01, -1.99, -3.01].map(verdictAt))).toEqual([
      'agrees',
      'a little off',
      'a little off',
      'far off',
      'agrees',
      'far off',
    ]);
  });

  test('far off or over the capacity is asked about, and kept when that is said', async () => {
    const desk = await holmDesk();
    expect(await readOne(desk, 'C-04', '3L')).toEqual(['count-far-off']);
    expect(await readOne(desk, 'C-04', '30L')).toEqual(['count-over-capacity']);
    expect(await readOne(desk, 'C-04', '30L', true)).toMatchObject({
      store: { verdict: 'far off', overCapacity: true },
    });
  });

  test('all of a call are taken, or none, and each fault is told', async () => {
    const desk = await holmDesk();
    const said = (...pairs: readonly (readonly [string, string])[]) =>
      readCounted(
        desk,
        NOW,
        pairs.map(([name, text]) => ({ name, text })),
        { keep: false },
      );
    expect(codesOf(await said(['C-04', '3L'], ['C-02', '30L'], ['KB', '-']))).toEqual([
      'count-far-off',
      'count-over-capacity',
    ]);
    // What cannot be read comes before what is asked about.
    expect(codesOf(await said(['C-04', '3L'], ['C-02', '8'], ['seal', '1.5']))).toEqual([
      'unit-missing',
      'field-needed',
    ]);
  });

  test.each([
    ['seal', '-1'],
    ['seal', '1.5'],
    ['seal', '2000000'],
    ['bottled oxygen', '-3kg'],
  ])('of a part is a count: %s %s is none', async (part, text) => {
    expect(await readOne(await holmDesk(), part, text)).toEqual(['field-needed']);
  });

  test('bottled oxygen is weighed', async () => {
    expect(await readOne(await holmDesk(), 'bottled oxygen', '31.5kg')).toMatchObject({
      part: { count: 31.5, unit: 'kg' },
    });
  });
});

describe('the end', () => {
  test('is one entry with the readings and one for each part, under the id of the count', async () => {
    const desk = await holmDesk();
    const count = await begun(desk, { 'C-04': '20.1L', KB: '-', seal: '5', 'bottled oxygen': '31kg' });
    expect(await countInBook(desk, count)).toBeNull();
    const second = { office: 'medic', confirmation: 'declared, not verified' } as const;
    const done = await finishCount(desk, { ...NOW, second }, count);
    expect(done).toMatchObject({
      ok: true,
      value: { kept: true, entries: ['holm 5', 'holm 6', 'holm 7'], second },
    });
    const rows = await Promise.all([5, 6, 7].map((number) => desk.port.findNumber('holm', number)));
    const entries = rows.map((row) => (row === null ? null : entryOf(row)));
    expect(entries.map((entry) => entry?.kind)).toEqual(['stock-count', 'part-counted', 'part-counted']);
    expect(entries.every((entry) => entry?.second?.office === 'medic')).toBe(true);
    expect(entries[0]?.id).toBe(count.id);
    expect(entries[0]?.body).toMatchObject({ readings: [{ store: 'C-04', method: 'weighing' }] });
    expect(entries[2]?.body).toEqual({ part: 'bottled oxygen', count: 31, unit: 'kg' });
    expect(await countInBook(desk, count)).toBe('holm 5');
  });

  test('moves no water, and leaves the book as it was when it is only looked at or refused', async () => {
    const desk = await holmDesk();
    const count = await begun(desk, { 'C-04': '19L', seal: '5' });
    const before = await desk.port.count();
    const dry = await finishCount(desk, NOW, count, { dryRun: true });
    expect(dry).toMatchObject({ ok: true, value: { kept: false, entries: [] } });
    const twice = { ...NOW, second: { office: 'keeper', confirmation: 'declared, not verified' } as const };
    expect(codesOf(await finishCount(desk, twice, count))).toEqual(['second-is-first']);
    expect(codesOf(await finishCount(desk, { ...NOW, by: 'cook' }, count))).toEqual(['office-unknown']);
    expect(codesOf(await finishCount(desk, NOW, await begun(desk, { KB: '-' })))).toEqual(['count-empty']);
    expect(await desk.port.count()).toBe(before);
    const opened = await desk.account();
    const ledger = opened.ok ? opened.value.fold.ledger.balanceMg('store:C-04') : null;
    await finishCount(desk, NOW, count);
    expect(opened.ok ? opened.value.fold.ledger.balanceMg('store:C-04') : null).toBe(ledger);
  });

  test('says of two stores that they look swapped when each reading fits the other, and of no others', async () => {
    const desk = await holmDesk();
    const swapped = async (typed: Readonly<Record<string, string>>) => {
      const done = await finishCount(desk, NOW, await begun(desk, typed), { dryRun: true });
      return done.ok ? done.value.swapped : codesOf(done);
    };
    expect(await swapped({ 'C-04': '8L', 'C-02': '20L' })).toEqual([['C-02', 'C-04']]);
    expect(await swapped({ 'C-04': '8L', 'C-02': '8L' })).toEqual([]);
    expect(await swapped({ 'C-04': '12L', 'C-02': '16L' })).toEqual([]);
    expect(await swapped({ 'C-04': '20L', 'C-02': '8L' })).toEqual([]);
  });

  test('holds the readings against the book of the moment that they are told for', async () => {
    const desk = await holmDesk();
    await keep(desk.port as Parameters<typeof keep>[0], [
      draftOf(
        'movement',
        { from: 'C-04', to: 'outside', amount: amountOf(10) },
        { atMs: at(2, 10), count: 9 },
      ),
    ]);
    desk.forget();
    const typed = { 'C-04': '20L' };
    const verdictOf = async (more: { at?: string; yes?: boolean }) => {
      const done = await finishCount(desk, NOW, await begun(desk, typed), { ...more, dryRun: true });
      return done.ok ? done.value.stores[0]?.verdict : codesOf(done);
    };
    expect(await verdictOf({})).toBe('far off');
    expect(await verdictOf({ at: 'D2T09:30' })).toBe('agrees');
  });

  test('a count of another day is asked about, unless it only went past midnight', async () => {
    const desk = await holmDesk();
    const counted = { ...(await begun(desk, { 'C-04': '20L' })) };
    const finish = async (begunMs: number, more = {}) =>
      codesOf(await finishCount(desk, NOW, { ...counted, begunMs }, { ...more, dryRun: true }));
    expect(await finish(at(1, 23))).toEqual(['count-of-another-day']);
    expect(await finish(at(1, 23), { yes: true })).toEqual([]);
    expect(await finish(at(1, 23), { at: 'D1T23:30' })).toEqual([]);
    const early = { ...NOW, nowUtcMs: at(2, 0) + 1_800_000 };
    const past = await finishCount(desk, early, { ...counted, begunMs: at(1, 23) }, { dryRun: true });
    expect(past.ok).toBe(true);
  });

  test('a store that has left since it was read is told, and entered by nobody', async () => {
    const desk = await holmDesk();
    const done = await finishCount(desk, NOW, await begun(desk, { 'V-1': '3L', 'C-04': '20L' }));
    expect(done).toMatchObject({ ok: true, value: { gone: ['V-1'], entries: ['holm 5'] } });
  });
});

function amountOf(litres: number) {
  return { massMg: litres * 1_000_000, raw: { value: litres, unit: 'L', mgPerUnit: 1_000_000 } };
}
