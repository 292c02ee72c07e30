// An account that goes on entry by entry is the one that is reckoned from scratch, whatever comes late or is taken back.
import { describe, expect, test } from 'vitest';
import { stateOf } from '../../tests/journeys/fold-state.ts';
import { MG_PER_L } from '../../tests/journeys/holm.ts';
import { accountOf, draftOf, holmBook, keep, positionNow } from '../../tests/journeys/kept.ts';
import { at, dayLine, holmOpening, idOf, litres } from '../../tests/journeys/told.ts';
import type { AnyDraft, MemoryStore } from '../book/index.ts';
import { Account } from './reckon.ts';

let count = 100;
const move = (day: number, hour: number, valueL: number, more: Partial<AnyDraft> = {}) =>
  draftOf(
    'movement',
    { from: 'C-04', to: 'outside', amount: litres(valueL) },
    { atMs: at(day, hour), count: ++count },
    more as never,
  );
const undo = (target: AnyDraft, day: number, hour: number) =>
  draftOf('undo', { target: target.id }, { atMs: at(day, hour), count: ++count });
const correct = (target: AnyDraft, valueL: number, day: number, hour: number) =>
  draftOf(
    'correction',
    { target: target.id, reason: 'slip', body: { from: 'C-04', to: 'outside', amount: litres(valueL) } },
    { atMs: at(day, hour), count: ++count },
  );

/** Takes batch after batch, and holds the account against one from scratch after each. */
async function goesOn(
  ...batches: AnyDraft[][]
): Promise<{ account: Account; port: MemoryStore; contentL: number[] }> {
  const port = await holmBook();
  const account = await accountOf(port);
  const contentL: number[] = [];
  for (const batch of batches) {
    expect(await account.take(await keep(port, batch))).toBe(true);
    const scratch = await accountOf(port);
    expect(stateOf(account.fold)).toEqual(stateOf(scratch.fold));
    contentL.push(account.fold.ledger.balanceMg('store:C-04') / MG_PER_L);
  }
  return { account, port, contentL };
}

describe('one entry after another', () => {
  test('in order, and late', async () => {
    const { contentL } = await goesOn([move(1, 8, 1)], [move(1, 10, 2)], [move(1, 9, 3)]);
    expect(contentL).toEqual([17, 15, 12]);
  });

  test('undo, undo of undo, and the undo of that', async () => {
    const first = move(1, 8, 1);
    const takeBack = undo(first, 1, 9);
    const again = undo(takeBack, 1, 10);
    const { contentL } = await goesOn([first], [takeBack], [again], [undo(again, 1, 11)]);
    expect(contentL).toEqual([17, 18, 17, 18]);
  });

  test('a correction, another one, and both taken back', async () => {
    const first = move(1, 8, 1);
    const two = correct(first, 2, 1, 9);
    const three = correct(first, 3, 1, 10);
    const { contentL } = await goesOn([first], [two], [three], [undo(three, 1, 11)], [undo(two, 1, 12)]);
    expect(contentL).toEqual([17, 16, 15, 16, 17]);
  });

  test('several in one batch, some of them late', async () => {
    const first = move(2, 8, 1);
    const { contentL } = await goesOn(
      [first],
      [move(2, 9, 1), move(1, 7, 2), undo(first, 2, 10), move(2, 11, 4)],
    );
    expect(contentL).toEqual([17, 18 - 1 - 2 - 4]);
  });

  test('an undo that is dated before what it takes back', async () => {
    const first = move(3, 8, 1);
    const { contentL } = await goesOn([first, move(3, 9, 2)], [undo(first, 2, 9)]);
    expect(contentL).toEqual([15, 16]);
  });

  test('an undo of an undo that is dated first of all', async () => {
    const first = move(3, 8, 1);
    const early = undo(first, 1, 9);
    const { contentL } = await goesOn([first, move(3, 9, 2)], [early], [undo(early, 3, 12)]);
    expect(contentL).toEqual([15, 16, 15]);
  });

  test('what takes back or corrects may come before what it speaks of', async () => {
    const first = move(1, 8, 1);
    const second = move(1, 9, 2);
    const { contentL } = await goesOn(
      [undo(first, 1, 7), correct(second, 5, 1, 7.5)],
      [first],
      [second],
      [move(1, 10, 1)],
    );
    expect(contentL).toEqual([18, 18, 13, 12]);
  });

  test('an undo that points at itself, or in a circle, ends', async () => {
    const [a, b] = [idOf(at(1, 8), 901), idOf(at(1, 9), 902)];
    const circle = [
      { ...draftOf('undo', { target: b }, { atMs: at(1, 8), count: 901 }), id: a },
      { ...draftOf('undo', { target: a }, { atMs: at(1, 9), count: 902 }), id: b },
      {
        ...draftOf('undo', { target: idOf(at(1, 10), 903) }, { atMs: at(1, 10), count: 903 }),
        id: idOf(at(1, 10), 903),
      },
    ] as AnyDraft[];
    const { contentL } = await goesOn([move(1, 7, 1)], circle);
    expect(contentL).toEqual([17, 17]);
  });

  test('far more entries than lie between two checkpoints', async () => {
    const many = Array.from({ length: 1300 }, (_, k) => move(2, 8 + k / 200, 0.001 * (k % 5)));
    const late = [move(2, 8.51, 0.5), move(1, 8, 0.25)];
    await goesOn(
      many.slice(0, 600),
      many.slice(600),
      late,
      [undo(many[700] as AnyDraft, 3, 9)],
      [move(4, 8, 0.125)],
    );
  });
});

describe('duplicates that somebody decides on', () => {
  const fill = (hour: number, by: string, source?: string) =>
    draftOf(
      'movement',
      { from: 'R1', to: 'C-03', amount: litres(20.5), startAtMs: at(1, hour - 0.25) },
      { atMs: at(1, hour), count: ++count },
      { by, ...(source !== undefined && { source }) },
    );
  const inC03 = (account: Account) => account.fold.ledger.balanceMg('store:C-03') / MG_PER_L;
  const decide = (first: AnyDraft, second: AnyDraft, decision: 'merge' | 'both are true') =>
    draftOf(
      'duplicate-decision',
      { first: first.id, second: second.id, decision },
      { atMs: at(1, 20), count: ++count },
    );

  test('merge keeps one of them, both are true keeps both, an undone decision asks again', async () => {
    const [first, copy] = [fill(9, 'keeper'), fill(9.2, 'planner', 'copied on the ground')];
    const merge = decide(first, copy, 'merge');
    const { account, port } = await goesOn([first, copy], [merge]);
    expect([
      inC03(account),
      positionNow(account).findings.some(({ code }) => code === 'duplicate-proposed'),
    ]).toEqual([20.5, false]);
    await account.take(await keep(port, [undo(merge, 1, 21)]));
    expect([
      inC03(account),
      positionNow(account).findings.some(({ code }) => code === 'duplicate-proposed'),
    ]).toEqual([20.5, true]);
    await account.take(await keep(port, [decide(first, copy, 'both are true')]));
    expect(inC03(account)).toBe(41);
    expect(stateOf(account.fold)).toEqual(stateOf((await accountOf(port)).fold));
  });

  test('a pair that was named the other way round still counts once', async () => {
    const [first, copy] = [fill(9, 'keeper'), fill(9.2, 'planner', 'copied on the ground')];
    const { account } = await goesOn([first, copy], [decide(copy, first, 'merge')]);
    expect(inC03(account)).toBe(20.5);
    expect(positionNow(account).findings.some(({ code }) => code === 'duplicate-proposed')).toBe(false);
  });
});

describe('views', () => {
  test('as known at and as of equal a fold over the entries that there were', async () => {
    const first = move(1, 8, 1);
    const { port } = await goesOn(
      [first],
      [move(2, 8, 2)],
      [undo(first, 3, 9)],
      [move(1, 6, 4, { enteredAtMs: at(4, 9) } as never)],
    );
    const contentIn = async (view: { knownAtMs?: number; asOfMs?: number }) =>
      (await accountOf(port, { view })).fold.ledger.balanceMg('store:C-04') / MG_PER_L;
    expect(await contentIn({ knownAtMs: at(2, 12) })).toBe(15);
    expect(await contentIn({ knownAtMs: at(3, 12) })).toBe(16);
    expect(await contentIn({ asOfMs: at(1, 7) })).toBe(14);
    expect(await contentIn({ knownAtMs: at(3, 12), asOfMs: at(1, 12) })).toBe(18);
    expect(await contentIn({})).toBe(12);
  });

  test('an account of a view takes only what the view shows', async () => {
    const port = await holmBook();
    const first = move(1, 8, 1);
    const account = await accountOf(port, { view: { asOfMs: at(2, 0) } });
    for (const batch of [[first], [move(3, 8, 2)], [move(1, 9, 4)], [undo(first, 5, 9)]]) {
      await account.take(await keep(port, batch));
      const scratch = await accountOf(port, { view: { asOfMs: at(2, 0) } });
      expect(stateOf(account.fold)).toEqual(stateOf(scratch.fold));
    }
    expect(account.fold.ledger.balanceMg('store:C-04') / MG_PER_L).toBe(14);
  });
});

describe('the outpost file', () => {
  test('a new one, and one that is taken back, ask for a new account', async () => {
    const port = await holmBook();
    const account = await accountOf(port);
    const file = draftOf(
      'outpost',
      { text: account.outpost === null ? '' : 'format: none' },
      { atMs: at(2, 8), count: ++count },
    );
    expect(await account.take(await keep(port, [file]))).toBe(false);
    expect((await Account.open(port)).ok).toBe(false);
    const back = undo(file, 2, 9);
    expect(await account.take(await keep(port, [back]))).toBe(false);
    expect((await Account.open(port)).ok).toBe(true);
  });

  test('a book without one says so', async () => {
    const port = await holmBook();
    const bare = (await import('../../tests/journeys/kept.ts')).emptyBook();
    await keep(bare, [draftOf('opening', holmOpening(), { atMs: at(0, 21), count: 2 })]);
    expect(await Account.open(bare)).toEqual({ ok: false, findings: null });
    expect((await Account.open(port)).ok).toBe(true);
  });
});

test('a scan that breaks off leaves no half-reckoned account behind', async () => {
  const port = await holmBook();
  const account = await accountOf(port);
  await account.take(await keep(port, [move(2, 8, 1)]));
  const before = stateOf(account.fold);
  const scan = port.scan.bind(port);
  port.scan = () => {
    throw new Error('the disk is gone');
  };
  const late = await keep(port, [move(1, 8, 2)]);
  await expect(account.take(late)).rejects.toThrow('the disk is gone');
  expect(stateOf(account.fold)).toEqual(before);
  port.scan = scan;
  await account.take(await keep(port, [move(3, 8, 4)]));
  expect(stateOf(account.fold)).toEqual(stateOf((await accountOf(port)).fold));
});

test('a day line goes on like any other entry', async () => {
  const lines = Array.from({ length: 6 }, (_, k) =>
    draftOf(
      'day-line',
      dayLine(k + 1, {
        condensate: (993 + 3 * k) % 1000,
        product: 3,
        strokes: k === 3 ? null : 200,
        flushes: 12,
      }),
      { atMs: at(k + 1, 21), count: ++count },
    ),
  );
  await goesOn(...lines.map((line) => [line]));
  await goesOn(...[2, 0, 5, 1, 4, 3].map((k) => [lines[k] as AnyDraft]));
});
