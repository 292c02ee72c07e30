// The opening line as an opening entry; what the outpost file says of the same stores is held against it.
import type { Body } from '../../../book/index.ts';
import { nearest } from '../../../ground/units/index.ts';
import type { LineOf } from '../shape/line-shapes.ts';
import type { LineAt, Made } from './line-at.ts';
import { compareWithFile, type ToldStore } from './stores.ts';

export function readOpening(line: LineOf<'opening_balance'>, at: LineAt): Made {
  at.eachOnce(
    line.stores.map(({ id }) => id),
    'stores',
  );
  return {
    kind: 'opening',
    body: {
      asOfMs: at.instant(line.as_of, 'as_of', 'before'),
      dayOneMs: at.facts.dayOneMs,
      peopleAboard: line.people,
      stores: line.stores.map((told) => storeAtOpening(told, at)),
      ports: Object.entries(line.ports).map(([port, store]) => ({
        port: at.port(port, `ports.${port}`),
        store: at.store(store, `ports.${port}`),
      })),
      counters: at.readings({ condensate_totaliser_L: line.condensate_totaliser_L }),
      service:
        line.lead_bed_throughput_L === null
          ? []
          : [{ item: 'lead bed', value: line.lead_bed_throughput_L, unit: 'L' }],
      visits: line.visits_known.map((visit) => ({
        visit: visit.vehicle,
        berthDay: visit.planned_berth_day,
        ...(visit.planned_undock_day !== undefined && { departDay: visit.planned_undock_day }),
      })),
    },
  };
}

type StoreAtOpening = Body<'opening'>['stores'][number];

/** The opening tells of stores that the outpost file names, and of no others: what they are stands there. */
function storeAtOpening(told: ToldStore & { how: string }, at: LineAt): StoreAtOpening {
  const field = `stores[${told.id}]`;
  if (at.index.stores.has(told.id)) compareWithFile(told, field, at);
  else {
    const near = nearest(told.id, [...at.index.stores.keys()]);
    at.say('log-name-unknown', `${field}.id`, { what: 'store', name: told.id, nearest: near });
  }
  return {
    store: told.id,
    amount: at.amounts.litres(told.litres, told.sd_L),
    grade: at.gradeOrNone(told.grade, `${field}.grade`),
    how: told.how,
  };
}
