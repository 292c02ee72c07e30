// Reading drafts: each fault is named by its field, and nothing that was not asked for gets in.
import { expect, test } from 'vitest';
import { makeDrafts } from '../../tests/contract/made-up-entries.ts';
import type { AnyDraft } from './entry.ts';
import { readDraft } from './validate.ts';

const [note] = makeDrafts(3, 200).filter(({ kind }) => kind === 'note') as [AnyDraft];

function faultsOf(change: object): string[] {
  const read = readDraft({ ...note, ...change }, { line: 9 });
  if (read.ok) return [];
  expect(read.findings.every(({ where }) => where.line === 9)).toBe(true);
  return read.findings.map(({ code, where }) => `${code} ${where.field ?? ''}`.trim());
}

test('drafts of every made-up kind are read as they are', () => {
  for (const draft of makeDrafts(4, 100)) expect(readDraft(draft)).toEqual({ ok: true, draft });
});

test.each([
  [{ kind: 'nota' }, ['kind-unknown kind']],
  [{ kind: '__proto__' }, ['kind-unknown kind']],
  [{ kind: 7 }, ['kind-unknown kind']],
  [{ version: 2 }, ['shape-newer']],
  [{ id: 'x' }, ['field-wrong id']],
  [{ id: note.id.toUpperCase() }, ['field-wrong id']],
  [{ happenedAtMs: 0.5 }, ['field-wrong happenedAtMs']],
  [{ happenedAtMs: Number.NaN }, ['field-wrong happenedAtMs']],
  [{ happenedAtMs: JSON.parse('1e400') }, ['field-wrong happenedAtMs']],
  [{ enteredOffsetMin: 841 }, ['field-wrong enteredOffsetMin']],
  [{ extra: 1 }, ['field-unknown extra']],
  [{ body: { text: 'a', more: 1 } }, ['field-unknown body.more']],
  [{ body: { text: '' } }, ['field-wrong body.text']],
  [{ body: { text: 'a\ud800' } }, ['field-wrong body.text']],
  [{ by: '', crewMinutes: -1 }, ['field-wrong by', 'field-wrong crewMinutes']],
])('%o is refused', (change, faults) => {
  expect(faultsOf(change).toSorted()).toEqual(faults);
});

test('the number of a site is given by the book, not by the one who writes', () => {
  expect(faultsOf({ site: 'corrie', number: 1 })).toEqual(['field-unknown site', 'field-unknown number']);
});

test('a correction that is too deep, or that reaches for a prototype, changes nothing', () => {
  const correct = (body: unknown) => ({
    kind: 'correction',
    body: { target: note.id, reason: 'slip', body },
  });
  let deep: unknown = 1;
  for (let depth = 0; depth < 40; depth++) deep = { a: deep };
  expect(faultsOf(correct(deep))).toHaveLength(1);
  const read = readDraft({ ...note, ...correct(JSON.parse('{"__proto__":{"polluted":1},"text":"b"}')) });
  expect(({} as { polluted?: number }).polluted).toBeUndefined();
  expect(read.ok && (read.draft.body as { body: { polluted?: number } }).body.polluted).toBeFalsy();
});

test('what is no object is no draft', () => {
  for (const value of [null, 1, 'note', [], undefined]) expect(readDraft(value)).toMatchObject({ ok: false });
});

test.each([
  [{ by: 7 }, { wanted: 'text', received: '7' }],
  [{ version: 0.5 }, { wanted: 'whole-number', received: '0.5' }],
  [{ version: Number.NaN }, { received: 'NaN' }],
  [{ version: 0 }, { wanted: 'at-least', limit: 1, received: '0' }],
  [{ enteredOffsetMin: 900 }, { wanted: 'at-most', limit: 840, received: '900' }],
  [{ by: '' }, { wanted: 'longer', limit: 1, received: '""' }],
  [{ by: 'k'.repeat(201) }, { wanted: 'shorter', limit: 200 }],
  [{ id: 'x' }, { wanted: 'form', received: '"x"' }],
  [{ by: undefined }, { wanted: 'text', received: null }],
  [{ body: [] }, { wanted: 'section', received: 'a list' }],
  [{ second: { office: 'medic', confirmation: 'yes' } }, { wanted: 'one-of', received: '"yes"' }],
  [{ body: { text: '\udc00' } }, { wanted: 'whole-characters' }],
])('a wrong field says what was wanted and what stands there: %o', (change, data) => {
  const read = readDraft({ ...note, ...change });
  expect(read).toMatchObject({ ok: false, findings: [{ code: 'field-wrong', data }] });
});
