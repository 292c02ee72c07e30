// From any request to a draft: kind, body, and the circumstances of the moment.
import {
  type AnyDraft,
  amendmentsOf,
  entryOf,
  type KeptEntry,
  kindVersion,
  readDraft,
} from '../../book/index.ts';
import type { Finding } from '../../ground/units/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { codeFinding } from '../codes/code-finding.ts';
import { deskFinding } from '../desk-finding.ts';
import {
  drinkBody,
  emptyBody,
  fillBody,
  fullBody,
  hookupBody,
  type Made,
  makeBody,
  moveBody,
  readingBody,
  relabelBody,
  useBody,
} from './bodies.ts';
import { type Context, findEntry, readMoment } from './context.ts';
import { correctBody } from './correct-body.ts';
import { dayBody } from './day-body.ts';
import type { LogRequest, RequestWith } from './request.ts';
import { toldBody } from './told-body.ts';

/** Without a number an undo takes back the last entry of the same office, if it is not older than this. */
const UNDO_WITHIN_MS = 10 * 60_000;

export async function makeDraft(
  context: Context,
  request: LogRequest,
  more: RequestWith,
): Promise<Answer<AnyDraft>> {
  const happened = readMoment(context, more.at);
  if (!happened.ok) return happened;
  const made = await bodyOf(context, request, happened.value.utcMs);
  if (!made.ok) return made;
  const { moment, presentMs, desk } = context;
  // Stocks are those of the instant that they are told for, whenever that is written down.
  const happenedAtMs = made.value.kind === 'opening' ? made.value.body.asOfMs : happened.value.utcMs;
  const draft = {
    ...made.value,
    id: desk.newId(presentMs),
    version: kindVersion(made.value.kind),
    happenedAtMs,
    happenedOffsetMin: happened.value.offsetMin,
    enteredAtMs: Math.max(presentMs, desk.info.purpose === 'practice' ? happenedAtMs : presentMs),
    enteredOffsetMin: moment.offsetMin,
    by: moment.by,
    ...(moment.second !== undefined && { second: moment.second }),
    ...(more.minutes !== undefined && { crewMinutes: more.minutes }),
    ...(more.people !== undefined && { people: more.people }),
    ...(more.source !== undefined && { source: more.source }),
    ...(more.note !== undefined && { note: more.note }),
    ...(more.happened !== undefined && { happened: more.happened }),
    ...(more.late !== undefined && { late: more.late }),
  };
  const read = readDraft(draft);
  return read.ok ? yes(read.draft) : no('bad input', ...read.findings.map(withoutBody));
}

/** Who enters an entry knows its fields, and not in which part of it they are kept. */
function withoutBody(finding: Finding): Finding {
  const bare = (field: string) => field.replace(/^body\./, '');
  const { where, data } = finding;
  const field = data['field'];
  return {
    ...finding,
    where: where.field === undefined ? where : { ...where, field: bare(where.field) },
    data: typeof field === 'string' ? { ...data, field: bare(field) } : data,
  };
}

/** Requests that need no other entry to be looked up. */
export type PlainRequest = Exclude<LogRequest, { readonly what: 'undo' | 'correct' | 'decide' }>;

function bodyOf(
  context: Context,
  request: LogRequest,
  happenedAtMs: number,
): Answer<Made> | Promise<Answer<Made>> {
  switch (request.what) {
    case 'undo':
      return undoBody(context, request);
    case 'correct':
      return correctBody(context, request);
    case 'decide':
      return decideBody(context, request);
    default:
      return plainBody(context, request, happenedAtMs);
  }
}

export function plainBody(context: Context, request: PlainRequest, happenedAtMs: number): Answer<Made> {
  switch (request.what) {
    case 'drink':
      return drinkBody(context, request);
    case 'use':
      return useBody(context, request);
    case 'fill':
      return fillBody(context, request);
    case 'move':
      return moveBody(context, request);
    case 'make':
      return makeBody(context, request);
    case 'weigh':
    case 'gauge':
      return readingBody(context, request);
    case 'empty':
      return emptyBody(context, request);
    case 'full':
      return fullBody(context, request);
    case 'hookup':
      return hookupBody(context, request);
    case 'relabel':
      return relabelBody(context, request);
    case 'day':
      return dayBody(context, request, happenedAtMs);
    case 'told':
      return toldBody(context, request.kind, request.fields);
    case 'kind':
      return yes({ kind: request.kind, body: request.body } as Made);
  }
}

async function undoBody(
  context: Context,
  request: Extract<LogRequest, { what: 'undo' }>,
): Promise<Answer<Made>> {
  const target =
    request.entry === undefined ? await lastOwn(context) : await findEntry(context.desk, request.entry);
  if (!target.ok) return target;
  const office = await codeOfOffice(context.desk, target.value.id);
  if (office !== null) {
    const ref = `${target.value.site} ${target.value.number}`;
    return no('refused', codeFinding('code-not-undone', { ref, office }));
  }
  const amendments = await amendmentsOf(context.desk.port, {});
  const before = amendments.undone.get(target.value.id);
  if (before !== undefined) {
    const data = {
      ref: `${target.value.site} ${target.value.number}`,
      by: `${before.site} ${before.number}`,
    };
    return no('bad input', deskFinding('already-undone', data, { entries: [before.id] }));
  }
  const reason = request.reason === undefined ? {} : { reason: request.reason };
  return yes({ kind: 'undo', body: { target: target.value.id, ...reason } });
}

/** The office whose code an entry tells of; null where it tells of something else. */
async function codeOfOffice(desk: Context['desk'], id: string): Promise<string | null> {
  const row = await desk.port.find(id);
  const entry = row === null ? null : entryOf(row);
  return entry?.kind === 'code-set' ? entry.body.office : null;
}

/** An undo is not undone by going on; the outpost file and a code are no slips of a moment. */
const NOT_TAKEN_BACK: ReadonlySet<string> = new Set(['undo', 'outpost', 'code-set']);

/** When a row was entered, as a watch would have it: the time of a practice book leaps from line to line. */
function enteredMs({ desk, moment, presentMs }: Context, row: KeptEntry): { atMs: number; nowMs: number } {
  return desk.info.purpose === 'practice'
    ? { atMs: row.keptAtMs, nowMs: moment.nowUtcMs }
    : { atMs: row.enteredAtMs, nowMs: presentMs };
}

/** The youngest entry of this office that still counts, if it was entered a moment ago: again and again, one after the other. */
async function lastOwn(context: Context): Promise<Answer<{ id: string; site: string; number: number }>> {
  const { desk, moment } = context;
  const amendments = await amendmentsOf(desk.port, {});
  const head = (await desk.port.heads()).find((one) => one.site === desk.info.site);
  for (let number = head?.number ?? 0; number > 0; number--) {
    const row = await desk.port.findNumber(desk.info.site, number);
    if (row === null) break;
    const { atMs, nowMs } = enteredMs(context, row);
    if (atMs < nowMs - UNDO_WITHIN_MS) break;
    const entry = entryOf(row);
    if (
      entry.by === moment.by &&
      !NOT_TAKEN_BACK.has(entry.kind) &&
      entry.origin === undefined &&
      !amendments.undone.has(entry.id)
    )
      return yes(row);
  }
  return no(
    'bad input',
    deskFinding('nothing-to-undo', { by: moment.by, withinMin: UNDO_WITHIN_MS / 60_000 }),
  );
}

async function decideBody(
  context: Context,
  request: Extract<LogRequest, { what: 'decide' }>,
): Promise<Answer<Made>> {
  const first = await findEntry(context.desk, request.first);
  if (!first.ok) return first;
  const second = await findEntry(context.desk, request.second);
  if (!second.ok) return second;
  // The later one in the order of the book is the one that waits.
  const proposal = context.fold.findings.find(
    (finding) =>
      (finding.code === 'duplicate-proposed' || finding.code === 'copy-proposed') &&
      finding.entries.includes(first.value.id) &&
      finding.entries.includes(second.value.id),
  );
  const waiting = proposal?.entries[0] ?? second.value.id;
  const other = waiting === second.value.id ? first.value.id : second.value.id;
  return yes({
    kind: 'duplicate-decision',
    body: { first: other, second: waiting, decision: request.decision },
  });
}
