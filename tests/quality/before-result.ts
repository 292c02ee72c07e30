// The practice outpost as it stood before the bad result of Day 14, and the desk and the words to enter it.
import { MemoryStore } from '../../src/book/index.ts';
import {
  addResult,
  Desk,
  type Moment,
  type RequestWith,
  type ResultRequest,
  startPractice,
} from '../../src/desk/index.ts';
import { LOG_LINES, OUTPOST_TEXT } from '../field-log/corrie-log.ts';

export const EIGHT = ['C-05', 'C-06', 'C-11', 'C-12', 'C-13', 'C-14', 'C-15', 'C-16'];
export const KEEPER: Moment = { nowUtcMs: Date.UTC(2147, 4, 1), offsetMin: 0, by: 'keeper' };
export const MEDIC: Moment = { ...KEEPER, by: 'medic' };

/** A second person whose code nobody has checked. */
export function withSecond(moment: Moment, office: string): Moment {
  return { ...moment, second: { office, confirmation: 'declared, not verified' } };
}

/** A practice book of some of the lines of the log. */
export async function deskOfLines(lines: readonly string[]): Promise<Desk> {
  const port = new MemoryStore({ bookId: 'b', site: 'corrie', purpose: 'practice', createdAtMs: 0 });
  let count = 0;
  const chance = () => Uint8Array.from({ length: 10 }, (_, k) => Math.floor(++count / 256 ** (k % 3)) % 256);
  const desk = await Desk.open(port, { chance });
  const made = await startPractice(desk, KEEPER, {
    outpost: { name: 'outpost.yaml', text: OUTPOST_TEXT },
    log: { name: 'field-log.jsonl', lines },
  });
  if (!made.ok) throw new Error('no practice book');
  return desk;
}

/** The log is sorted by time: everything in front of a line. */
export function linesBefore(id: string): readonly string[] {
  const at = LOG_LINES.findIndex((line) => line.includes(`"${id}"`));
  if (at < 0) throw new Error(`no line ${id}`);
  return LOG_LINES.slice(0, at);
}

/** Everything up to the daily line of a day, without some lines. */
export function linesOfDays(day: number, without: readonly string[]): readonly string[] {
  const isOf = (line: string) => (JSON.parse(line) as { day: number }).day <= day;
  return LOG_LINES.filter((line) => isOf(line) && !without.some((id) => line.includes(`"${id}"`)));
}

export const BAD: ResultRequest = {
  of: 'SMP-03',
  figures: { silver: '0.03mg/L', 'plate-count': '140', toc: '0.6mg/L', cond: '212uS/cm' },
};
export const AT_RESULT: RequestWith = { at: 'D14T16:20' };

export async function must<T>(
  answer: Promise<{ ok: true; value: T } | { ok: false; findings: unknown }>,
): Promise<T> {
  const found = await answer;
  if (!found.ok) throw new Error(JSON.stringify(found.findings));
  return found.value;
}

/** The kind of problem and the codes, each with its rule. */
export async function refusal(
  answer: Promise<
    | { ok: true; value: unknown }
    | {
        ok: false;
        problem: string;
        findings: readonly { code: string; data: Readonly<Record<string, unknown>> }[];
      }
  >,
): Promise<string> {
  const found = await answer;
  if (found.ok) return 'kept';
  const said = found.findings.map(({ code, data }) =>
    [code, data['rule'] ?? data['why']].filter(Boolean).join(' '),
  );
  return `${found.problem}: ${said.join(', ')}`;
}

export function addBad(
  desk: Desk,
  more: Partial<ResultRequest> = {},
  how: RequestWith = {},
  moment = KEEPER,
) {
  return addResult(desk, moment, { ...BAD, ...more }, { ...AT_RESULT, ...how });
}
