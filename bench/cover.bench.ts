// What a cover costs: the use of ninety days learned and its quantiles found, and what every reading of an outpost would be worth.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Position } from '../src/account/index.ts';
import { MemoryStore } from '../src/book/index.ts';
import { bestReadings, Desk, positionAt, startPractice } from '../src/desk/index.ts';
import { coverOf } from '../src/forecast/index.ts';
import { type BenchRow, quantileOf, row } from './bench-row.ts';

const CORRIE = join(import.meta.dirname, '..', 'examples', 'corrie');
const ROUNDS = 100;

export async function bench(): Promise<readonly BenchRow[]> {
  const position = await practicePosition();
  const grade = position.index.outpost.grades
    .map(({ id }) => id)
    .find((id) => coverOf(position, id).use?.basis === 'learned');
  if (grade === undefined) throw new Error('no grade has learned its use');
  const readings = bestReadings(position);
  if (readings.length === 0) throw new Error('no store can be read');
  const { days = 0 } = coverOf(position, grade).use ?? {};
  return [
    figure(`cover of one grade, learned from ${days} days, p50`, () => coverOf(position, grade), 2),
    figure(`worth of ${readings.length} readings, p50`, () => bestReadings(position), 50),
  ];
}

/** The practice outpost at the end of its sixty days. */
async function practicePosition(): Promise<Position> {
  const port = new MemoryStore({ bookId: 'bench', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  let count = 0;
  const chance = () =>
    Uint8Array.from({ length: 10 }, (_, at) => (at < 8 ? 0 : at === 8 ? count >> 8 : count++ & 255));
  const desk = await Desk.open(port, { chance });
  const moment = { nowUtcMs: 0, offsetMin: 0, by: 'keeper' };
  const text = (name: string) => readFileSync(join(CORRIE, name), 'utf8');
  const begun = await startPractice(desk, moment, {
    outpost: { name: 'outpost.yaml', text: text('outpost.yaml') },
    log: { name: 'field-log.jsonl', lines: text('field-log.jsonl').split('\n') },
  });
  if (!begun.ok) throw new Error('the practice book could not be begun');
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) throw new Error('the practice book has no position');
  return seen.value;
}

function figure(name: string, work: () => unknown, most: number): BenchRow {
  for (let round = 0; round < ROUNDS / 4; round += 1) work();
  const times = Array.from({ length: ROUNDS }, () => {
    const started = performance.now();
    work();
    return performance.now() - started;
  });
  return row({ name, value: quantileOf(times, 0.5), unit: 'ms', goal: { most } });
}
