// `today`: one screen of how much, where, fit for what, until when, what needs somebody; or what is new; or what to say.
import { type Look, lookNow, since, today } from '../../../desk/index.ts';
import { msPerDay } from '../../../ground/units/index.ts';
import { aloud, signed, sinceText, todayText } from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { lastLooked, rememberLook } from '../last-looked.ts';
import { type OpenBook, withBook } from '../open-book.ts';
import type { Outcome, Sheet } from '../outcome.ts';
import { orStop } from '../problem.ts';
import { readTime, sightOf } from '../sight.ts';

export function run(call: Call): Promise<Outcome> {
  call.holdApart('since', 'say');
  call.holdApart('since', 'at');
  call.holdApart('since', 'as-of');
  return withBook(call, { write: false }, (open) => {
    const from = call.text('since');
    return from === undefined ? show(open) : sinceThen(open, from);
  });
}

async function show(open: OpenBook): Promise<Sheet> {
  const { call, desk, moment } = open;
  const sight = await sightOf(call, desk, moment);
  const sheet = orStop(await today(desk, sight, moment));
  if (sight.kind === 'now') {
    const now = await lookNow(desk, moment);
    // Whoever asks under a name that the outpost does not have sees the page, and nothing is kept of it.
    if (now.ok) rememberLook(call.terminal, lookerOf(open), now.value);
  }
  const findings = sheet.silence === null ? sheet.findings : [sheet.silence, ...sheet.findings];
  if (call.has('say')) {
    const text = aloud(sheet);
    return { schema: 'say', data: { text }, text: ({ style }) => `${signed(text, style)}\n`, findings };
  }
  return { schema: 'today', data: sheet, text: (options) => todayText(sheet, options), findings };
}

/** Who looks for the first time is shown the last day of the book. */
const FIRST_LOOK_MS = msPerDay;

async function sinceThen(open: OpenBook, from: string): Promise<Sheet> {
  const { call, desk, moment } = open;
  if (from.toLowerCase() !== 'me')
    return sheetSince(open, { atMs: await readTime(desk, moment, { text: from, flag: 'since' }) }, []);
  const now = orStop(await lookNow(desk, moment));
  const known = lastLooked(call.terminal, lookerOf(open));
  const first = `No earlier look of the ${moment.by} is known here: the last 24 hours of the book are shown.`;
  const sheet =
    known === null
      ? await sheetSince(open, await firstLook(open, now.atMs), [first])
      : // A clock that was set back must not put the look into the future.
        await sheetSince(open, { ...known, atMs: Math.min(known.atMs, now.atMs) }, []);
  rememberLook(call.terminal, lookerOf(open), now);
  return sheet;
}

async function firstLook({ desk }: OpenBook, nowMs: number): Promise<Look> {
  const { fold } = orStop(await desk.account());
  const fromMs = nowMs - FIRST_LOOK_MS;
  return { atMs: Math.max(fromMs, fold.openingMs ?? fromMs) };
}

async function sheetSince({ desk, moment }: OpenBook, look: Look, talk: readonly string[]): Promise<Sheet> {
  const sheet = orStop(await since(desk, look, moment));
  return {
    schema: 'since',
    data: sheet,
    text: (options) => sinceText(sheet, options),
    findings: sheet.newFindings,
    talk,
  };
}

function lookerOf({ desk, moment }: OpenBook) {
  return { bookId: desk.info.bookId, office: moment.by };
}
