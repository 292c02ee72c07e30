// The whole practice log: every line understood, the same drafts from any order of lines, and nothing added by a second reading.
import { expect, test } from 'vitest';
import {
  CORRIE_INDEX,
  corrieReader,
  LOG_LINES,
  LOG_OBJECTS,
  lineWith,
} from '../../../tests/field-log/corrie-log.ts';
import { type AnyDraft, keepDrafts, MemoryStore, plainHash, readDraft } from '../../book/index.ts';
import { msPerDay, parseInstantIso } from '../../ground/units/index.ts';
import { readFieldLog } from './index.ts';

const readCorrie = corrieReader(readFieldLog);
const whole = readCorrie();
const DAY_ONE_MS = Date.UTC(2147, 2, 1);

function refsOf(drafts: readonly AnyDraft[]): (string | undefined)[] {
  return drafts.map((draft) => draft.origin?.ref);
}

function utcMs(text: unknown): number {
  const read = parseInstantIso(String(text));
  if (!read.ok) throw new Error(`${text} is no time`);
  return read.instant.utcMs;
}

test('248 lines become 248 entries without a finding', () => {
  expect(LOG_LINES.length).toBe(248);
  expect(whole.findings).toEqual([]);
  expect(whole.notUnderstood).toEqual([]);
  expect(whole).toMatchObject({ understood: 248, later: 0 });
  expect(whole.drafts.length).toBe(248);
});

test('every draft has the shape that the book asks for', () => {
  for (const draft of whole.drafts) {
    const read = readDraft(JSON.parse(JSON.stringify(draft)));
    expect(read.ok ? read.draft : read.findings).toEqual(draft);
  }
});

test('entries stand in the order of writing, and each knows its line', () => {
  const ids = LOG_OBJECTS.map((line) => String(line['id'])).sort();
  expect(refsOf(whole.drafts)).toEqual(ids);
  for (const draft of whole.drafts) {
    const line = whole.lineOf.get(draft.id) ?? 0;
    expect(LOG_OBJECTS[line - 1]?.['id']).toBe(draft.origin?.ref);
  }
});

test('happened is t, and the stocks of the opening are those of its as_of', () => {
  const [opening, ...others] = whole.drafts;
  expect(opening).toMatchObject({ kind: 'opening', happenedAtMs: utcMs('2147-02-28T21:00Z') });
  for (const draft of others) {
    const line = LOG_OBJECTS.find(({ id }) => id === draft.origin?.ref);
    expect(draft.happenedAtMs).toBe(utcMs(line?.['t']));
    expect(draft.happenedOffsetMin).toBe(0);
  }
});

test('entered is the latest t of all lines written until then: 120 lines differ, by 23 h 5 min at most', () => {
  const differing = whole.drafts.map((draft) => {
    const line = LOG_OBJECTS.find(({ id }) => id === draft.origin?.ref);
    return draft.enteredAtMs - utcMs(line?.['t']);
  });
  expect(Math.min(...differing)).toBe(0);
  expect(differing.filter((ms) => ms !== 0).length).toBe(120);
  expect(Math.max(...differing)).toBe((23 * 60 + 5) * 60_000);
  // Checked by the plain sentence of the rule, in the order of the file.
  for (const draft of whole.drafts) {
    const until = LOG_OBJECTS.filter(({ id }) => String(id) <= String(draft.origin?.ref));
    expect(draft.enteredAtMs).toBe(Math.max(...until.map((line) => utcMs(line['t']))));
  }
});

test('a late copy is known from when it was written on', () => {
  const copy = whole.drafts.find((draft) => draft.origin?.ref === 'E0035');
  expect(copy).toMatchObject({
    happenedAtMs: utcMs('2147-03-09T14:46Z'),
    enteredAtMs: utcMs('2147-03-09T14:46Z'),
    source: 'ground copy of voice log',
    note: 'from the voice loop',
    crewMinutes: 24,
    by: 'keeper',
  });
});

test.each([1, 2, 3])('lines in another order give the same drafts (shuffle %i)', (seed) => {
  const shuffled = [...LOG_LINES];
  let state = seed * 7919;
  for (let k = shuffled.length - 1; k > 0; k--) {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    const other = state % (k + 1);
    [shuffled[k], shuffled[other]] = [shuffled[other] ?? '', shuffled[k] ?? ''];
  }
  expect(shuffled).not.toEqual(LOG_LINES);
  expect(readCorrie(shuffled).drafts).toEqual(whole.drafts);
});

test('until D46 takes what happened up to the end of Day 46, and takes it as the whole log has it', () => {
  const part = readCorrie(LOG_LINES, { until: { day: 46 } });
  const last = LOG_OBJECTS.filter(({ day }) => Number(day) <= 46);
  expect(part.findings).toEqual([]);
  expect(part.understood).toBe(248);
  expect(part.later).toBe(248 - last.length);
  expect(part.later).toBeGreaterThan(0);
  expect(new Set(refsOf(part.drafts))).toEqual(new Set(last.map(({ id }) => id)));
  const endMs = DAY_ONE_MS + 46 * msPerDay;
  expect(Math.max(...part.drafts.map((draft) => draft.happenedAtMs))).toBeLessThan(endMs);
  const ids = new Set(part.drafts.map((draft) => draft.id));
  expect(part.drafts).toEqual(whole.drafts.filter((draft) => ids.has(draft.id)));
});

test('until a day before the log begins takes nothing', () => {
  expect(readCorrie(LOG_LINES, { until: { day: 0 } })).toMatchObject({ drafts: [], later: 248 });
});

function emptyBook(): MemoryStore {
  return new MemoryStore({ bookId: 'test', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
}
const keeping = { hash: plainHash, keptAtMs: 0 };

test('a part, then the whole, then the whole again: each line is kept once', async () => {
  const port = emptyBook();
  const part = readCorrie(LOG_LINES, { until: { day: 46 } }).drafts;
  expect(await keepDrafts(port, part, keeping)).toMatchObject({ ok: true, kept: { length: part.length } });
  const rest = 248 - part.length;
  expect(await keepDrafts(port, whole.drafts, keeping)).toMatchObject({ ok: true, kept: { length: rest } });
  expect(await keepDrafts(port, readCorrie().drafts, keeping)).toMatchObject({
    ok: true,
    kept: [],
    alreadyKept: { length: 248 },
  });
  expect(await port.count()).toBe(248);
});

test('entry numbers follow the order of writing', async () => {
  const port = emptyBook();
  const outcome = await keepDrafts(port, whole.drafts, keeping);
  if (!outcome.ok) throw new Error('not kept');
  expect(outcome.kept.map(({ number, origin }) => [number, origin?.ref])).toEqual(
    whole.drafts.map((draft, k) => [k + 1, draft.origin?.ref]),
  );
});

test('an edited line is refused by the book, and the book stays as it was', async () => {
  const port = emptyBook();
  await keepDrafts(port, whole.drafts, keeping);
  const heads = await port.heads();
  const edited = LOG_OBJECTS.map((line) =>
    line['id'] === 'E0020' ? lineWith('E0020', { litres: 19.5 }) : line,
  );
  const outcome = await keepDrafts(port, readCorrie(edited).drafts, keeping);
  expect(outcome).toMatchObject({ ok: false, findings: [{ code: 'id-reused', data: { ref: 'E0020' } }] });
  expect(await port.heads()).toEqual(heads);
});

test('a log that grew in the middle brings only its new lines', () => {
  const grown = [...LOG_LINES.slice(0, 100), JSON.stringify(lateLine()), ...LOG_LINES.slice(100)];
  const read = readCorrie(grown);
  const ids = new Set(whole.drafts.map((draft) => draft.id));
  expect(read.drafts.filter((draft) => ids.has(draft.id))).toEqual(whole.drafts);
  expect(refsOf(read.drafts.filter((draft) => !ids.has(draft.id)))).toEqual(['E0249']);
});

/** Written at the end, about a day in the middle. */
function lateLine() {
  return lineWith('E0006', { id: 'E0249', t: '2147-03-20T10:15Z', day: 20, store: 'C-10' });
}

const earlier = {
  dayOneMs: DAY_ONE_MS,
  openingMs: utcMs('2147-02-28T21:00Z'),
  lines: whole.drafts.slice(0, 200).map((draft) => ({
    ref: draft.origin?.ref ?? '',
    enteredAtMs: draft.enteredAtMs,
  })),
};

test('a part without an opening line goes on with what the book knows', () => {
  const known = new Set(earlier.lines.map(({ ref }) => ref));
  const rest = LOG_OBJECTS.filter(({ id }) => !known.has(String(id)));
  expect(readCorrie(rest, { context: earlier })).toMatchObject({
    understood: 48,
    findings: [],
    drafts: whole.drafts.slice(200),
  });
  expect(readCorrie(rest).drafts).toEqual([]);
});

test('with the lines of the book beside it, a late line of a later part is not known too early', () => {
  const [alone] = readCorrie([lateLine()], { context: { dayOneMs: DAY_ONE_MS } }).drafts;
  const [beside] = readCorrie([lateLine()], { context: earlier }).drafts;
  expect(alone?.enteredAtMs).toBe(utcMs('2147-03-20T10:15Z'));
  expect(beside?.enteredAtMs).toBe(earlier.lines.at(-1)?.enteredAtMs);
});

test('stores and vehicles that came before may be named in a later part', () => {
  const bag = lineWith('E0006', { id: 'E0300', store: 'V-77' });
  const leaves = lineWith('E0181', { id: 'E0301', vehicle: 'Skiff 2', took: ['V-77'] });
  const unknown = readCorrie([bag, leaves], { context: earlier });
  expect(unknown.findings.map(({ code }) => code)).toEqual([
    'log-name-unknown',
    'log-vehicle-unknown',
    'log-name-unknown',
  ]);
  const context = { ...earlier, stores: ['V-77'], vehicles: ['Skiff 2'] };
  expect(readCorrie([bag, leaves], { context })).toMatchObject({ findings: [], understood: 2 });
});

test('a log that counts its days from another date than the book is refused whole', () => {
  const context = { ...earlier, dayOneMs: DAY_ONE_MS - msPerDay };
  expect(readCorrie(LOG_LINES, { context })).toMatchObject({
    drafts: [],
    understood: 0,
    findings: [{ code: 'log-opening-other', where: { line: 1, field: 'day_1' } }],
  });
});

test('a store that only a visit brings is known, and gets the kind that its line shows', () => {
  const [tank, ...rest] = lineWith('E0016')['stores'] as Record<string, unknown>[];
  const stores = [
    { ...tank, id: 'FX' },
    { ...rest[1], id: 'C-77' },
  ];
  const bags = [{ ...(lineWith('E0152')['water_bags'] as Record<string, unknown>[])[0], id: 'V-77' }];
  const read = readCorrie([
    lineWith('E0001'),
    lineWith('E0016', { stores }),
    lineWith('E0152', { water_bags: bags }),
    lineWith('E0020', { from: 'FX', to: 'C-77' }),
  ]);
  expect(read.findings).toEqual([]);
  const brought = read.drafts.flatMap((draft) => (draft.kind === 'visit-berth' ? draft.body.stores : []));
  expect(brought.map(({ store, kind }) => [store, kind])).toEqual([
    ['FX', 'vehicleTank'],
    ['C-77', 'container'],
    ['V-77', 'softBag'],
  ]);
  expect(CORRIE_INDEX.stores.has('FX')).toBe(false);
});

test('amounts are whole milligrams by the stated density, with the raw reading and the doubt beside them', () => {
  const top = whole.drafts.find((draft) => draft.origin?.ref === 'E0039');
  expect(top).toMatchObject({
    kind: 'movement',
    body: {
      amount: { massMg: 22_949_400, uMg: 498_900, raw: { value: 23, unit: 'L', mgPerUnit: 997_800 } },
    },
  });
  const dose = whole.drafts.find((draft) => draft.origin?.ref === 'E0064');
  expect(dose).toMatchObject({
    kind: 'dose',
    body: { doseEach: { massMg: 9978, raw: { value: 10, unit: 'mL', mgPerUnit: 997.8 } }, biocide: 'silver' },
  });
});

test('an offset in the text of a time is kept', () => {
  const read = readCorrie([lineWith('E0001'), lineWith('E0005', { t: '2147-03-03T02:01+05:30' })]);
  expect(read.drafts[1]).toMatchObject({
    happenedAtMs: utcMs('2147-03-02T20:31Z'),
    happenedOffsetMin: 330,
    enteredOffsetMin: 330,
  });
});

test('what was in a receiver before is kept with whether it had been emptied', () => {
  const was = (value: string) => {
    const read = readCorrie([lineWith('E0001'), lineWith('E0049', { was: value })]);
    const body = read.drafts[1]?.body as Record<string, unknown>;
    return [body['receiverWas'], body['receiverWasEmptied']];
  };
  expect(was('D0')).toEqual(['drinking', true]);
  expect(was('T')).toEqual(['technical', false]);
  expect(was('-')).toEqual([undefined, true]);
});

test('a release without its hold is one from any hold', () => {
  const read = readCorrie([lineWith('E0001'), lineWith('E0087', { hold: undefined })]);
  expect(read.findings).toEqual([]);
  expect(read.drafts[1]?.body).not.toHaveProperty('hold');
});
