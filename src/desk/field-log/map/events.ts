// Units, the cabin, notes, refusals and the close of a month as the book's entries.
import { dayOf } from '../../../ground/units/index.ts';
import type { LineOf } from '../shape/line-shapes.ts';
import type { LineAt, Made } from './line-at.ts';

/** `unit` may be a part that is no unit of the outpost file: the keeper's word is kept. */
export function readRepair(line: LineOf<'repair'>): Made {
  return { kind: 'unit-condition', body: { unit: line.unit, state: 'repaired', readings: [] } };
}

export function readBedChange(line: LineOf<'bed_change'>): Made {
  const readings = reading('throughput at change', line.throughput_at_change_L, 'L');
  return { kind: 'service', body: { item: `${line.pos} bed`, what: 'bed changed', readings } };
}

export function readAlarm(line: LineOf<'alarm'>): Made {
  const readings = reading('temperature', line.temp_C, '°C');
  return { kind: 'unit-condition', body: { unit: line.unit, state: 'alarm', readings } };
}

/** Nothing where it was not read. */
function reading(name: string, value: number | null, unit: string) {
  return value === null ? [] : [{ name, value, unit }];
}

/** It explains what is missing and moves nothing: the counters and readings have it already. */
export function readLeakFound(line: LineOf<'leak_found'>, at: LineAt): Made {
  return {
    kind: 'explanation',
    body: {
      where: line.where,
      evidence: [],
      ...(line.rate_L_d !== null && { rateMgPerDay: at.amounts.mgOfLitres(line.rate_L_d) }),
      ...(line.recovered_towels_L !== null && {
        recoveredMg: at.amounts.mgOfLitres(line.recovered_towels_L),
      }),
    },
  };
}

export function readCabinPressure(line: LineOf<'cabin_pressure'>, at: LineAt): Made {
  return {
    kind: 'cabin-window',
    body: {
      beforeKPaAbs: line.before_kPa_abs,
      duringKPaAbs: line.after_kPa_abs,
      untilMs: at.instant(line.until, 'until', 'after'),
    },
  };
}

export function readRefused(line: LineOf<'refused'>): Made {
  return { kind: 'refused', body: { what: line.what, rule: line.rule } };
}

export function readManifestNote(line: LineOf<'manifest_note'>): Made {
  return { kind: 'note', body: { about: 'manifest', text: line.text } };
}

/** No figures stand in the line: the close of a month freezes the paper, and the account has the figures. */
export function readMonthClose(_line: LineOf<'month_close'>, at: LineAt): Made {
  const rule = { dayOneUtcMs: at.facts.dayOneMs, lineMinuteOfDay: 0 };
  return { kind: 'day-close', body: { day: dayOf(at.happenedAtMs, rule), what: 'month', figures: [] } };
}
