// What is asked before it is kept: amounts and readings that cannot well be true. Who says yes gets it kept, with its finding.
import type { AccountFinding, Fold } from '../../account/index.ts';
import type { AnyDraft, CounterReading, Draft } from '../../book/index.ts';
import {
  dayOf,
  dayStartUtcMs,
  type Finding,
  type FindingData,
  type Where,
} from '../../ground/units/index.ts';
import type { DeskFindingCode } from '../../papers/index.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Context } from './context.ts';
import { contentOf, sideOf } from './movement-rules.ts';
import { entryToBe, foldWith } from './overlay.ts';
import type { LogRequest } from './request.ts';

/** Questions about a draft; empty: it is kept at once. */
export async function questionsBefore(
  context: Context,
  request: LogRequest,
  draft: AnyDraft,
): Promise<readonly Finding[]> {
  return [
    ...unsaidSource(request, draft),
    ...timeAhead(context, draft),
    ...aboutAmounts(context, draft),
    ...(await aboutReadings(context, draft)),
  ];
}

/** A question is no error: by that a door tells it from a refusal. */
function question(code: DeskFindingCode, data: FindingData, { where }: { readonly where: Where }): Finding {
  return deskFinding(code, data, { where, severity: 'know' });
}

/** Water from nowhere is on nobody's word: it makes what it comes into unfit to be counted on. */
function unsaidSource(request: LogRequest, draft: AnyDraft): Finding[] {
  const isFill = request.what === 'fill' || request.what === 'move';
  if (!isFill || request.from !== undefined || draft.kind !== 'movement') return [];
  return [question('source-unsaid', { to: draft.body.to }, { where: { field: 'from' } })];
}

/** The present of a practice book is its last entry: one slip of a day would move all that is shown. */
function timeAhead({ desk, fold, moment }: Context, draft: AnyDraft): Finding[] {
  if (desk.info.purpose !== 'practice' || fold.lastEntryMs === null) return [];
  const presentMs = desk.presentMs(fold, moment);
  const endMs = dayStartUtcMs(dayOf(presentMs, fold.dayRule) + 2, fold.dayRule);
  if (draft.happenedAtMs < endMs) return [];
  const data = { happenedAtMs: draft.happenedAtMs, presentMs, endMs };
  return [question('time-ahead', data, { where: { field: 'at' } })];
}

function aboutAmounts(context: Context, draft: AnyDraft): Finding[] {
  if (draft.kind === 'movement')
    return [...moreThanThere(context.fold, draft), ...largeDrink(context, draft.body)];
  if (draft.kind === 'correction')
    return largeDrink(context, draft.body.body as Partial<Draft<'movement'>['body']>);
  return [];
}

/** What comes through a unit, or out of a store that nothing gauges: rules refuse it of no other store. */
function moreThanThere(fold: Fold, { body }: Draft<'movement'>): Finding[] {
  const sources = sourcesOf(fold, body.from);
  if (sources.length === 0) return [];
  const contents = sources.map((id) => contentOf(fold, id));
  const hasMg = contents.reduce((sum, { massMg }) => sum + Math.max(0, massMg), 0);
  const u95Mg = Math.round(2 * Math.sqrt(contents.reduce((sum, { uMg }) => sum + uMg * uMg, 0)));
  const { massMg } = body.amount;
  if (massMg <= hasMg + u95Mg) return [];
  const data = { from: body.from, massMg, hasMg, u95Mg, mgPerL: fold.mgPerL };
  return [question('more-than-there', data, { where: { field: 'amount' } })];
}

function sourcesOf(fold: Fold, from: string): readonly string[] {
  const unit = fold.index.units.get(from);
  if (unit === undefined) {
    const id = sideOf(fold, from)?.facts.id;
    return id !== undefined && fold.index.stores.get(id)?.gaugedBy === 'nothing' ? [id] : [];
  }
  const ids = unit.takes.flatMap((end) => {
    if ('store' in end) return [end.store];
    const on = 'port' in end ? fold.storeOn(end.port) : null;
    return on === null ? [] : [on.facts.id];
  });
  return [...new Set(ids)].filter((id) => fold.stores.get(id)?.aboard === true);
}

/** One drink of more than a whole day of one person by the planning rate of the outpost. */
function largeDrink({ fold }: Context, body: Partial<Draft<'movement'>['body']>): Finding[] {
  const mostMg = Math.round(fold.index.outpost.policy.planningLPerPersonDay * fold.mgPerL);
  const { use, amount } = body;
  if (use !== 'drink' || amount === undefined || amount.massMg <= mostMg) return [];
  const data = { massMg: amount.massMg, mostMg, mgPerL: fold.mgPerL };
  return [question('drink-large', data, { where: { field: 'amount' } })];
}

async function aboutReadings(context: Context, draft: AnyDraft): Promise<Finding[]> {
  const body = draft.kind === 'correction' ? draft.body.body : draft.body;
  const readings = (body as { readonly readings?: readonly CounterReading[] }).readings;
  if (readings === undefined || !ASKED.has(draft.kind)) return [];
  const bounds = beyondNature(context.fold, readings);
  const said = new Set(bounds.map(({ where }) => where.field));
  const entry = await entryToBe(context.desk, draft);
  const about = draft.kind === 'correction' ? draft.body.target : entry.id;
  const before = new Set(askedOf(context.fold.findings, about).map(({ where }) => where.field));
  const asked = askedOf((await foldWith(context, entry)).findings, about).filter(
    ({ where }) => !said.has(where.field) && !before.has(where.field),
  );
  // In the order of the sheet: the eye goes from field to field.
  const place = ({ where }: Finding) => readings.findIndex((one) => one.instrument === where.field);
  return [...bounds, ...asked].sort((one, other) => place(one) - place(other));
}

const ASKED: ReadonlySet<string> = new Set(['day-line', 'meter', 'correction']);

/** Between these the air that people live in is. Ours, no source: beyond them it is a slip, or something to be told twice. */
const NATURE: ReadonlyMap<string, { readonly low: number; readonly high: number }> = new Map([
  ['humidity', { low: 0, high: 100 }],
  ['temperature', { low: 0, high: 60 }],
]);

function beyondNature(fold: Fold, readings: readonly CounterReading[]): Finding[] {
  return readings.flatMap(({ instrument: id, value }) => {
    const instrument = fold.index.instruments.get(id);
    const range = NATURE.get(instrument?.measures ?? '');
    if (instrument === undefined || range === undefined || value === null) return [];
    if (value >= range.low && value <= range.high) return [];
    const data = { of: instrument.name, value, unit: instrument.unit, ...range, fits: null };
    return [question('reading-unusual', data, { where: { field: id } })];
  });
}

/** What the account would ask about the entry when it is in the book. */
function askedOf(findings: readonly AccountFinding[], entry: string): Finding[] {
  return findings.flatMap((finding): Finding[] => {
    const { code, where, data } = finding;
    if (where.entry !== entry) return [];
    const more = { where: where.field === undefined ? {} : { field: where.field } };
    switch (code) {
      case 'counter-backwards':
      case 'counter-replaced': {
        const { instrument, value, last } = data;
        return [question('counter-below-last', { instrument, value, last } as never, more)];
      }
      case 'counter-leaps': {
        const { instrument, massMg, mostMg, mgPerL } = data as Readonly<Record<string, number>>;
        const litres = (mg = 0) => mg / (mgPerL ?? 1);
        const figures = { of: instrument, value: litres(massMg), unit: 'L', low: 0, high: litres(mostMg) };
        return [question('reading-unusual', { ...figures, fits: null } as never, more)];
      }
      case 'amount-implausible':
      case 'reading-implausible': {
        const { of, value, unit, low, high, fits } = data;
        return [question('reading-unusual', { of, value, unit, low, high, fits } as never, more)];
      }
      default:
        return [];
    }
  });
}
