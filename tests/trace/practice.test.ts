// The bad sample of the practice outpost: what it touches, as of its result, and what its releases end.
import { beforeAll, describe, expect, test } from 'vitest';
import {
  holdProposal,
  historyOf,
  originsOf,
  type Suspicion,
  suspicionAt,
  suspicionOfSample,
  traceContacts,
  type WaterHistory,
} from '../../src/account/index.ts';
import type { BookPort } from '../../src/book/index.ts';
import { corrieDesk } from '../reckon/corrie-at-the-end.ts';

const MG_PER_L = 997_800;
const EIGHT = ['C-05', 'C-06', 'C-11', 'C-12', 'C-13', 'C-14', 'C-15', 'C-16'];
const at = (day: number, hour: number, minute = 0) => Date.UTC(2147, 2, day, hour, minute);

let port: BookPort;
beforeAll(async () => {
  port = (await corrieDesk()).port;
});

async function asOf(asOfMs: number): Promise<WaterHistory> {
  const outcome = await historyOf(port, { view: { asOfMs } });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings));
  return outcome.history;
}

function bad(history: WaterHistory): Suspicion {
  const suspicion = suspicionOfSample(history, 'SMP-03');
  if (suspicion === null) throw new Error('the sample is not in the book');
  return suspicion;
}

describe('SMP-03, when its result is there', () => {
  let history: WaterHistory;
  beforeAll(async () => {
    history = await asOf(at(14, 16, 20));
  });

  test('speaks of the freighter tank and of the hose, since the tank was first told of', () => {
    const { trace } = traceContacts(history, bad(history));
    console.log(JSON.stringify(trace, null, 1).slice(0,6000));
    expect(bad(history)).toMatchObject({ sources: ['FA'], hose: 'H-1', takenAtMs: at(8, 13, 10) });
    expect(trace.windows).toMatchObject([{ store: 'FA', opened: 'first told', fromMs: at(6, 11, 40) }]);
  });

  test('proposes the eight containers and the reserve tank', () => {
    const { trace, drunk } = traceContacts(history, bad(history));
    const proposal = holdProposal(history, trace);
    expect([...proposal.hold].sort()).toEqual(EIGHT);
    expect(proposal.conditional).toEqual(['R2']);
    expect(Math.abs(proposal.heldMg / MG_PER_L - 164)).toBeLessThan(3);
    expect(drunk).toEqual([]);
  });
  test('origins', () => {
    console.log(JSON.stringify(originsOf(history, 'R2'), null, 1), JSON.stringify(originsOf(history, 'C-11'),null,1));
    console.log(suspicionAt(history, { unit: 'dispenser' }, at(13, 12)), suspicionAt(history, { hose: 'H-1' }, at(8, 13, 10)));
  });
});
