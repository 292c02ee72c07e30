// `count start`, `add`, `show` and `finish`: the stock count, whose readings wait beside the book until it is finished.
import {
  beginCount,
  type CountReading,
  type CountUnderWay,
  countInBook,
  countSheet,
  finishCount,
  readCounted,
} from '../../../desk/index.ts';
import { formatShortStamp } from '../../../ground/units/index.ts';
import {
  countedInWords,
  countLabels,
  countResultText,
  countSheetText,
  countTakenText,
  inBookAlready,
  keptForLater,
  signed,
  wordFinding,
} from '../../../papers/index.ts';
import type { Call } from '../call.ts';
import { askCount, type Taken } from '../count/ask-count.ts';
import { addToCountDraft, beginCountDraft, readCountDraft, settleCountDraft } from '../count/draft.ts';
import { circumstancesOf } from '../keep.ts';
import { type OpenBook, withBook, wordsContext } from '../open-book.ts';
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
  show: (call) => withBook(call, { write: false }, async (open) => sheetOf(open, await underWay(open))),
  add: (call) => withBook(call, { write: false }, add),
  finish: (call) => withBook(call, { write: !call.has('dry-run') }, finish),
};

/** The count that is under way. One that a crash left behind after it had come into the book is none. */
async function underWay({ call, desk, place }: OpenBook): Promise<CountUnderWay | null> {
  const count = readCountDraft(place.path);
  const ref = count === null ? null : await countInBook(desk, count);
  if (count === null || ref === null) return count;
  const { fold } = orStop(await desk.account());
  call.notes.push(inBookAlready(formatShortStamp(count.begunMs, fold.dayRule), ref));
  settleCountDraft(place.path, count, desk.newId(count.begunMs));
  return readCountDraft(place.path);
}

async function start(open: OpenBook): Promise<Sheet> {
  const { call, desk, moment, place } = open;
  const known = call.has('yes') ? null : await underWay(open);
  if (known !== null && known.typed.size > 0) {
    throw stopWith('ask first', 'count-under-way', { begunMs: known.begunMs, typed: known.typed.size });
  }
  const places = (call.text('places') ?? '').split(',').map((name) => name.trim());
  const begun = await beginCount(
    desk,
    moment,
    places.filter((name) => name !== ''),
  );
  const count = orStop(begun);
  if (!call.has('dry-run')) beginCountDraft(place.path, count);
  return sheetOf(open, count);
}

async function sheetOf({ desk, moment }: OpenBook, count: CountUnderWay | null): Promise<Sheet> {
  const sheet = orStop(await countSheet(desk, moment, count));
  return { schema: 'count-sheet', data: sheet, text: (options) => countSheetText(sheet, options) };
}

/** Pairs of name and reading, all or none; without any, a person is asked one by one. */
async function add(open: OpenBook): Promise<Sheet> {
  const { call, desk, moment, place } = open;
  // A count that nobody has begun begins with its first reading.
  const fresh = orStop(await beginCount(desk, moment, []));
  const begun = (await underWay(open)) ?? fresh;
  if (call.args.length === 0) return walk(open, begun, fresh);
  const readings = orStop(await readCounted(desk, moment, pairsOf(call), { keep: call.has('yes') }));
  const before = new Map(begun.typed);
  const taken = readings.map((reading) => {
    const told = { ...reading, before: before.get(reading.id) ?? null };
    before.set(reading.id, reading.text);
    return told;
  });
  const now = call.has('dry-run')
    ? { typed: before }
    : addToCountDraft(place.path, withReadings(readings, fresh));
  const sheet = { readings: taken, read: now.typed.size };
  return {
    schema: 'counted',
    data: sheet,
    text: (options) => countTakenText(sheet, options),
    ...(call.has('dry-run') && { talk: [countLabels.wouldBe] }),
  };
}

function pairsOf({ args, command }: Call): readonly { readonly name: string; readonly text: string }[] {
  const names = args.filter((_, k) => k % 2 === 0);
  if (args.length % 2 === 0) return names.map((name, k) => ({ name, text: args[2 * k + 1] ?? '' }));
  const [example] = command.examples[0] ?? [''];
  throw wrongUse('argument-missing', { argument: 'READING', command: command.path.join(' '), example });
}

/** On top of what stands there at this moment: somebody else may have typed, or finished, meanwhile. */
function withReadings(readings: readonly CountReading[], fresh: CountUnderWay) {
  return (now: CountUnderWay | null): CountUnderWay => {
    const count = now ?? fresh;
    return {
      ...count,
      typed: new Map([...count.typed, ...readings.map(({ id, text }) => [id, text] as const)]),
    };
  };
}

async function walk(open: OpenBook, begun: CountUnderWay, fresh: CountUnderWay): Promise<Sheet> {
  const { call, desk, moment, place } = open;
  const [example] = call.command.examples[0] ?? [''];
  if (!call.mayAsk())
    throw wrongUse('argument-missing', { argument: 'ITEM READING', command: 'count add', example });
  const sheet = orStop(await countSheet(desk, moment, begun));
  const context = await wordsContext(desk);
  const take = async (item: { readonly id: string }, text: string, again: boolean): Promise<Taken> => {
    const read = await readCounted(desk, moment, [{ name: item.id, text }], { keep: again });
    if (!read.ok) {
      const says = read.findings.map((each) => wordFinding(each, context));
      if (read.problem !== 'ask first')
        return { outcome: 'wrong', says: says.map((each) => `${each.text} ${each.remedy}`) };
      return { outcome: 'ask', says: says.map((each) => `${each.text} ${countLabels.again}`) };
    }
    addToCountDraft(place.path, withReadings(read.value, fresh));
    return {
      outcome: 'taken',
      says: read.value.flatMap(({ store }) => (store === null ? [] : [countedInWords(store)])),
    };
  };
  const options = textOptions(call, 'stderr');
  const isWhole = await askCount({ terminal: call.terminal, sheet, options, take });
  const now = readCountDraft(place.path);
  if (!isWhole) throw new Stopped(['', signed(keptForLater(now?.typed.size ?? 0), options.style)]);
  return sheetOf(open, now);
}

async function finish(open: OpenBook): Promise<Sheet> {
  const { call, desk, moment, place } = open;
  const count = await underWay(open);
  if (count === null) throw stopWith('wrong use', 'count-not-begun', {});
  const more = { ...circumstancesOf(call, undefined), yes: call.has('yes') };
  const result = orStop(await finishCount(desk, moment, count, more));
  if (result.kept) settleCountDraft(place.path, count, desk.newId(count.begunMs));
  return { schema: 'count', data: result, text: (options) => countResultText(result, options) };
}
