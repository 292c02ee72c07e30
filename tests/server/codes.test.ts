// Codes over HTTP: the same rules, told with their own status, never given back, and not faster than people type.
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { codesOf, TestServer } from './harness.ts';

const CODE = '482159';
const OTHER = '739160';
let server: TestServer;
beforeEach(async () => {
  server = await TestServer.start();
});
afterEach(() => server.end());

const relabel = (store: string, second: object) => ({
  request: { what: 'relabel', store, grade: 'technical' },
  second: { office: 'second', ...second },
});
const set = (body: object) => server.ask('/api/codes', { body });
const log = (body: object) => server.ask('/api/log', { body });
const lineOf = ({ data }: { readonly data: never }): string => (data as { line: { text: string } }).line.text;

test('a code is set, listed without being told, and confirms; without it a second person is declared', async () => {
  expect(lineOf(await log(relabel('C-19', {})))).toContain('declared, not verified');
  const made = await set({ office: 'second', code: CODE });
  expect([made.status, lineOf(made)]).toEqual([201, 'code of the second set, the first one']);
  expect((await server.ask('/api/codes')).data).toMatchObject({
    offices: expect.arrayContaining([{ office: 'second', since: 'Day 46 21:00 UTC', waitsMs: 0 }]),
  });
  const done = await log(relabel('C-18', { code: CODE }));
  expect([done.status, lineOf(done)]).toEqual([
    201,
    expect.stringContaining('second person second, by own code'),
  ]);
  expect(lineOf(await log(relabel('C-17', {})))).toContain('declared, not verified');
});

test('a wrong code is 409 with its finding, keeps nothing, and after five the right one waits too', async () => {
  await set({ office: 'second', code: CODE });
  const digest = await server.digest();
  for (let k = 0; k < 5; k++) {
    const wrong = await log(relabel('C-19', { code: OTHER }));
    expect([wrong.status, codesOf(wrong)]).toEqual([409, ['code-wrong']]);
  }
  const waits = await log(relabel('C-19', { code: CODE }));
  expect([waits.status, codesOf(waits)]).toEqual([409, ['code-waits']]);
  expect(await server.digest()).toBe(digest);
});

test('what is only tried looks at no code', async () => {
  await set({ office: 'second', code: CODE });
  for (let k = 0; k < 8; k++) {
    const tried = await log({ ...relabel('C-19', { code: OTHER }), with: { dryRun: true } });
    expect(tried.status).toBe(200);
  }
  expect((await log(relabel('C-19', { code: CODE }))).status).toBe(201);
});

test('a change takes the old code; a lost one is set anew by two others', async () => {
  await set({ office: 'second', code: CODE });
  expect(codesOf(await set({ office: 'second', code: OTHER }))).toEqual(['code-old-missing']);
  expect(codesOf(await set({ office: 'second', code: OTHER, oldCode: '605172' }))).toEqual(['code-wrong']);
  expect(codesOf(await set({ office: 'second', code: '0000', oldCode: CODE }))).toEqual(['code-unfit']);
  expect((await set({ office: 'second', code: OTHER, oldCode: CODE })).status).toBe(201);
  await set({ office: 'medic', code: '605172' });
  const lost = { by: 'chief', second: 'medic', secondCode: '605172' };
  expect(codesOf(await set({ office: 'second', code: '271835', lost: { ...lost, by: 'keeper' } }))).toEqual([
    'code-lost-by',
  ]);
  const anew = await set({ office: 'second', code: '271835', lost });
  expect([anew.status, lineOf(anew)]).toEqual([
    201,
    'code of the second set, the old one was lost; second person medic, by own code',
  ]);
});

test('more than twenty codes a minute are 429, and say when there may be more', async () => {
  await set({ office: 'second', code: CODE });
  const statuses: number[] = [];
  for (let k = 0; k < 22; k++) {
    const answer = await log(relabel('C-19', { code: OTHER }));
    statuses.push(answer.status);
    if (answer.status === 429) expect(answer.headers['retry-after']).toBe('60');
  }
  expect(statuses.filter((status) => status === 429)).toHaveLength(3);
  expect(server.events.some(({ status, code }) => status === 429 && code === 'code-too-often')).toBe(true);
});

test('no answer, no event and no byte of the book has a code, whatever is wrong with the request', async () => {
  await set({ office: 'second', code: CODE });
  const answers = [
    await log(relabel('C-18', { code: CODE })),
    await log(relabel('C-19', { code: OTHER })),
    await log(relabel('C-19', { code: 739_160 })),
    await log(relabel('C-19', { code: OTHER.repeat(30) })),
    await log(relabel('C-19', { code: [OTHER] })),
    await log({ ...relabel('C-19', {}), second: OTHER }),
    await log({ ...relabel('C-19', { code: OTHER }), second: { office: 'cook', code: OTHER } }),
    await set({ office: 'medic', code: { is: OTHER } }),
    await set({ office: 'medic', code: OTHER, oldCode: 739_160 }),
    await set({ office: 'medic', code: OTHER, lost: OTHER }),
    await set({ office: 'medic', code: `${OTHER}x` }),
    await server.ask('/api/codes', {
      raw: `{"office":"medic","code":"${OTHER}" "more"}`,
      headers: { 'Content-Type': 'application/json' },
    }),
    await server.ask(`/api/codes`),
    await server.ask('/api/book?kind=code-set'),
  ];
  expect(answers.filter(({ status }) => status >= 400).length).toBeGreaterThan(8);
  for (const { text } of answers) for (const code of [CODE, OTHER]) expect(text).not.toContain(code);
  expect(JSON.stringify(server.events)).not.toMatch(new RegExp(`${CODE}|${OTHER}`));
  await server.serving.close();
  const bytes = readFileSync(server.path, 'latin1');
  expect(bytes).toContain('second_code');
  for (const code of [CODE, OTHER]) expect(bytes.includes(code)).toBe(false);
});
