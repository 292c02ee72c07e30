// What the flags of an import declare of a table.
import { readZone, type TableOptions } from '../../desk/index.ts';
import { msPerDay, parseInstantIso } from '../../ground/units/index.ts';
import type { Call } from './call.ts';
import { readPairs } from './pairs.ts';
import { wrongUse } from './problem.ts';

export function tableOptionsOf(call: Call): TableOptions {
  const shape = call.oneOf('kind', ['days', 'acts']);
  const decimal = call.oneOf('decimal', ['comma', 'point']);
  const dates = call.oneOf('dates', ['day-first', 'month-first']);
  const zone = call.text('zone');
  const dayOne = call.text('sheet-day-one');
  const columns = readPairs(call.texts('columns'), '--columns');
  return {
    ...(shape !== undefined && { shape }),
    ...(decimal !== undefined && { decimal }),
    ...(dates !== undefined && { dates }),
    ...(zone !== undefined && { zoneMin: zoneOf(zone) }),
    ...(dayOne !== undefined && { dayOneDays: dateOf(dayOne) }),
    ...(Object.keys(columns).length > 0 && { columns }),
  };
}

function zoneOf(text: string): number {
  const zoneMin = readZone(text);
  if (zoneMin !== null) return zoneMin;
  throw wrongUse('flag-value-wrong', {
    flag: '--zone',
    received: text.slice(0, 60),
    wanted: ['+05:30', 'UTC'],
    nearest: [],
  });
}

function dateOf(text: string): number {
  const read = parseInstantIso(`${text}T00:00Z`);
  if (read.ok) return Math.floor(read.instant.utcMs / msPerDay);
  const wanted = ['a date such as 2147-03-01'];
  throw wrongUse('flag-value-wrong', {
    flag: '--sheet-day-one',
    received: text.slice(0, 60),
    wanted,
    nearest: [],
  });
}

/** Flags that say something of a table only. */
export const TABLE_FLAGS = ['kind', 'decimal', 'dates', 'zone', 'columns', 'sheet-day-one'] as const;
