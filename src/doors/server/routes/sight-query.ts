// The two fields by which every reading address takes a time, and how they are read.
import * as z from 'zod';
import { type Answer, type Desk, type Moment, readSight, type Sight } from '../../../desk/index.ts';

const time = z.string().min(1).max(60);

export const SIGHT_QUERY = {
  at: time.exactOptional().describe('as known at this time: now, D13, D13T14:05, 2147-04-15T14:05Z'),
  'as-of': time.exactOptional().describe('the state at this time by all that is known now'),
};

interface SightQuery {
  readonly at?: string;
  readonly 'as-of'?: string;
}

/** Pairs of fields that say two things. */
export const CLASHES: readonly (readonly [string, string])[] = [['at', 'as-of']];

export function sightOf(desk: Desk, moment: Moment, query: SightQuery): Promise<Answer<Sight>> {
  const { at, 'as-of': asOf } = query;
  return readSight(desk, moment, {
    at: at === undefined ? undefined : { text: at, field: 'at' },
    asOf: asOf === undefined ? undefined : { text: asOf, field: 'as-of' },
  });
}
