// Samples, results and holds as a keeper types them: the tree before anything is written, the three ways, and the ways out.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { linesBefore } from '../../quality/before-result.ts';
import { expectGolden } from '../record.ts';
import { Console, record } from './console.ts';
import { QUALITY_SESSIONS } from './quality-sessions.ts';

let console: Console;
beforeEach(async () => {
  console = await new Console().withPractice();
});
afterEach(() => console.end());

async function recordOf(...lines: readonly string[]): Promise<string> {
  const parts: string[] = [];
  for (const line of lines) parts.push(record(line, await console.run(line)));
  return parts.join('\n');
}

test.each(Object.entries(QUALITY_SESSIONS))('%s', async (name, lines) => {
  expectGolden(`cli/quality/${name}.txt`, await recordOf(...lines));
});

const BAD =
  'waterwright sample result SMP-03 --silver 0.03mg/L --plate-count 140 --toc 0.6mg/L --cond 212uS/cm --at D14T16:20 --book before.book';

describe('the bad result of Day 14', () => {
  beforeEach(async () => {
    console.write('before.jsonl', `${linesBefore('E0053').join('\n')}\n`);
    const begun = await console.run('waterwright init --practice --until D13 --book before.book');
    expect(begun.code).toBe(0);
    expect((await console.run('waterwright import before.jsonl --yes --book before.book')).code).toBe(0);
  });

  test('looked at, refused without a word, held, and seen on Today', async () => {
    const before = console.digests();
    const looked = [await recordOf(`${BAD} --dry-run`), await recordOf(BAD)];
    expect(console.digests()).toEqual(before);
    const held = await recordOf(`${BAD} --hold all`, 'waterwright today --book before.book');
    expectGolden('cli/quality/bad-result.txt', [...looked, held].join('\n'));
  });

  test('a person at the terminal is asked which of the three; to cancel leaves every file as it was', async () => {
    const before = console.digests();
    const cancelled = await console.run(BAD, { replies: ['3'] });
    expect(cancelled).toMatchObject({ code: 130, out: '' });
    expect(cancelled.err).toMatch(/8\sstores, 164/);
    expect(console.digests()).toEqual(before);
    const ended = await console.run(BAD, { replies: [] });
    expect(ended.code).toBe(130);
    expect(console.digests()).toEqual(before);
    const all = await console.run(BAD, { replies: ['1'] });
    expect(all.code).toBe(0);
    expect(all.out).toMatch(/Q-01 on C-05/);
    expect(console.digests()).not.toEqual(before);
  });

  test('fewer: the stores, why, and a second person', async () => {
    const before = console.digests();
    const alone = await console.run(BAD, { replies: ['2', 'C-13', 'the others were drawn before'] });
    expect(alone.code).toBe(4);
    expect(console.digests()).toEqual(before);
    const two = await console.run(`${BAD} --second second`, {
      replies: ['2', 'c13 c14', 'the others were drawn before'],
    });
    expect(two.code).toBe(0);
    const list = await console.run('waterwright hold list --json --book before.book');
    const [hold] = (JSON.parse(list.out) as { data: { holds: { stores: { store: string }[] }[] } }).data
      .holds;
    expect(hold?.stores.map(({ store }) => store)).toEqual(['C-13', 'C-14']);
  });
});
