// `today`: one screen of how much, where, fit for what, until when, what needs somebody; or what is new; or what to say.
import { since, today } from '../../../desk/index.ts';
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
  if (sight.kind === 'now') await looked(open);
  if (call.has('say')) {
    const text = aloud(sheet);
    return { schema: 'say', data: { text }, text: ({ style }) => `${signed(text, style)}\n` };
  }
  const findings = sheet.silence === null ? sheet.findings : [sheet.silence, ...sheet.findings];
  return { schema: 'today', data: sheet, text: (options) => todayText(sheet, options), findings };
}

/** Who looks for the first time is shown the last day of the book. */
const FIRST_LOOK_MS = msPerDay;

async function sinceThen(open: OpenBook, from: string): Promise<Sheet> {
  const { call, desk, moment } = open;
  const isMine = from.toLowerCase() === 'me';
  const known = isMine ? lastLooked(call.terminal, lookerOf(open)) : null;
  const nowMs = await presentMs(open);
  const fromMs = isMine
    ? (known ?? nowMs - FIRST_LOOK_MS)
    : await readTime(desk, moment, { text: from, flag: 'since' });
  const { fold } = orStop(await desk.account());
  const sheet = orStop(await since(desk, Math.max(fromMs, fold.openingMs ?? fromMs), moment));
  const talk =
    isMine && known === null
      ? [`No earlier look of the ${moment.by} is known here: the last 24 hours are shown.`]
      : [];
  if (isMine) await looked(open);
  return { schema: 'since', data: sheet, text: (options) => sinceText(sheet, options), talk };
}

function lookerOf({ desk, moment }: OpenBook) {
  return { bookId: desk.info.bookId, office: moment.by };
}

async function presentMs({ desk, moment }: OpenBook): Promise<number> {
  return desk.presentMs(orStop(await desk.account()).fold, moment);
}

async function looked(open: OpenBook): Promise<void> {
  rememberLook(open.call.terminal, lookerOf(open), await presentMs(open));
}
