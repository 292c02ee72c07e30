// The bad result of Day 14 as the keeper enters it: what it holds is shown before anything is kept, and kept as one.
import { beforeEach, describe, expect, test } from 'vitest';
import type { Desk as DeskType } from '../../src/desk/index.ts';
import { type Desk, holdAct, holdList, log, storeShow, today } from '../../src/desk/index.ts';
import {
  addBad,
  deskOfLines,
  EIGHT,
  KEEPER,
  linesBefore,
  linesOfDays,
  MEDIC,
  must,
  refusal,
  withSecond,
} from './before-result.ts';

const NOW = { kind: 'now' } as const;
let desk: DeskType;
beforeEach(async () => {
  desk = await deskOfLines(linesBefore('E0053'));
});

async function rowsOf({ port }: Desk): Promise<string> {
  const texts: string[] = [];
  for await (const rows of port.scan({ order: 'total' }))
    for (const { text, seal } of rows) texts.push(`${seal} ${text}`);
  return texts.join('\n');
}

describe('before it is kept', () => {
  test('it proposes exactly the eight containers and R2 as conditional, and nobody drank', async () => {
    const { tree, asks, kept, fails } = await must(addBad(desk, {}, { dryRun: true }));
    expect([...(tree?.hold ?? [])].sort()).toEqual(EIGHT);
    expect(tree?.conditional).toEqual(['R2']);
    expect(Math.abs((tree?.heldVolume.value ?? 0) - 164)).toBeLessThan(3);
    expect(tree?.trace.drunk).toBeNull();
    expect({ asks, kept, fails }).toEqual({ asks: true, kept: false, fails: ['plate count', 'silver'] });
    const reserve = tree?.trace.touched.find(({ name }) => name === 'R2');
    expect(reserve).toMatchObject({ fate: 'conditional', path: [{ from: 'FA', hose: 'H-2' }] });
    expect(Math.abs((reserve?.suspect.value ?? 0) - 23)).toBeLessThan(0.3);
  });

  test('it shows free drinking water and cover before and after, with what they rest on', async () => {
    const { tree } = await must(addBad(desk, {}, { dryRun: true }));
    const [effect] = tree?.effect ?? [];
    expect(tree?.effect.map(({ grade }) => grade)).toEqual(['drinking']);
    expect(Math.abs((effect?.before.free.value ?? 0) - 243)).toBeLessThan(3);
    // Before the day's line: the use of Day 14 is still in it.
    expect(Math.abs((effect?.after.free.value ?? 0) - 84.6)).toBeLessThan(2);
    expect(Math.abs((effect?.after.q05 ?? 0) - 18.5)).toBeLessThan(2);
    expect(effect?.before.q05 ?? 0).toBeGreaterThan(2.5 * (effect?.after.q05 ?? 0));
    expect(effect?.before.because.method).toBe('cover');
  });

  test('at the line of Day 14 it would leave 80 L', async () => {
    const later = await deskOfLines(linesOfDays(14, ['E0053', 'E0054']));
    const { tree } = await must(addBad(later, {}, { dryRun: true }));
    expect(Math.abs((tree?.effect[0]?.after.free.value ?? 0) - 80)).toBeLessThan(2);
    expect([...(tree?.hold ?? [])].sort()).toEqual(EIGHT);
  });

  test('a look, a refusal and a cancel leave the book as it was, to the last sign', async () => {
    const before = await rowsOf(desk);
    await must(addBad(desk, {}, { dryRun: true }));
    expect(await refusal(addBad(desk))).toBe('refused: hold-undecided');
    expect(await rowsOf(desk)).toBe(before);
  });
});

describe('kept', () => {
  test('result and hold stand together, and the account has nothing to ask of the sample', async () => {
    const entries = await desk.port.count();
    const { kept, entry } = await must(addBad(desk, { hold: 'all' }));
    expect(kept).toBe(true);
    expect([entry.line.kind, ...(entry.also ?? []).map(({ kind }) => kind)]).toEqual(['result', 'hold']);
    expect(await desk.port.count()).toBe(entries + 2);
    const opened = await must(desk.account());
    expect(opened.fold.badResults).toEqual([]);
    const sheet = await must(today(desk, NOW, KEEPER));
    const held = sheet.stores.filter(({ mark }) => mark === 'HOLD').map(({ id }) => id);
    expect(held.sort()).toEqual(EIGHT);
    expect(sheet.stores.find(({ id }) => id === 'R2')?.mark).toBe('CONDITIONAL');
    const { holds } = await must(holdList(desk, NOW, KEEPER));
    expect(holds).toMatchObject([{ hold: 'Q-01', sample: 'SMP-03' }]);
  });

  test('none of both, where the store of entries fails in between', async () => {
    const before = await rowsOf(desk);
    const { append } = desk.port;
    desk.port.append = () => Promise.reject(new Error('no room'));
    await expect(addBad(desk, { hold: 'all' })).rejects.toThrow('no room');
    desk.port.append = append;
    expect(await rowsOf(desk)).toBe(before);
  });

  test('fewer needs a reason and a second person, and says whom it left free', async () => {
    const fewer = { hold: ['c13'] };
    expect(await refusal(addBad(desk, fewer))).toBe('wrong use: field-needed');
    const reason = 'the others were drawn before';
    expect(await refusal(addBad(desk, { ...fewer, reason }))).toBe('refused: second-needed');
    expect(await refusal(addBad(desk, { hold: ['C-02'], reason }))).toBe('bad input: hold-not-proposed');
    const kept = await must(addBad(desk, { ...fewer, reason }, {}, withSecond(KEEPER, 'second')));
    expect(kept.kept).toBe(true);
    const [hold] = (await must(holdList(desk, NOW, KEEPER))).holds;
    expect(hold?.stores.map(({ store }) => store)).toEqual(['C-13']);
    expect(hold?.leftFree).toEqual(
      expect.arrayContaining([...EIGHT.filter((store) => store !== 'C-13'), 'R2']),
    );
  });

  test('a second person who is the first is none', async () => {
    const told = { hold: ['C-13'], reason: 'the others were drawn before' };
    expect(await refusal(addBad(desk, told, {}, withSecond(KEEPER, 'keeper')))).toBe(
      'refused: second-is-first',
    );
  });
});

describe('on Day 19', () => {
  let later: DeskType;
  beforeEach(async () => {
    later = await deskOfLines(linesBefore('E0087'));
  });

  test('all eight at once are refused with the store that fails and why; seven are released, C-06 is downgraded', async () => {
    const asked = holdAct(later, MEDIC, { act: 'release', of: ['Q-01'] });
    const answer = await asked;
    expect(await refusal(asked)).toBe('refused: intention-refused release');
    const reasons = answer.ok ? [] : (answer.findings[0]?.data['reasons'] as string[]);
    expect(reasons).toContain('C-06: plate count: above');
    expect(reasons.some((reason) => reason.startsWith('C-05'))).toBe(false);
    const seven = EIGHT.filter((store) => store !== 'C-06');
    expect(await refusal(holdAct(later, KEEPER, { act: 'release', of: ['Q-01', ...seven] }))).toBe(
      'refused: intention-refused releases',
    );
    await must(holdAct(later, MEDIC, { act: 'release', of: ['Q-01', ...seven] }));
    const down = await must(holdAct(later, KEEPER, { act: 'downgrade', hold: 'Q-01', store: 'c06' }));
    expect(down.became).toContain('C-06 is technical from now on; it was drinking.');
    const [hold] = (await must(holdList(later, NOW, KEEPER))).holds;
    expect(hold?.stores.map(({ store, as }) => [store, as])).toEqual([['R2', 'conditional']]);
    const shown = await must(storeShow(later, { store: 'C-05' }, NOW, KEEPER));
    expect(shown.quality).toMatchObject({
      word: 'RELEASED',
      released: { by: 'medic', samples: ['SMP-05'], over: false },
    });
    expect(shown.quality.words[0]).toMatch(
      /^Released by medic Day 19 .* until .* Nothing in the book speaks against it\.$/,
    );
    const other = await must(storeShow(later, { store: 'C-06' }, NOW, KEEPER));
    expect(other.quality.downgraded).toMatchObject({ by: 'keeper', fromGrade: 'drinking' });
  });

  test('a release that has happened without proof is kept, and the store stays on hold', async () => {
    const kept = await must(
      holdAct(later, MEDIC, { act: 'release', of: ['Q-01', 'C-06'] }, { happened: 'told on the loop' }),
    );
    expect(kept.findings.map(({ code }) => code)).toContain('release-unproven');
    const shown = await must(storeShow(later, { store: 'C-06' }, NOW, KEEPER));
    expect(shown.quality.word).toBe('HOLD');
  });

  test('unreleased water may not top the reserve, nor water on a certificate', async () => {
    const move = (from: string) =>
      log(later, { ...KEEPER, by: 'chief' }, { what: 'move', amount: '2L', from, to: 'R1' });
    expect(await refusal(move('C-06'))).toMatch(/^refused: .*intention-refused hold/);
    expect(await refusal(move('C-17'))).toBe('refused: intention-refused reserve');
  });
});

test('iodine water of a visitor into a container with silver is refused with the way out', async () => {
  const later = await deskOfLines(linesBefore('E0175'));
  const answer = await log(later, KEEPER, { what: 'move', amount: '2L', from: 'V-1', to: 'C-03' });
  const finding = answer.ok ? undefined : answer.findings.find(({ data }) => data['rule'] === 'biocide');
  expect(finding?.data).toMatchObject({ from: 'V-1', to: 'C-03', comes: 'iodine', meets: 'silver' });
});
