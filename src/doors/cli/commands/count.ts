// `count start`, `add`, `show` and `finish`: the stock count, whose readings wait beside the book until it is finished.
import { countOne, countSheet, finishCount } from '../../../desk/index.ts';
import { formatIsoUtc, formatShortStamp } from '../../../ground/units/index.ts';
import {
  type CountedStore,
  countedInWords,
  countResultText,
  countSheetText,
  signed,
  wordFinding,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { askCount } from '../count/ask-count.ts';
import { type CountDraft, forgetCountDraft, keepCountDraft, readCountDraft } from '../count/draft.ts';
import { circumstancesOf } from '../keep.ts';
import { type OpenBook, withBook } from '../open-book.ts';
import type { Sheet } from '../outcome.ts';
import { orStop, Stopped, stopWith, wrongUse } from '../problem.ts';
import { textOptions } from '../text-options.ts';

export function run(call: Call): Promise<Sheet> {
  const act = acts[call.command.path[1] ?? ''];
  if (act === undefined) throw new Error(`no act is called ${call.command.path.join(' ')}`);
  return act(call);
}

const acts: Readonly<Record<string, (call: Call) => Promise<Sheet>>> = {
  start: (call) => withBook(call, { write: false }, start),
  show: (call) => withBook(call, { write: false }, (open) => sheetOf(open, draftOf(open))),
  add: (call) => withBook(call, { write: false }, add),
  finish: (call) => withBook(call, { write: !call.has('dry-run') }, finish),
};

function draftOf({ place }: OpenBook): CountDraft | null {
  return readCountDraft(place.path);
}

function needDraft(open: OpenBook): CountDraft {
  const draft = draftOf(open);
  if (draft === null) throw stopWith('wrong use', 'count-not-begun', {});
  return draft;
}

async function start(open: OpenBook): Promise<Sheet> {
  const { call, desk, place } = open;
  const known = draftOf(open);
  if (known !== null && known.typed.size > 0 && !call.has('yes')) {
    const account = orStop(await desk.account());
    const since = formatShortStamp(known.begunMs, account.fold.dayRule);
    const data = { since, read: `${known.typed.size}` };
    throw stopWith('ask first', 'count-under-way', data);
  }
  const draft = await begin(open);
  if (!call.has('dry-run')) keepCountDraft(place.path, draft);
  return sheetOf(open, draft);
}

/** A count that is begun now, with nothing typed. */
async function begin({ desk, moment }: OpenBook): Promise<CountDraft> {
  const account = orStop(await desk.account());
  return { begunMs: desk.presentMs(account.fold, moment), by: moment.by, typed: new Map() };
}

async function sheetOf({ desk, moment }: OpenBook, draft: CountDraft | null): Promise<Sheet> {
  const count = { begunMs: draft?.begunMs ?? null, typed: draft?.typed ?? new Map<string, string>() };
  const sheet = orStop(await countSheet(desk, moment, count));
  return { schema: 'count-sheet', data: sheet, text: (options) => countSheetText(sheet, options) };
}

/** Pairs of name and reading; without any, a person is asked one by one. */
async function add(open: OpenBook): Promise<Sheet> {
  const { call } = open;
  let draft = draftOf(open) ?? (await begin(open));
  if (call.args.length === 0) return walk(open, draft);
  if (call.args.length % 2 !== 0)
    throw wrongUse('flag-needed', {
      flag: 'READING',
      command: 'count add',
      because: 'Each name wants a reading behind it, or - for not read.',
    });
  const read: { id: string; text: string; store: CountedStore | null; before: string | null }[] = [];
  for (let at = 0; at < call.args.length; at += 2) {
    const said = { name: call.arg(at), text: call.arg(at + 1) };
    const one = orStop(await countOne(open.desk, open.moment, said));
    if (one.store?.verdict === 'far off' && !call.has('yes')) throw farOff(open, one.store);
    read.push({ ...one, before: draft.typed.get(one.id) ?? null });
    draft = { ...draft, typed: new Map([...draft.typed, [one.id, one.text]]) };
  }
  if (!call.has('dry-run')) keepCountDraft(open.place.path, draft);
  const lines = read.map(
    ({ id, text, store, before }) =>
      `${store === null ? `${id} ${text === '-' ? 'not read' : text}.` : countedInWords(store)}${before === null ? '' : ` It was typed as ${before} before.`}`,
  );
  return {
    schema: 'counted',
    data: { readings: read, read: draft.typed.size },
    text: ({ style }) => lines.map((line) => `${signed(line, style)}\n`).join(''),
  };
}

function farOff({ call }: OpenBook, store: CountedStore) {
  const { style } = textOptions(call, 'stderr');
  const said = ({ value, u95 }: { value: number; u95: number }) =>
    signed(`${value.toFixed(1)} ± ${u95.toFixed(1)} L`, style);
  const data = {
    store: store.id,
    counted: store.counted === null ? '' : said(store.counted),
    book: said(store.book),
  };
  return stopWith('ask first', 'count-far-off', data, { store: store.id });
}

async function walk(open: OpenBook, begun: CountDraft): Promise<Sheet> {
  const { call, desk, moment, place } = open;
  if (!call.mayAsk())
    throw wrongUse('flag-needed', {
      flag: 'STORE READING',
      command: 'count add',
      because: 'Nobody can be asked here.',
    });
  let draft = begun;
  const { style } = textOptions(call, 'stderr');
  const sheet = orStop(await countSheet(desk, moment, { begunMs: draft.begunMs, typed: draft.typed }));
  let doubted: string | null = null;
  const isWhole = await askCount({
    terminal: call.terminal,
    sheet,
    take: async (item, text) => {
      const one = await countOne(desk, moment, { name: item.id, text });
      if (!one.ok) {
        const worded = one.findings.map((finding) => wordFinding(finding));
        return { taken: false, says: worded.map((each) => `  ${each.text} ${each.remedy}`).join('\n') };
      }
      const { store } = one.value;
      const says = store === null ? '' : `  ${signed(countedInWords(store), style)}`;
      if (store?.verdict === 'far off' && doubted !== text) {
        doubted = text;
        return { taken: false, says: `${says} Type it again to keep it.` };
      }
      draft = { ...draft, typed: new Map([...draft.typed, [one.value.id, one.value.text]]) };
      keepCountDraft(place.path, draft);
      return { taken: true, says };
    },
  });
  if (!isWhole)
    throw new Stopped(['', `Kept: ${draft.typed.size} readings. Go on with: waterwright count add`]);
  return sheetOf(open, draft);
}

async function finish(open: OpenBook): Promise<Sheet> {
  const { call, desk, moment, place } = open;
  const draft = needDraft(open);
  const count = { name: formatIsoUtc(draft.begunMs), typed: draft.typed };
  const result = orStop(await finishCount(desk, moment, count, circumstancesOf(call, undefined)));
  if (result.kept) forgetCountDraft(place.path);
  return { schema: 'count', data: result, text: (options) => countResultText(result, options) };
}
