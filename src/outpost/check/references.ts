// Every name that stands for something elsewhere in the file must find it there.
import { nearest } from '../../ground/units/index.ts';
import type { FlowEnd } from '../outpost.ts';
import type { Path } from '../outpost-finding.ts';
import { type KnownIds, NAMED, type Named } from './known-ids.ts';
import type { SoundPart } from './sound-part.ts';

/** Ids, or nothing where a key was left out. */
type Reference = string | readonly string[] | undefined;

export class References {
  readonly #part: SoundPart;
  readonly #known: KnownIds;

  constructor(part: SoundPart, known: KnownIds) {
    this.#part = part;
    this.#known = known;
  }

  /** The first of `named` is what the finding calls it; an id of any of them will do. */
  need(reference: Reference, named: readonly [Named, ...Named[]], path: Path): void {
    if (typeof reference === 'string') this.#needOne(reference, named, path);
    else for (const [index, id] of (reference ?? []).entries()) this.#needOne(id, named, [...path, index]);
  }

  #needOne(id: string, named: readonly [Named, ...Named[]], path: Path): void {
    if (this.#part.isFull || named.some((each) => this.#known.get(each)?.has(id))) return;
    if (named.some((each) => this.#part.unreadable.has(NAMED[each][0]))) return;
    const known = named.flatMap((each) => [...(this.#known.get(each)?.keys() ?? [])]);
    this.#part.add('id-unknown', path, { what: named[0], id, near: nearest(id, known), known });
  }

  end(end: FlowEnd, path: Path): void {
    if ('store' in end) this.need(end.store, ['store'], [...path, 'store']);
    if ('port' in end) this.need(end.port, ['port'], [...path, 'port']);
  }

  ends(ends: readonly FlowEnd[], path: Path): void {
    for (const [index, end] of ends.entries()) this.end(end, [...path, index]);
  }
}

function checkWater(part: SoundPart, to: References): void {
  for (const { item, path } of part.each('grades')) {
    if (item.biocide !== 'none') to.need(item.biocide, ['biocide'], [...path, 'biocide']);
    to.need(item.mayFlowInto, ['grade'], [...path, 'mayFlowInto']);
    to.need(item.mayEnterUnits, ['unit'], [...path, 'mayEnterUnits']);
  }
  for (const { item, path } of part.each('biocides'))
    to.need(item.neverMeets, ['biocide'], [...path, 'neverMeets']);
  for (const { item, path } of part.each('stores')) {
    to.need(item.place, ['place', 'vehicle'], [...path, 'place']);
    to.need(item.holds, ['grade'], [...path, 'holds']);
    to.need(item.gauge, ['instrument'], [...path, 'gauge']);
    to.need(item.readingTask, ['task'], [...path, 'readingTask']);
    to.need(item.comesWith, ['vehicle'], [...path, 'comesWith']);
    to.need(item.leavesWith, ['vehicle'], [...path, 'leavesWith']);
  }
  for (const { item, path } of part.each('ports')) {
    to.need(item.takes, ['grade'], [...path, 'takes']);
    to.need(item.place, ['place'], [...path, 'place']);
  }
}

function checkFlows(part: SoundPart, to: References): void {
  for (const { item, path } of part.each('units')) {
    to.need(item.place, ['place'], [...path, 'place']);
    to.ends(item.takes, [...path, 'takes']);
    to.end(item.feeds, [...path, 'feeds']);
    if (item.kind === 'purifier') to.end(item.rejectTo, [...path, 'rejectTo']);
  }
  for (const { item, path } of part.each('instruments')) {
    to.need(item.onHoses, ['hose'], [...path, 'onHoses']);
    to.need(item.meters, ['unit'], [...path, 'meters']);
    if (item.route === undefined) continue;
    to.ends(item.route.from, [...path, 'route', 'from']);
    to.end(item.route.to, [...path, 'route', 'to']);
  }
  for (const { item, path } of part.each('samplingPoints')) {
    if ('store' in item.of) to.need(item.of.store, ['store'], [...path, 'of', 'store']);
    else if ('port' in item.of) to.need(item.of.port, ['port'], [...path, 'of', 'port']);
    else to.need(item.of.unit, ['unit'], [...path, 'of', 'unit']);
  }
  for (const { item, path } of part.each('normFlows')) {
    to.end(item.from, [...path, 'from']);
    to.end(item.to, [...path, 'to']);
  }
}

function checkGear(part: SoundPart, to: References): void {
  const { push, gaugingBottle, bottledOxygen } = part.file;
  for (const { item, path } of part.each('hoses'))
    to.need(item.couplings, ['coupling'], [...path, 'couplings']);
  to.need(push?.workedFill?.hose, ['hose'], ['push', 'workedFill', 'hose']);
  to.need(gaugingBottle?.gauges, ['store'], ['gaugingBottle', 'gauges']);
  to.need(bottledOxygen?.approvedBy, ['office'], ['bottledOxygen', 'approvedBy']);
  for (const { item, path } of part.each('visits')) {
    item.brings.forEach((cargo, index) => {
      to.need(cargo.stores, ['store'], [...path, 'brings', index, 'stores']);
      to.need(cargo.grade, ['grade'], [...path, 'brings', index, 'grade']);
    });
  }
}

function checkRules(part: SoundPart, to: References): void {
  const { policy } = part.file;
  to.need(policy?.reserve.counts, ['store'], ['policy', 'reserve', 'counts']);
  to.need(policy?.reserve.mayBeDrawnBy, ['office'], ['policy', 'reserve', 'mayBeDrawnBy']);
  to.need(policy?.conditionalWater?.decidedBy, ['office'], ['policy', 'conditionalWater', 'decidedBy']);
  for (const { item, path } of part.each('treatments')) {
    to.need(item.from, ['grade'], [...path, 'from']);
    to.need(item.to, ['grade'], [...path, 'to']);
    to.need(item.neverHeld, ['grade'], [...path, 'neverHeld']);
    to.need(item.releasedBy, ['office'], [...path, 'releasedBy']);
    for (const [index, { part: id }] of item.usesPerContainer.entries()) {
      to.need(id, ['part'], [...path, 'usesPerContainer', index, 'part']);
    }
  }
  for (const { item, path } of part.each('service'))
    to.need(item.insteadOf, ['service'], [...path, 'insteadOf']);
}

export function checkReferences(part: SoundPart, known: KnownIds): void {
  const to = new References(part, known);
  checkWater(part, to);
  checkFlows(part, to);
  checkGear(part, to);
  checkRules(part, to);
}
