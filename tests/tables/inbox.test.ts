// The inbox at work: what is proven, declared, asked about, remembered, taken, dropped, and known again.
import { expect, test } from 'vitest';
import { bookDigest, entryOf, plainHash } from '../../src/book/index.ts';
import { type Desk, inboxDrop, inboxList, inboxTake, log } from '../../src/desk/index.ts';
import { corrieDesk, imported, MOMENT, taken } from './corrie-desk.ts';

async function kindsOf(desk: Desk): Promise<readonly string[]> {
  const kinds: string[] = [];
  for await (const rows of desk.port.scan({ order: 'site' })) kinds.push(...rows.map(({ kind }) => kind));
  return kinds.slice(2);
}

const digestOf = async (desk: Desk): Promise<string> => bookDigest(plainHash, await desk.port.heads());

test('the same table again, a copy with other columns first, in another form, adds nothing', async () => {
  const desk = await corrieDesk();
  const first = await taken(
    desk,
    'When;What;Store;Amount\n2147-04-03 10:00;weighed;C-02;11,5 kg\n2147-04-04 10:00;weighed;C-03;430\n',
  );
  expect([first.taken, first.waiting, first.remembered]).toEqual([1, 1, true]);
  const kinds = await kindsOf(desk);
  expect(kinds).toEqual(['weigh', 'waiting-line', 'column-matching']);
  for (const copy of [
    'When;What;Store;Amount\n2147-04-03 10:00;weighed;C-02;11,5 kg\n2147-04-04 10:00;weighed;C-03;430\n',
    'Amount\tStore\tWhen\tWhat\n430\tC-03\t2147-04-04 10:00\tweighed\n11,5 kg\tC-02\t2147-04-03 10:00\tweighed\n',
  ]) {
    const again = await taken(desk, copy);
    expect([again.taken, again.waiting, again.known]).toEqual([0, 0, 2]);
  }
  expect((await kindsOf(desk)).filter((kind) => kind !== 'column-matching')).toEqual([
    'weigh',
    'waiting-line',
  ]);
});

test('a preview, and a table that is asked about, leave the book as it was', async () => {
  const desk = await corrieDesk();
  const before = await digestOf(desk);
  await taken(desk, 'When;What;Store;Amount\n2147-04-03 10:00;weighed;C-02;11,5 kg\n', { dryRun: true });
  expect(await imported(desk, 'Date;strokes\n04/05/2147;425\n05/04/2147;431\n')).toEqual([
    'sheet-dates-open',
  ]);
  expect(await imported(desk, 'Date;strokes\n')).toEqual(['sheet-no-headings']);
  expect(await digestOf(desk)).toBe(before);
});

test('day and month: declared, proven by a 13, proven by the span of the book', async () => {
  const desk = await corrieDesk();
  const days = async (text: string, options = {}) =>
    (await taken(desk, text, { options, dryRun: true })).preview.map(({ text: said }) => said.slice(0, 12));
  const open = 'Date;strokes\n04/05/2147;425\n05/04/2147;431\n';
  expect(await days(open, { dates: 'day-first' })).toEqual(['day line D65', 'day line D36']);
  expect(await days(open, { dates: 'month-first' })).toEqual(['day line D36', 'day line D65']);
  expect(await days('Date;strokes\n04/05/2147;425\n13/04/2147;431\n')).toEqual([
    'day line D65',
    'day line D44',
  ]);
  // Read with the month first, the second one lies in January, before the book.
  expect(await days('Date;strokes\n02/04/2147;425\n03/04/2147;431\n')).toEqual([
    'day line D33',
    'day line D34',
  ]);
  expect(await days('Date;strokes\n2 Apr;425\n3 Apr;431\n')).toEqual(['day line D33', 'day line D34']);
});

test('decimal signs: a column with both readings waits, a proven or declared one does not', async () => {
  const desk = await corrieDesk();
  const sheet = (...amounts: readonly string[]) =>
    `When;What;Store;Amount (mL)\n${amounts.map((amount, k) => `2147-04-0${k + 1} 10:00;weighed;C-02;${amount}`).join('\n')}\n`;
  const said = async (text: string, options = {}) =>
    (await taken(desk, text, { options, dryRun: true })).preview.map(({ what, text: words }) =>
      what === 'entry' ? words.replaceAll('\u00A0', ' ') : what,
    );
  expect(await said(sheet('1,234'))).toEqual(['waits']);
  expect(await said(sheet('1,234', '2,5'))).toEqual([
    'weigh C-02: 0.001234 L, by balance',
    'weigh C-02: 0.0025 L, by balance',
  ]);
  expect(await said(sheet('1,234', '2.5'))).toEqual([
    'weigh C-02: 1.234 L, by balance',
    'weigh C-02: 0.0025 L, by balance',
  ]);
  expect(await said(sheet('1.234', '2,5'))).toEqual([
    'weigh C-02: 1.234 L, by balance',
    'weigh C-02: 0.0025 L, by balance',
  ]);
  expect(await said(sheet('1,234', '2,5', '2.5'))).toEqual([
    'waits',
    'weigh C-02: 0.0025 L, by balance',
    'weigh C-02: 0.0025 L, by balance',
  ]);
  expect(await said(sheet('1,234'), { decimal: 'point' })).toEqual(['weigh C-02: 1.234 L, by balance']);
  expect(await said(sheet('1,234'), { decimal: 'comma' })).toEqual(['weigh C-02: 0.001234 L, by balance']);
});

test('a copy of known acts by another clock proves that clock, and adds nothing but what is new', async () => {
  const desk = await corrieDesk();
  const acts = (hours: readonly string[]) =>
    `When;What;From;To;Amount (L)\n${hours.map((hour, k) => `2147-04-0${k + 1} ${hour};moved;C-02;C-0${k + 3};1.${k + 1}`).join('\n')}\n`;
  await taken(desk, acts(['10:00', '11:00', '12:00']));
  const ground = `${acts(['15:30', '16:30', '17:30'])}2147-04-09 18:00;moved;C-02;C-03;0.7\n`;
  const sheet = await taken(desk, ground);
  expect(sheet.zone).toEqual({ offset: '+05:30', by: 'known entries' });
  expect([sheet.known, sheet.taken]).toEqual([3, 1]);
  // Two are too few to prove anything.
  const other = await corrieDesk();
  await taken(other, acts(['10:00', '11:00']));
  const two = await taken(other, acts(['15:30', '16:30']));
  expect([two.zone.by, two.taken]).toEqual(['outpost clock', 2]);
});

test('lines by another clock are asked about, and the answer is remembered with the headings', async () => {
  const desk = await corrieDesk();
  const sheet = (month: number) =>
    `Date;Time;strokes;Menge\n${[3, 4, 5].map((day) => `2147-0${month}-0${day};02:3${day};44${day};x`).join('\n')}\n`;
  expect(await imported(desk, sheet(4))).toEqual(['sheet-zone-open']);
  const options = { zoneMin: 330, columns: { Menge: '' } };
  const first = await taken(desk, sheet(4), { options });
  expect(first.columns.at(-1)).toMatchObject({ heading: 'Menge', leftOut: true });
  const next = await taken(desk, sheet(5));
  expect([next.taken, next.zone, next.columns.at(-1)?.leftOut, next.remembered]).toEqual([
    3,
    { offset: '+05:30', by: 'last time' },
    true,
    false,
  ]);
});

test('an amount without a unit is taken when it is declared for its column, and the line that waited is settled', async () => {
  const desk = await corrieDesk();
  const sheet =
    'When;What;Store;Amount\n2147-04-03 10:00;weighed;C-02;11.5\n2147-04-04 10:00;weighed;C-03;10.5\n';
  expect((await taken(desk, sheet)).waiting).toBe(2);
  const again = await taken(desk, sheet, { options: { columns: { Amount: 'amount [kg]' } } });
  expect([again.taken, again.settled, again.waiting]).toEqual([2, 2, 0]);
  const inbox = await inboxList(desk, { all: true });
  expect(inbox.ok && inbox.value.lines.map(({ settled }) => settled?.how)).toEqual(['taken', 'taken']);
});

test('a line is taken, undone, waits again, and is taken once more', async () => {
  const desk = await corrieDesk();
  await taken(desk, 'When;What;Store;Amount\n2147-04-03 10:00;weighed;C-02;11.5\n');
  const take = () => inboxTake(desk, MOMENT, { ref: '3', fields: { unit: 'L' } });
  const first = await take();
  expect(first.ok && first.value.entries[0]?.text).toBe('weigh C-02: 11.5\u00A0L, by balance');
  expect((await take()).ok).toBe(false);
  await log(desk, MOMENT, { what: 'undo', entry: first.ok ? (first.value.entries[0]?.id ?? '') : '' });
  const second = await take();
  expect(second.ok && second.value.kept).toBe(true);
});

test('what a rule refuses is refused when a line is taken, and kept as a fact', async () => {
  const desk = await corrieDesk();
  await taken(
    desk,
    'When;What;From;To;Amount\n2147-04-03 10:00;moved;C-02;W-01;1\n2147-04-03 11:00;moved;W-01;C-03;1\n',
  );
  const into = await inboxTake(desk, MOMENT, { ref: '4', fields: { unit: 'L' } });
  expect(into.ok ? [] : [into.problem, ...into.findings.map(({ code }) => code)]).toEqual([
    'refused',
    'intention-refused',
    'intention-refused',
  ]);
  const fact = await inboxTake(desk, MOMENT, { ref: '4', fields: { unit: 'L', happened: 'it was done' } });
  expect(fact.ok).toBe(true);
});

test('a line that was dropped stays so; waiting lines move no water', async () => {
  const desk = await corrieDesk();
  const sheet = 'When;What;Store;Amount\n2147-04-03 10:00;weighed;C-02;430\n';
  const opened = await desk.account();
  if (!opened.ok) throw new Error('no account');
  const before = opened.value.fold.ledger.balanceMg('store:C-02');
  await taken(desk, sheet);
  expect(opened.value.fold.ledger.balanceMg('store:C-02')).toBe(before);
  await inboxDrop(desk, MOMENT, { ref: '3', reason: 'a slip of the pen' });
  const again = await taken(desk, sheet);
  expect([again.taken, again.waiting, again.known]).toEqual([0, 0, 1]);
  const inbox = await inboxList(desk);
  expect(inbox.ok && inbox.value).toMatchObject({ lines: [], settled: 1 });
});

test('a line of a closed day waits; with a reason it is kept late', async () => {
  const desk = await corrieDesk();
  await log(
    desk,
    MOMENT,
    { what: 'kind', kind: 'day-close', body: { day: 34, what: 'day', figures: [] } },
    { at: 'D34T22:00' },
  );
  const sheet = 'When;What;Store;Amount (L)\n2147-04-03 10:00;weighed;C-02;11.5\n';
  expect((await taken(desk, sheet, { dryRun: true })).preview[0]?.reasons[0]?.code).toBe('row-day-closed');
  await taken(desk, sheet, { late: 'copied from paper' });
  const rows = [];
  for await (const batch of desk.port.scan({ order: 'total', kinds: ['weigh'] }))
    rows.push(...batch.map(entryOf));
  expect(rows.map(({ late }) => late)).toEqual(['copied from paper']);
});

test('text that looks like a formula stays text, in the book too', async () => {
  const desk = await corrieDesk();
  const notes = ['=HYPERLINK("x")', '@SUM(A1)', '+1', '-1', '\u202e=1'];
  await taken(
    desk,
    `When\tWhat\tNotes\n${notes.map((note, k) => `2147-04-0${k + 1} 10:00\tnote\t${note}`).join('\n')}\n`,
  );
  const texts: unknown[] = [];
  for await (const rows of desk.port.scan({ order: 'total', kinds: ['note'] }))
    texts.push(...rows.map((row) => (entryOf(row).body as { text: string }).text));
  expect(texts).toEqual(notes);
});

test('many lines want a yes', async () => {
  const desk = await corrieDesk();
  const lines = Array.from(
    { length: 101 },
    (_, k) =>
      `2147-04-03 ${String(Math.floor(k / 60)).padStart(2, '0')}:${String(k % 60).padStart(2, '0')};note;x`,
  );
  const text = `When;What;Notes\n${lines.join('\n')}\n`;
  const { importTable } = await import('../../src/desk/index.ts');
  const { tableOf } = await import('./corrie-desk.ts');
  const read = tableOf(text);
  if (!read.ok) throw new Error(read.finding.code);
  const answer = await importTable(desk, MOMENT, { table: read.table });
  expect(answer.ok ? '' : answer.problem).toBe('ask first');
});

test('two equal lines of acts are asked about, and each may be taken', async () => {
  const desk = await corrieDesk();
  const line = '2147-04-03 10:00;moved;C-02;C-03;1 L\n';
  const sheet = `When;What;From;To;Amount\n${line}${line}`;
  const first = await taken(desk, sheet);
  expect([first.taken, first.waiting, first.known]).toEqual([1, 1, 0]);
  expect(first.preview.flatMap(({ reasons }) => reasons.map(({ code }) => code))).toEqual(['row-twice']);
  const again = await taken(desk, sheet);
  expect([again.taken, again.waiting, again.known]).toEqual([0, 0, 2]);
  const second = await inboxTake(desk, MOMENT, { ref: '4', fields: {} });
  expect(second.ok && second.value.kept).toBe(true);
  const after = await taken(desk, sheet);
  expect([after.taken, after.waiting, after.known]).toEqual([0, 0, 2]);
});

test('a table of acts without a clock says by which its times are read; a named one says nothing', async () => {
  const sheet = 'When;What;From;To;Amount\n2147-04-03 10:00;moved;C-02;C-03;1 L\n';
  const codes = async (options = {}) =>
    (await taken(await corrieDesk(), sheet, { options, dryRun: true })).findings.map(({ code }) => code);
  expect(await codes()).toContain('sheet-zone-unsaid');
  expect(await codes({ zoneMin: 330 })).not.toContain('sheet-zone-unsaid');
});

test('that a day is closed is told of the first line, and once of each', async () => {
  const desk = await corrieDesk();
  const close = { what: 'kind', kind: 'day-close', body: { day: 34, what: 'day', figures: [] } } as const;
  const closed = await log(desk, MOMENT, close, { at: '2147-04-03T22:00Z' });
  expect(closed.ok).toBe(true);
  const line = (minute: string) => `2147-04-03 10:${minute};moved;C-02;C-03;1 L\n`;
  const sheet = await taken(desk, `When;What;From;To;Amount\n${line('00')}${line('10')}${line('20')}`, {
    dryRun: true,
  });
  expect(sheet.preview.map(({ reasons, text }) => [reasons.map(({ code }) => code), text])).toEqual([
    [['row-day-closed'], ''],
    [[], 'for the same reason as line 2'],
    [[], 'for the same reason as line 2'],
  ]);
});

test('what somebody adds to a line of another office stands beside it with the name of who said it', async () => {
  const desk = await corrieDesk();
  await taken(desk, 'When;What;Store;Amount;By\n2147-04-03 10:00;weighed;C-02;11.5;second\n');
  const made = await inboxTake(desk, MOMENT, { ref: '3', fields: { unit: 'L' } });
  expect(made.ok).toBe(true);
  const row = await desk.port.find(made.ok ? (made.value.entries[0]?.id ?? '') : '');
  const entry = row === null ? null : entryOf(row);
  expect([entry?.by, entry?.note]).toEqual(['second', 'unit L: said by the keeper, when the line was taken']);
});
