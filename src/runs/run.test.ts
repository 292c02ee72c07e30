// Runs of the small card: each line in its turn, what may not follow, breaks and their water, entries once.
import { describe, expect, test } from 'vitest';
import { allDone, begin, CARD, done, end, fact, Run } from '../../tests/cards/small-run.ts';
import { changedCard } from '../../tests/outpost/small-card.ts';
import { readCard } from '../outpost/index.ts';
import { draftsOf, dueDrafts, movedInAll } from './posts.ts';

const code = (answer: ReturnType<Run['ask']>): string => (answer.ok ? 'ok' : answer.finding.code);

describe('a run', () => {
  test('begins at its first line and is whole when every line is closed', () => {
    const run = new Run();
    expect(
      code(run.ask(fact({ kind: 'card-step', step: 'labels', found: { is: 'tick' }, verified: false }))),
    ).toBe('run-not-begun');
    run.take(begin());
    expect(run.state().marked).toBe('labels');
    expect(code(run.ask(begin()))).toBe('run-begun-twice');
    allDone(run);
    expect(run.state()).toMatchObject({ status: 'running', marked: null });
    run.take(end());
    expect(run.state().status).toBe('finished');
    expect(code(run.ask(end()))).toBe('run-ended');
    expect(run.replayed().findings).toEqual([]);
  });

  test('does its lines in order', () => {
    const run = new Run().take(begin());
    expect(code(run.ask(done('mate')))).toBe('run-line-order');
    run.take(done('labels'));
    expect(code(run.ask(done('labels')))).toBe('run-line-closed');
    expect(code(run.ask(done('nothing')))).toBe('run-line-unknown');
    expect(code(run.ask(end()))).toBe('run-lines-open');
  });

  test('in the DO-CONFIRM form takes the lines of a group in any order, but passes no check', () => {
    const run = new Run().take(begin({ form: 'DO-CONFIRM' }));
    expect(code(run.ask(done('mate')))).toBe('run-line-order');
    run.take(done('labels')).take(done('before'));
    expect(run.state().marked).toBe('mate');
    expect(code(run.ask(done('tight')))).toBe('run-line-order');
    run.take(done('mate')).take(done('tight')).take(done('note'));
    expect(run.state().marked).toBe('seen');
  });

  test('takes an answer of its own kind only', () => {
    const run = new Run().take(begin());
    const answer = (found: Parameters<typeof done>[1]) => code(run.ask(done('labels', found)));
    expect(answer({ is: 'tick' })).toBe('run-found-kind');
    expect(answer({ is: 'choice', choice: 'neither' })).toBe('run-found-kind');
    run.take(done('labels')).take(done('mate'));
    expect(code(run.ask(done('before', { is: 'number', value: Number.NaN })))).toBe('run-found-kind');
  });

  test('has a hold point for somebody else, and a line for two', () => {
    const run = new Run().take(begin());
    for (const step of ['labels', 'mate', 'before', 'tight', 'note']) run.take(done(step));
    expect(code(run.ask(done('seen', { is: 'tick' }, { by: 'keeper' })))).toBe('run-same-person');
    run.take(done('seen', { is: 'tick' }, { by: 'second' }));
    for (const step of ['open', 'shut', 'litres']) run.take(done(step));
    const both = { is: 'time', atMs: 0 } as const;
    expect(code(run.ask(done('both', both)))).toBe('run-second-missing');
    expect(code(run.ask(done('both', both, { second: 'keeper' })))).toBe('run-second-missing');
    run.take(done('both', both, { second: 'second' }));
    expect(run.state().lines.get('both')).toMatchObject({ status: 'done', second: 'second' });
  });
});

describe('a value that is off', () => {
  const off = () => {
    const run = new Run().take(begin()).take(done('labels')).take(done('mate'));
    return run.take(done('before', { is: 'number', value: 120 }));
  };
  const decide = (step: string, choice: 'recheck' | 'record' | 'skip' | 'stop', reason = 'gauge sticks') =>
    fact({ kind: 'card-deviation', step, choice, reason });

  test('waits for a decision: recheck, record or stop', () => {
    expect(off().state()).toMatchObject({ marked: 'before' });
    expect(off().state().lines.get('before')?.status).toBe('off');
    expect(code(off().ask(done('before')))).toBe('run-line-off');
    expect(code(off().ask(decide('before', 'skip')))).toBe('run-line-off');
    expect(code(off().ask(decide('before', 'record', ' ')))).toBe('run-reason-missing');
    const again = off().take(decide('before', 'recheck', ''));
    expect(again.state().lines.get('before')).toMatchObject({ status: 'open', rechecks: 1 });
    const kept = off().take(decide('before', 'record'));
    expect(kept.state().lines.get('before')).toMatchObject({ status: 'deviation', reason: 'gauge sticks' });
    // The check that rests on it is held against what was recorded.
    expect(kept.take(done('tight', { is: 'number', value: 119.5 })).state().marked).toBe('note');
    const stopped = off().take(decide('before', 'stop'));
    expect(stopped.state().status).toBe('stopped');
    expect(code(stopped.ask(done('before')))).toBe('run-stopped');
    stopped.take(end('abort', 'gauge sticks'));
    expect(stopped.state().status).toBe('aborted');
  });

  test('at a check can only be rechecked or stop the card', () => {
    const run = new Run().take(begin()).take(done('labels', { is: 'choice', choice: 'wrong' }));
    for (const choice of ['record', 'skip'] as const)
      expect(code(run.ask(decide('labels', choice)))).toBe('run-must-pass');
    expect(code(new Run().take(begin()).ask(decide('labels', 'skip')))).toBe('run-must-pass');
    expect(code(new Run().take(begin()).ask(decide('labels', 'recheck')))).toBe('run-line-not-off');
    run.take(decide('labels', 'recheck')).take(done('labels'));
    expect(run.state().marked).toBe('mate');
  });

  test('a line is skipped with a reason where nothing hangs on it', () => {
    const run = new Run().take(begin()).take(done('labels'));
    expect(code(run.ask(decide('mate', 'skip', '')))).toBe('run-reason-missing');
    run.take(decide('mate', 'skip'));
    // The leak check rests on what is found here.
    expect(code(run.ask(decide('before', 'skip')))).toBe('run-skip-not-here');
    run.take(done('before')).take(done('tight')).take(decide('note', 'skip'));
    expect(code(run.ask(decide('seen', 'skip')))).toBe('run-skip-not-here');
    run.take(done('seen', { is: 'tick' }, { by: 'second' }));
    expect(code(run.ask(decide('open', 'skip')))).toBe('run-skip-not-here');
    expect(run.state().lines.get('mate')).toMatchObject({ status: 'skipped', reason: 'gauge sticks' });
  });

  test('a check whose bound is not known is passed by nothing', () => {
    const read = readCard(changedCard('found.before - 1 kPa', 'cabin.pressure - 1 kPa'), {
      file: 'pour.yaml',
    });
    if (!read.ok) throw new Error('the changed card has faults');
    const run = new Run(read.card).take(begin({ leaves: { 'cabin.pressure': null } }));
    for (const step of ['labels', 'mate', 'before']) run.take(done(step));
    expect(code(run.ask(done('tight')))).toBe('run-must-pass-unknown');
    run.take(done('tight'));
    expect(run.state().marked).toBe('tight');
    expect(run.take(decide('tight', 'stop')).state().status).toBe('stopped');
  });
});

describe('a break', () => {
  const flowing = () => {
    const run = new Run().take(begin());
    for (const step of ['labels', 'mate', 'before', 'tight', 'note']) run.take(done(step));
    return run.take(done('seen', { is: 'tick' }, { by: 'second' })).take(done('open'));
  };
  const pause = fact({ kind: 'card-pause', why: 'pause', reason: 'supper' });
  const broken = fact({
    kind: 'card-pause',
    why: 'interrupt',
    reason: 'compressor over-temperature',
    moved: { litres: 11.4, u: 0.15, lineLitres: 0.3 },
  });
  const resume = fact({ kind: 'card-resume' });

  test('is resumed once', () => {
    const run = new Run().take(begin()).take(done('labels'));
    expect(code(run.ask(resume))).toBe('run-not-paused');
    run.take(pause);
    expect(code(run.ask(pause))).toBe('run-paused');
    expect(code(run.ask(done('mate')))).toBe('run-paused');
    expect(run.state()).toMatchObject({ status: 'paused', marked: 'mate' });
    run.take(resume);
    expect(code(run.ask(resume))).toBe('run-not-paused');
    run.take(done('mate'));
    // A second resume that arrives as a fact changes nothing and is told.
    const before = run.state();
    run.take({ ...resume, id: 'late', atMs: run.nowMs });
    expect(run.replayed().findings.map((finding) => finding.code)).toEqual(['run-not-paused']);
    expect(run.state()).toEqual(before);
  });

  test('of flowing water asks how much has moved, and the leak check is done again', () => {
    const run = flowing();
    expect(code(run.ask(pause))).toBe('run-moved-missing');
    run.take(broken);
    expect(run.state()).toMatchObject({ status: 'interrupted', marked: 'shut' });
    run.take(resume);
    expect(run.state().marked).toBe('before');
    expect(code(run.ask(done('shut')))).toBe('run-line-order');
    for (const step of ['before', 'tight', 'open', 'shut']) run.take(done(step));
    expect(run.state().flow).toHaveLength(2);
    expect(run.state().marked).toBe('litres');
  });

  test('two days and a crash later the run stands on the marked line', () => {
    const run = flowing().take(broken);
    const { state } = run.replayed();
    run.nowMs += 2 * 86_400_000;
    expect(run.replayed().state).toEqual(state);
    expect(run.take(resume).state().marked).toBe('before');
  });

  test('books what stands in the line, and no litre twice', () => {
    const run = flowing();
    const started = dueDrafts(CARD, run.state()).map(({ kind }) => kind);
    expect(started).toEqual(['check', 'run-start']);
    const keys = dueDrafts(CARD, run.state()).map(({ key }) => key);
    run.take({ ...broken, posted: keys });
    const paused = dueDrafts(CARD, run.state());
    expect(paused.map(({ kind }) => kind)).toEqual(['run-pause']);
    expect(paused[0]?.fields).toMatchObject({
      amount: { figure: { value: 11.4, u: 0.15, unit: 'L' } },
      lineContent: { figure: { value: 0.3, unit: 'L' } },
    });
    run.take({ ...resume, posted: paused.map(({ key }) => key) });
    for (const step of ['before', 'tight', 'open', 'shut']) run.take(done(step));
    // 20.5 L were planned, so 9.1 L are expected of the second part.
    run
      .take(done('litres', { is: 'number', value: 9.1 }))
      .take(done('both', { is: 'time', atMs: 0 }, { second: 'second' }));
    expect(run.state().marked).toBeNull();
    run.take({ ...end(), posted: dueDrafts(CARD, run.state()).map(({ key }) => key) });
    const last = dueDrafts(CARD, run.state());
    expect(last.map(({ kind }) => kind).sort()).toEqual(['run-finish', 'weigh']);
    expect(last.find(({ kind }) => kind === 'run-finish')?.fields['amount']).toMatchObject({
      figure: { value: expect.closeTo(9.1, 9), u: expect.closeTo(0.1, 9) },
    });
    const all = draftsOf(CARD, run.state());
    expect(new Set(all.map(({ key }) => key)).size).toBe(all.length);
    expect(all.filter(({ kind }) => kind === 'run-resume')).toHaveLength(1);
    expect(movedInAll(CARD, run.state()).litres).toBeCloseTo(20.5, 9);
  });

  test('an abort with water in flow says how much, and what was done is posted', () => {
    const run = flowing();
    expect(code(run.ask(end('abort', '')))).toBe('run-reason-missing');
    expect(code(run.ask(end('abort', 'leak')))).toBe('run-moved-missing');
    run.take({ ...end('abort', 'leak'), moved: { litres: 3, u: 0.5, lineLitres: 0.3 } });
    expect(draftsOf(CARD, run.state()).map(({ kind }) => kind)).toEqual(['check', 'run-start', 'run-finish']);
    expect(draftsOf(CARD, run.state()).at(-1)?.fields['amount']).toMatchObject({
      figure: { value: 3, u: 0.5 },
    });
  });

  test('an abort during a break tells no water again', () => {
    const run = flowing().take(broken).take(end('abort', 'given up'));
    const finish = draftsOf(CARD, run.state()).find(({ kind }) => kind === 'run-finish');
    expect(finish?.fields['amount']).toMatchObject({ figure: { value: 0, u: 0 } });
  });
});

test('a run that was begun with another revision is refused', () => {
  expect(code(new Run().ask(begin({ revision: 2 })))).toBe('run-other-card');
  expect(code(new Run().ask(begin({ form: 'BY HEART' })))).toBe('run-other-card');
});
