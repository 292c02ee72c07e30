// Transfers, runs in several parts, pushes of waste and draws from the reserve as the book's movements.
import type { LineOf } from '../shape/line-shapes.ts';
import type { LineAt, Made } from './line-at.ts';

export function readTransferSetup(line: LineOf<'transfer_setup'>, at: LineAt): Made {
  return {
    kind: 'check',
    body: {
      what: 'leak',
      ok: line.ok,
      visit: at.vehicle(line.vehicle),
      hose: at.hose(line.hose),
      items: [],
      ...(line.leak_check_kPa_abs !== null && { pressureKPaAbs: line.leak_check_kPa_abs }),
      ...(line.hold_min !== null && { holdMinutes: line.hold_min }),
      ...(line.drop_kPa !== null && { dropKPa: line.drop_kPa }),
    },
  };
}

/** A transfer in one go is a movement; parts of a run are kept as such, since water stands in the hose in between. */
export function readTransfer(line: LineOf<'transfer'>, at: LineAt): Made {
  const { run, status, line_content_L } = line;
  const both = transferred(line, at);
  if ((run === undefined) !== (status === undefined)) {
    at.say('log-run-or-status', run === undefined ? 'status' : 'run', { has: run ?? status ?? '' });
  }
  if (line_content_L != null && status !== 'interrupted') {
    at.say('log-line-content-alone', 'line_content_L', { received: line_content_L });
  }
  if (run === undefined || status === undefined) return { kind: 'movement', body: both };
  if (status === 'resumed') return { kind: 'run-finish', body: { run, ...both } };
  const lineContent = line_content_L == null ? {} : { lineContentMg: at.amounts.mgOfLitres(line_content_L) };
  return { kind: 'run-pause', body: { run, ...both, ...lineContent } };
}

function transferred(line: LineOf<'transfer'>, at: LineAt) {
  return {
    ...ends(line, at),
    amount: at.amounts.litres(line.litres, line.sd_L),
    startAtMs: at.instant(line.start, 'start', 'before'),
    hose: at.hose(line.hose),
    ...(line.flow_min !== null && { flowMinutes: line.flow_min }),
    ...(line.dP_kPa != null && { pushOverCabinKPa: line.dP_kPa }),
    method: at.method(line.method, line.hose),
    grade: at.grade(line.grade, 'grade'),
    ...(line.was !== undefined && receiverBefore(line.was, at)),
  };
}

/** A hose goes from one store into another. */
function ends({ from, to }: { readonly from: string; readonly to: string }, at: LineAt) {
  if (from === to) at.say('log-ends-same', 'to', { name: to });
  return { from: at.store(from, 'from'), to: at.store(to, 'to') };
}

/** `D0`: emptied, and drinking water was the last in it. `D`: it still holds drinking water. `-`: never used. */
function receiverBefore(was: string, at: LineAt) {
  if (was === '-') return { receiverWasEmptied: true };
  const emptied = was.endsWith('0');
  const letter = emptied ? was.slice(0, -1) : was;
  return { receiverWas: at.grade(letter, 'was'), receiverWasEmptied: emptied };
}

export function readBagRecovery(line: LineOf<'bag_recovery'>, at: LineAt): Made {
  return {
    kind: 'movement',
    body: {
      ...ends(line, at),
      amount: at.amounts.litres(line.litres, line.sd_L),
      startAtMs: at.instant(line.start, 'start', 'before'),
      hose: at.hose(line.hose),
      ...(line.flow_min !== null && { flowMinutes: line.flow_min }),
      method: at.method(line.method, line.hose),
    },
  };
}

export function readWasteTransfer(line: LineOf<'waste_transfer'>, at: LineAt): Made {
  return {
    kind: 'push',
    body: {
      from: legs(line.from, 'from', at),
      to: legs(line.to, 'to', at),
      amount: at.amounts.litres(line.litres, line.sd_L),
      hose: at.hose(line.hose),
      method: at.method(line.method, line.hose),
    },
  };
}

function legs(told: readonly { id: string; litres: number }[], field: string, at: LineAt) {
  at.eachOnce(
    told.map(({ id }) => id),
    field,
  );
  return told.map(({ id, litres }) => ({
    store: at.store(id, `${field}[${id}].id`),
    amount: at.amounts.litres(litres),
  }));
}

/** The strokes or the meter have counted this water already: only its source changes. */
export function readReserveDraw(line: LineOf<'reserve_draw'>, at: LineAt): Made {
  return {
    kind: 'source-change',
    body: {
      counter: counterOfPort(at.port(line.to, 'to'), at),
      store: at.store(line.store, 'store'),
      sinceMs: at.instant(line.since, 'since', 'before'),
      amount: at.amounts.litres(line.litres),
      reserve: true,
      how: line.by_counter,
    },
  };
}

/** The one counter whose water comes by this port. */
function counterOfPort(port: string, at: LineAt): string {
  const counters = at.index.outpost.instruments.filter((instrument) =>
    instrument.route?.from.some((end) => 'port' in end && end.port === port),
  );
  const [only] = counters;
  if (only !== undefined && counters.length === 1) return only.id;
  if (at.index.ports.has(port)) {
    at.say('log-counter-unclear', 'to', { port, counters: counters.map(({ id }) => id) });
  }
  return port;
}
