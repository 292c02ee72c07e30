// Where samples, results, holds and limits are entered, and what of each answer is told afterwards.
import type { HoldAct, ResultRequest, SampleRequest } from '../../../../desk/index.ts';
import type { KeptSheet, LimitsChosenSheet, LimitTypedSheet, ResultSheet } from '../../../../papers/index.ts';
import type { Entrance, More } from '../../entering.ts';
import { words } from '../../language.ts';

export const SAMPLES: Entrance<SampleRequest, KeptSheet> = { path: '/api/samples', keptIn: (sheet) => sheet };
export const RESULTS: Entrance<ResultRequest, ResultSheet> = {
  path: '/api/results',
  keptIn: ({ entry }) => entry,
};
export const HOLDS: Entrance<HoldAct, KeptSheet> = { path: '/api/holds', keptIn: (sheet) => sheet };

export interface LimitChoice {
  readonly sets: readonly string[];
  readonly rows?: readonly string[];
  readonly exposureDays?: number;
  readonly only?: boolean;
  readonly reason?: string;
}

export interface TypedLimit {
  readonly set: string;
  readonly row: string;
  readonly atLeast?: string;
  readonly atMost?: string;
  readonly copy: string;
}

/** These take what is said with them beside the choice itself. */
const flat = (request: object, { sure, dryRun, late }: More) => ({
  ...request,
  ...(sure !== undefined && { sure }),
  ...(dryRun !== undefined && { dryRun }),
  ...(late !== undefined && { late }),
});

export const CHOOSE: Entrance<LimitChoice, LimitsChosenSheet> = {
  path: '/api/limits/choose',
  bodyOf: flat,
  keptIn: () => null,
  toldOf: () => words().quality.chosenSaid,
};
export const TYPE: Entrance<TypedLimit, LimitTypedSheet> = {
  path: '/api/limits/type',
  bodyOf: flat,
  keptIn: () => null,
  toldOf: () => words().quality.typedSaid,
};
