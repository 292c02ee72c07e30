// A calculator asked over a book: the position and the runs of a hose are looked up first, then all is pure.
import type { BiocideState } from '../../account/index.ts';
import { type AnyEntry, readBook, type View } from '../../book/index.ts';
import type { ReckonSheet } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import { standingStores } from '../biocide/standing-stores.ts';
import { type Desk, type Moment, positionAt, type Sight, viewOf } from '../desk.ts';
import { type FromBook, hoseOf, type RawGauging, storeOf, type TimedRun } from './from-book.ts';
import { type ReckonRequest, reckon } from './reckon.ts';

/** Reckons with what the book knows in a sight. */
export async function reckonOver(
  desk: Desk,
  request: ReckonRequest,
  sight: Sight,
  moment: Moment,
): Promise<Answer<ReckonSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const names = new Map(Object.entries(request.fields));
  const book = { position, names, runs: [], lastGauging: null, biocide: null };
  const hose = hoseOf(book, 'hose');
  const runs = hose.ok && hose.value !== null ? await runsOf(desk, hose.value.id, viewOf(sight)) : [];
  const store = request.fields['reading'] === 'last' ? storeOf(book, 'store') : null;
  const lastGauging =
    store?.ok === true && store.value !== null
      ? await lastGaugingOf(desk, store.value.facts.id, viewOf(sight))
      : null;
  const biocide = request.what === 'dose' ? await biocideOf(desk, book, viewOf(sight)) : null;
  const answer = reckon(request, { position, runs, lastGauging, biocide });
  return answer.ok ? yes(await withRefs(desk, answer.value)) : answer;
}

async function biocideOf(desk: Desk, book: FromBook, view: View): Promise<BiocideState | null> {
  const store = storeOf(book, 'store');
  if (!store.ok || store.value === null) return null;
  const storage = await desk.storage(view);
  if (!storage.ok) return null;
  return standingStores(book.position, storage.value).get(store.value.facts.id) ?? null;
}

/** Runs that went through in one go and were timed; what was paused is no measure of a hose. */
async function runsOf(desk: Desk, hose: string, view: View): Promise<readonly TimedRun[]> {
  const runs: TimedRun[] = [];
  for await (const entries of readBook(desk.port, view))
    for (const entry of entries) {
      const run = runOf(entry, hose);
      if (run !== null) runs.push(run);
    }
  return runs;
}

function runOf(entry: AnyEntry, hose: string): TimedRun | null {
  if (entry.kind !== 'movement') return null;
  const { hose: through, flowMinutes, amount, pushOverCabinKPa } = entry.body;
  if (through !== hose || flowMinutes === undefined) return null;
  const { id } = entry;
  return { entry: id, massMg: amount.massMg, minutes: flowMinutes, overCabinKPa: pushOverCabinKPa ?? null };
}

async function lastGaugingOf(desk: Desk, store: string, view: View): Promise<RawGauging | null> {
  let last: RawGauging | null = null;
  for await (const entries of readBook(desk.port, view))
    for (const { id, ...entry } of entries)
      if (entry.kind === 'pvt' && entry.body.store === store) last = { entry: id, body: entry.body };
  return last;
}

/** Entries by the names that people know: `skerry 12`. */
async function withRefs(desk: Desk, sheet: ReckonSheet): Promise<ReckonSheet> {
  const refs = new Map<string, string>();
  for (const id of new Set(sheet.inputs.flatMap(({ refs: ids }) => ids))) {
    const row = await desk.port.find(id);
    if (row !== null) refs.set(id, `${row.site} ${row.number}`);
  }
  const inputs = sheet.inputs.map((input) => ({
    ...input,
    refs: input.refs.map((id) => refs.get(id) ?? id),
  }));
  return { ...sheet, inputs };
}
