// English for entries about the outpost itself: people, visits, units, parts and the cabin.
import type { Body } from '../../../../book/index.ts';
import { counted, listed, saidTime, saidValue } from '../said.ts';
import { type EntryContext, joined, saidContent, saidGrade, saidValues } from './context.ts';

/** The file's own name line is not looked for: the book keeps the text, and this line says that it did. */
export function outpost(body: Body<'outpost'>): string {
  return joined(`outpost file, ${counted(body.text.length, 'character')}`, body.reason);
}

type NewStore = Body<'store-added'>;

export function storeAdded(body: NewStore, context: EntryContext): string {
  return joined(`new store ${saidNewStore(body, context)}`, body.place);
}

function saidNewStore(store: NewStore, context: EntryContext): string {
  const holds = store.grade === null ? 'never used' : saidGrade(store.grade, context);
  const content = store.amount === undefined ? '' : ` ${saidContent(store.amount, context)}`;
  return `${store.store} (${saidValue(store.capacityL, 'L')}, ${holds}${content})`;
}

export function roster(body: Body<'roster'>): string {
  const { people, change } = body;
  return `roster: ${people === 1 ? `1\u00A0person ${change}s` : `${people}\u00A0people ${change}`}`;
}

export function visitBerth(body: Body<'visit-berth'>, context: EntryContext): string {
  const { visit, departDay, peopleArrive, stores } = body;
  return joined(
    `berth of ${visit}`,
    peopleArrive > 0 && counted(peopleArrive, 'person arrives', 'people arrive'),
    departDay !== undefined && `leaves on Day ${departDay}`,
    stores.length > 0 && `brings ${listed(stores.map((store) => saidNewStore(store, context)))}`,
  );
}

export function visitSlip(body: Body<'visit-slip'>): string {
  return `slip of ${body.visit}: from Day ${body.plannedDay} to Day ${body.newDay}`;
}

export function visitDepart(body: Body<'visit-depart'>, context: EntryContext): string {
  const { visit, peopleDepart, took, declared } = body;
  return joined(
    `departure of ${visit}`,
    peopleDepart > 0 && counted(peopleDepart, 'person leaves', 'people leave'),
    took.length > 0 && `takes ${listed(took)}`,
    declared !== undefined && `${saidContent(declared, context)} declared aboard it`,
  );
}

export function service(body: Body<'service'>): string {
  return joined(`service of ${body.item}: ${body.what}`, saidValues(body.readings));
}

const conditions: Readonly<Record<Body<'unit-condition'>['state'], string>> = {
  on: 'is on',
  off: 'is off',
  limited: 'is limited',
  failed: 'has failed',
  repaired: 'was repaired',
  alarm: 'is in alarm',
};

export function unitCondition(body: Body<'unit-condition'>): string {
  return joined(`${body.unit} ${conditions[body.state]}`, saidValues(body.readings));
}

export function cabinWindow(body: Body<'cabin-window'>, context: EntryContext): string {
  const pressures = `from ${saidValue(body.beforeKPaAbs, 'kPa')} abs to ${saidValue(body.duringKPaAbs, 'kPa')} abs`;
  return `cabin pressure ${pressures} until ${saidTime(body.untilMs, context.dayRule)}: gauge readings say nothing in that time`;
}

type Counted = Body<'part-counted'>;
const ofPart = ({ part, count, unit }: Counted): string => `${part}, ${saidValue(count, unit ?? '')}`;

export function partReceived(body: Counted): string {
  return `part received: ${ofPart(body)}`;
}

export function partUsed(body: Counted): string {
  return `part used: ${ofPart(body)}`;
}

export function partCounted(body: Counted): string {
  return `part counted: ${ofPart(body)}`;
}
