// The tree of a hold: what a sample's water touched, how much of it is where, what is to be held, and what that changes.
import {
  type Contact,
  cleanResults,
  type DrunkContact,
  type HoldProposal,
  holdProposal,
  type Position,
  type Suspicion,
  type Traced,
  traceContacts,
  type WaterHistory,
} from '../../account/index.ts';
import { dayOf, formatShortStamp } from '../../ground/units/index.ts';
import type { DrunkSum, TouchFate, TouchLine, TraceSheet } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import { viewOf } from '../desk.ts';
import { volumeFigure } from '../figures.ts';
import { standingResults } from './past.ts';
import { Refs } from './refs.ts';
import type { Seen } from './seen.ts';

/** A trace with all that it knows: who drank among it. It does not leave the desk as it is. */
export interface Followed {
  readonly history: WaterHistory;
  readonly suspicion: Suspicion;
  readonly traced: Traced;
  readonly proposal: HoldProposal;
}

export async function follow(
  seen: Seen,
  suspicionIn: (history: WaterHistory) => Suspicion | null,
): Promise<Answer<Followed | null>> {
  const told = await seen.desk.history(viewOf(seen.sight));
  if (!told.ok) return told;
  const history = told.value;
  const suspicion = suspicionIn(history);
  if (suspicion === null || suspicion.sources.length === 0) return yes(null);
  const clean = cleanResults(seen.fold, standingResults(seen.past));
  const traced = traceContacts(history, suspicion, { clean });
  return yes({ history, suspicion, traced, proposal: holdProposal(history, traced.trace) });
}

/** The trace as a sheet. It names nobody: of what people drank it has the sum alone. */
export async function traceSheet(
  { desk, position }: Pick<Seen, 'desk' | 'position'>,
  { history, suspicion, traced, proposal }: Followed,
  { sample, as }: { readonly sample: string | null; readonly as: 'proposed' | 'it stands' },
): Promise<TraceSheet> {
  const refs = new Refs(desk.port);
  const stamp = (ms: number) => formatShortStamp(ms, position.dayRule);
  const { trace, drunk } = traced;
  const touched: TouchLine[] = [];
  for (const contact of trace.contacts) {
    if (
      isPeople(contact) ||
      isAhead(contact) ||
      isTrace(position, contact) ||
      (contact.kind === 'hose' && contact.suspectMg === 0)
    )
      continue;
    const proposed = fateOf(history, proposal, contact);
    const fate = as === 'proposed' ? proposed : standingFate(position, contact, proposed);
    touched.push(await touchLine(position, refs, { contact, fate }));
  }
  const windows = [];
  for (const { store, opened, fromMs, toMs, entry } of trace.windows) {
    const ref = entry === null ? null : await refs.of(entry);
    windows.push({ store, opened, since: stamp(fromMs), until: stamp(toMs), ref });
  }
  const cuts = [];
  for (const { store, how, entry, atMs, clearedMg } of trace.cuts) {
    const cleared = litres(position, { massMg: clearedMg, u: 0 }, entry);
    cuts.push({ store, how, ref: await refs.of(entry), at: stamp(atMs), cleared });
  }
  return {
    sample,
    drawn: stamp(suspicion.takenAtMs),
    windows,
    touched,
    cuts,
    drunk: drunkSum(position, drunk),
  };
}

const isPeople = ({ kind, name }: Pick<Contact, 'kind' | 'name'>) => kind === 'pool' && name === 'people';

/** What went into a pool without walls, and would be told as nothing. */
const isTrace = ({ mgPerL }: Position, { kind, suspectMg }: Contact) =>
  kind === 'pool' && suspectMg < LEAST_TOLD_L * mgPerL;
const LEAST_TOLD_L = 0.05;

/** Water of a port whose counter has not been read: it is in no place that anybody could hold. */
const isAhead = ({ kind, name }: Pick<Contact, 'kind' | 'name'>) => kind === 'pool' && name === 'ahead';

function fateOf(history: WaterHistory, proposal: HoldProposal, contact: Contact): TouchFate {
  const { kind, name, suspectMg } = contact;
  if (kind === 'pool') return 'used';
  if (kind === 'hose') return 'in the hose';
  if (proposal.hold.includes(name)) return 'hold';
  if (proposal.conditional.includes(name)) return 'conditional';
  const store = history.stores.get(name);
  if (store?.aboard !== true) return 'gone';
  return suspectMg > 0 && store.waste ? 'waste' : 'none left';
}

/** What would be held is not what is: some of it may have been released, waived or left free. */
function standingFate(position: Position, { name }: Contact, proposed: TouchFate): TouchFate {
  if (proposed !== 'hold' && proposed !== 'conditional') return proposed;
  const store = position.stores.find(({ facts }) => facts.id === name);
  if (store?.hold != null) return 'hold';
  return store?.conditional == null ? 'not held' : 'conditional';
}

async function touchLine(
  position: Position,
  refs: Refs,
  { contact, fate }: { readonly contact: Contact; readonly fate: TouchFate },
): Promise<TouchLine> {
  const { dayRule } = position;
  const store = position.stores.find(({ facts }) => contact.kind === 'store' && facts.id === contact.name);
  const share = contact.share ?? 0;
  const path = [];
  for (const { from, to, entry, atMs, hose } of contact.path)
    path.push({ from, to, ref: await refs.of(entry), at: formatShortStamp(atMs, dayRule), hose });
  const last = contact.path.at(-1)?.entry ?? '';
  return {
    kind: contact.kind,
    name: contact.name,
    isSource: contact.isSource,
    fate,
    suspect: litres(
      position,
      { massMg: contact.suspectMg, u: store === undefined ? null : share * store.uMg },
      last,
    ),
    held:
      contact.heldMg === null
        ? null
        : litres(position, { massMg: contact.heldMg, u: store?.uMg ?? null }, last),
    share: contact.share,
    first: formatShortStamp(contact.firstMs, dayRule),
    last: formatShortStamp(contact.lastMs, dayRule),
    firstDay: dayOf(contact.firstMs, dayRule),
    path,
    bySampledWay: contact.bySampledWay,
  };
}

function litres(
  position: Position,
  { massMg, u }: { readonly massMg: number; readonly u: number | null },
  entry: string,
) {
  const because = { entries: entry === '' ? [] : [entry], method: 'contact-tracing', inputs: [] };
  const figure = volumeFigure(position, { massMg, uMg: u ?? 0 }, because);
  // Without a ± no place behind the first is anything but noise.
  return u === null ? { ...figure, value: Math.round(10 * figure.value) / 10, u95: null } : figure;
}

/** Less than this of suspect water in all is not said to have been drunk. */
const LEAST_DRUNK_MG = 500;

function drunkSum(position: Position, drunk: readonly DrunkContact[]): DrunkSum | null {
  const massMg = drunk.reduce((sum, one) => sum + one.suspectMg, 0);
  if (massMg < LEAST_DRUNK_MG) return null;
  const times = drunk.map(({ atMs }) => atMs);
  return {
    volume: litres(position, { massMg: Math.round(massMg), u: null }, ''),
    sinceDay: dayOf(Math.min(...times), position.dayRule),
    untilDay: dayOf(Math.max(...times), position.dayRule),
  };
}
