// A desk over a small book in memory, asked for things that it says no to.
import type { Account } from '../../../src/account/index.ts';
import type { AnyDraft, MemoryStore } from '../../../src/book/index.ts';
import { Desk, type LogRequest, log, type Moment, type RequestWith } from '../../../src/desk/index.ts';
import { formatShortStamp } from '../../../src/ground/units/index.ts';
import { type DeskFindingCode, entryInWords } from '../../../src/papers/index.ts';
import { holmBook, keep } from '../../journeys/kept.ts';
import { at } from '../../journeys/told.ts';
import { type Failure, failure, type Sample, sample } from './sample.ts';

type Answer = Awaited<ReturnType<typeof log>> | Awaited<ReturnType<Desk['keep']>>;

export const NOW: Moment = { nowUtcMs: at(2, 12), offsetMin: 0, by: 'keeper' };

export interface Asked {
  /** What was entered before, without asking. */
  readonly before?: readonly AnyDraft[];
  readonly request: LogRequest;
  readonly more?: RequestWith;
  readonly moment?: Partial<Moment>;
}

export async function deskOver(port: MemoryStore): Promise<Desk> {
  let count = 0;
  return await Desk.open(port, { chance: () => Uint8Array.from({ length: 10 }, () => ++count % 256) });
}

/** Requests to a book of Holm that has its opening. */
export function askedSample(
  code: DeskFindingCode,
  when: string,
  ...asked: readonly [Asked, ...Asked[]]
): Sample {
  const [first, ...others] = asked.map((each) => () => askHolm(code, each));
  if (first === undefined) throw new Error(`${code} has no request`);
  return sample(when, first, ...others);
}

async function askHolm(code: DeskFindingCode, { before = [], request, more = {}, moment = {} }: Asked) {
  const port = await holmBook();
  await keep(port, before);
  const desk = await deskOver(port);
  const answer = await log(desk, { ...NOW, ...moment }, request, more);
  const opened = await desk.account();
  if (!opened.ok) throw new Error('Holm does not open');
  // The outpost file and the opening stand before them.
  const numbers = new Map(before.map(({ id }, k) => [id, `holm ${k + 3}`]));
  const lines = before.map((draft) => lineOf(opened.value, draft, (id) => numbers.get(id) ?? null));
  const given = [...lines, saidRequest({ request, more, moment })];
  return failed(code, given, answer, opened.value);
}

export function failed(
  code: DeskFindingCode,
  given: readonly string[],
  answer: { readonly ok: true } | Exclude<Answer, { readonly ok: true }>,
  account?: Account,
): Failure {
  const findings = answer.ok ? [] : answer.findings;
  const context = account === undefined ? {} : { dayRule: account.fold.dayRule, mgPerL: account.fold.mgPerL };
  const finding = findings.find((each) => each.code === code);
  if (finding === undefined) {
    throw new Error(
      `${code} is not among: ${findings.map((each) => each.code).join(', ')} (${given.join(' | ')})`,
    );
  }
  return failure(given, finding, context);
}

function lineOf({ fold }: Account, draft: AnyDraft, refOf: (id: string) => string | null): string {
  const context = { mgPerL: fold.mgPerL, dayRule: fold.dayRule, instruments: fold.index.instruments, refOf };
  return `${formatShortStamp(draft.happenedAtMs, fold.dayRule)}  ${draft.by}: ${entryInWords(draft, context)}`;
}

/** `asks {"what":"drink","amount":"8"} by the keeper` */
function saidRequest({ request, more, moment }: Required<Omit<Asked, 'before'>>): string {
  const { by = NOW.by, second } = moment;
  const who = second === undefined ? by : `${by} and ${second.office}`;
  return `asked by the ${who}: ${JSON.stringify({ ...request, ...more })}`;
}
