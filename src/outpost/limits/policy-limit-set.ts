// The limits that an outpost sets itself, in its own file, as a set like any other.
import { freezeDeep } from '../freeze-deep.ts';
import type { Limit, Outpost } from '../outpost.ts';
import type { LimitRow, LimitSet } from './limit-set.ts';
import { basisUnlessSaid, fitTogether, type LimitUnit } from './limit-units.ts';

/** Of water for people. Technical water is not held to these. */
const USES = ['drink', 'food', 'hygiene', 'medical'];

/**
 * Only what an instrument of the outpost measures in water is a row; an age, or a dose that is not a result, is no result to
 * hold against one. A limit that the file has off stays off.
 * @example policyLimitSet(outpost).rows.map((row) => row.id) // ['TOC most', 'silver least', …]
 */
export function policyLimitSet(outpost: Pick<Outpost, 'limits' | 'instruments'>): LimitSet {
  const measured = new Set(
    outpost.instruments.flatMap(({ measures, quantity }) => (measures === 'quality' ? (quantity ?? []) : [])),
  );
  return freezeDeep({
    id: 'outpost policy',
    name: 'limits of the outpost file',
    what: 'policy that the outpost sets itself; not a standard',
    uses: USES,
    rows: outpost.limits.filter(({ quantity }) => measured.has(quantity)).map(rowOf),
  });
}

function rowOf(limit: Limit): LimitRow {
  const { id, quantity, unit, atLeast, atMost, status } = limit;
  const basis = basisUnlessSaid(quantity) ?? 'as itself';
  const figures = { ...(atLeast !== undefined && { atLeast }), ...(atMost !== undefined && { atMost }) };
  // A unit in which no result can be told makes a row that nothing meets: it holds, and is not passed over.
  const isOn = status === 'policy' && limit.basis !== 'memory' && fitTogether(unit, basis);
  return {
    id,
    parameter: quantity,
    basis,
    unit: unit as LimitUnit,
    limit: isOn ? figures : null,
    remembered: isOn ? null : figures,
    evidence: limit.basis === 'memory' ? 'memory' : 'policy',
    exposure: 'any',
    source: limit.basisNote ?? limit.basis,
    locator: `limits[${id}] of the outpost file`,
    cause: limit.cause ?? '',
    consequence: limit.consequence ?? '',
    firstAct: limit.firstAct ?? '',
    timeToActH: limit.timeToActH ?? null,
    requiredFor: USES,
    neededOf: limit.neededOf,
    degassed: false,
    noneIfBelow: null,
    duplicatesWithinShare: null,
    note: '',
    typed: null,
  };
}
