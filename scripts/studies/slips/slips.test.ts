// A small part of the slip study: slips are caught, good entries are left alone, and the study can fail.
import { describe, expect, test } from 'vitest';
import { cleanBook } from './clean-book.ts';
import { evening } from './evening.ts';
import { chanceRate, practiceRate } from './false-questions.ts';
import { eveningOf, msOf, PRACTICE, written } from './field-log.ts';
import { slipStudy } from './judge.ts';
import { shareCaught } from './page.ts';
import { SLIP_KINDS } from './put-in.ts';
import { QUESTIONS } from './questions.ts';

/** Three of each kind; neither the seeds that thresholds were chosen on nor the one that is reported. */
const SLIPS = { seed: 31_415, slips: 3 * SLIP_KINDS.length };

describe('slips', () => {
  const judged = slipStudy(SLIPS);

  test('of every kind some are put in, and nearly all are caught', () => {
    expect(SLIP_KINDS).toHaveLength(12);
    for (const { kind } of SLIP_KINDS) expect(judged.filter((one) => one.kind === kind)).toHaveLength(3);
    expect(shareCaught(judged)).toBeGreaterThanOrEqual(0.85);
  });

  test('control: without the questions far fewer are caught, and by the reader of the log alone fewer than half', () => {
    expect(shareCaught(slipStudy({ ...SLIPS, without: QUESTIONS }))).toBeLessThan(shareCaught(judged) - 0.25);
    expect(shareCaught(slipStudy({ ...SLIPS, without: 'the account' }))).toBeLessThan(0.5);
  });

  test('the same seed puts in the same slips, another one others', () => {
    const first = { seed: SLIPS.seed, slips: 12 };
    expect(slipStudy(first)).toEqual(judged.slice(0, 12));
    expect(slipStudy({ ...first, seed: SLIPS.seed + 1 })).not.toEqual(judged.slice(0, 12));
  });
});

describe('good entries', () => {
  test('the practice book is asked about nothing but its documented oddities', () => {
    const rate = practiceRate();
    expect(rate.entries).toBe(248);
    expect(rate.deliberate).toBeGreaterThan(12);
    expect([...rate.byCode]).toEqual([]);
  });

  test('what is deliberate there raises none of the new questions', () => {
    const { asked } = evening(written(PRACTICE), eveningOf(msOf('2147-04-29T21:20Z')));
    expect(asked.filter(({ code }) => QUESTIONS.has(code))).toEqual([]);
  });

  test('clean books by chance are asked about at most once in fifty entries', () => {
    const rate = chanceRate({ firstSeed: 500, books: 6 });
    expect(rate.entries).toBeGreaterThan(400);
    expect(rate.perFifty).toBeLessThanOrEqual(1);
  });

  test('control: a clean book with a slip in it is asked about', () => {
    const lines = cleanBook(500, 28);
    const slipped = lines.map((line) =>
      line.kind === 'daily' && line['day'] === 12 ? { ...line, dispenser_strokes: 4210 } : line,
    );
    const until = eveningOf(msOf(lines.at(-1)?.t ?? ''));
    expect(evening(written(lines), until).asked.map(({ code }) => code)).not.toContain('amount-implausible');
    expect(evening(written(slipped), until).asked.map(({ code }) => code)).toContain('amount-implausible');
  });
});
