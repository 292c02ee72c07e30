// Meters, swaps and contents of stores as the book's readings.
import type { LineOf } from '../shape/line-shapes.ts';
import type { LineAt, Made } from './line-at.ts';

export function readDaily(line: LineOf<'daily'>, at: LineAt): Made {
  const { condensate_totaliser_L, product_meter_L, dispenser_strokes, flushes, electrolyser_feed_L } = line;
  const { RH_percent, T_C, P_kPa_abs } = line;
  const meters = { condensate_totaliser_L, product_meter_L, dispenser_strokes, flushes, electrolyser_feed_L };
  const readings = at.readings({ ...meters, RH_percent, T_C, P_kPa_abs });
  return { kind: 'day-line', body: { day: line.day, peopleAboard: line.people, readings } };
}

export function readContainerEmpty(line: LineOf<'container_empty'>, at: LineAt): Made {
  return {
    kind: 'declared-empty',
    body: {
      store: at.store(line.store, 'store'),
      port: at.port(line.port, 'port'),
      ...residual(line, at),
      counters: at.readings({ ...line.counters }, 'counters.'),
    },
  };
}

export function readHookup(line: LineOf<'hookup'>, at: LineAt): Made {
  return {
    kind: 'hookup',
    body: { store: at.store(line.store, 'store'), port: at.port(line.port, 'port') },
  };
}

/** Null litres: a weighing that was planned and not done. */
export function readWeigh(line: LineOf<'weigh'>, at: LineAt): Made {
  const amount = line.litres === null ? null : at.amounts.litres(line.litres, line.sd_L);
  if (amount === null && line.sd_L != null) {
    at.say('log-doubt-alone', 'sd_L', { received: line.sd_L }, 'know');
  }
  return {
    kind: 'weigh',
    body: {
      store: at.store(line.store, 'store'),
      amount,
      ...(line.method !== undefined && { method: at.method(line.method) }),
    },
  };
}

export function readGaugePvt(line: LineOf<'gauge_pvt'>, at: LineAt): Made {
  return {
    kind: 'pvt',
    body: {
      store: at.store(line.store, 'store'),
      amount: at.amounts.litres(line.litres, line.sd_L),
      ...(line.book_before_L !== null && { bookBeforeMg: at.amounts.mgOfLitres(line.book_before_L) }),
      bottleVolumeL: line.bottle_volume_L,
      tankVolumeL: line.tank_volume_L,
      ...(line.tank_volume_u_L !== null && { tankVolumeUL: line.tank_volume_u_L }),
      bottleBeforeKPaAbs: line.bottle_before_kPa_abs,
      bottleAfterKPaAbs: line.bottle_after_kPa_abs,
      bottleBeforeC: line.bottle_before_C,
      bottleAfterC: line.bottle_after_C,
      tankBeforeKPaAbs: line.tank_before_kPa_abs,
      tankAfterKPaAbs: line.tank_after_kPa_abs,
      tankBeforeC: line.tank_before_C,
      tankAfterC: line.tank_after_C,
    },
  };
}

/** What is left in an emptied store, where somebody looked. */
function residual(
  told: { readonly residual_L?: number | null; readonly residual_sd_L?: number | null },
  at: LineAt,
) {
  const { residual_L, residual_sd_L } = told;
  if (residual_L != null) return { residual: at.amounts.litres(residual_L, residual_sd_L) };
  if (residual_sd_L != null) at.say('log-doubt-alone', 'residual_sd_L', { received: residual_sd_L }, 'know');
  return {};
}

/** Whether it tells the content is said by `flow_stopped`, and is for the account to judge. */
export function readTankDeclaredEmpty(line: LineOf<'tank_declared_empty'>, at: LineAt): Made {
  return {
    kind: 'declared-empty',
    body: {
      store: at.store(line.store, 'store'),
      ...residual(line, at),
      flowStopped: line.flow_stopped,
      ...(line.book_L !== null && { bookMg: at.amounts.mgOfLitres(line.book_L) }),
      counters: [],
    },
  };
}

/** It leaves the port that it stands on, if it stands on one: the account knows. */
export function readWasteFull(line: LineOf<'waste_full'>, at: LineAt): Made {
  return {
    kind: 'declared-full',
    body: { store: at.store(line.store, 'store'), amount: at.amounts.litres(line.litres) },
  };
}
