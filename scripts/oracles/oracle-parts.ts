// Puts every oracle its points, and makes a part of the checks of each: agreement is one, the control is another.
import type { Oracle, Point } from '../../tests/oracles/oracle.ts';
import { check, type Part, timed } from '../checks/part.ts';
import { type Answer, askScript } from './ask-script.ts';
import { type Held, hold, pointsOf } from './hold.ts';

const FEWEST_POINTS = 2000;
const SHOWN = 5;

export interface HowToAsk {
  readonly seed: number;
  /** Whether all of them are asked: then there have to be points enough. */
  readonly areAll: boolean;
}

export async function oracleParts(
  oracles: readonly Oracle[],
  { seed, areAll }: HowToAsk,
): Promise<readonly Part[]> {
  const asked = oracles.map((oracle) => ({ oracle, points: pointsOf(oracle, seed) }));
  const { result: answers, seconds } = await timed(() => answersTo(asked));
  const parts = asked.map(({ oracle, points }) =>
    partOf(oracle, hold(oracle, points, answers.get(oracle) ?? []), seed),
  );
  return [...parts, ofPoints(asked, { areAll, seconds })];
}

interface AskedOf {
  readonly oracle: Oracle;
  readonly points: readonly Point[];
}

/** A script is started once for all that is asked of it. */
function answersTo(asked: readonly AskedOf[]): ReadonlyMap<Oracle, readonly Answer[]> {
  const scripts = Map.groupBy(asked, ({ oracle }) =>
    'script' in oracle.answers ? oracle.answers.script : '',
  );
  const answers = new Map<Oracle, readonly Answer[]>();
  for (const [script, group] of scripts) {
    const given = script === '' ? group.map(answeredHere) : answeredBy(script, group);
    for (const [at, { oracle }] of group.entries()) answers.set(oracle, given[at] ?? []);
  }
  return answers;
}

function answeredBy(script: string, group: readonly AskedOf[]): readonly (readonly Answer[])[] {
  const questions = group.flatMap(({ oracle: { answers }, points }) =>
    points.map((point) => ({ ask: 'ask' in answers ? answers.ask : '', point })),
  );
  const given = askScript(script, questions);
  let from = 0;
  return group.map(({ points }) => {
    from += points.length;
    return given.slice(from - points.length, from);
  });
}

function answeredHere({ oracle: { answers }, points }: AskedOf): readonly Answer[] {
  if (!('of' in answers)) return [];
  return points.map((point) => {
    try {
      return answers.of(point);
    } catch (error) {
      return { fault: error instanceof Error ? error.message : String(error) };
    }
  });
}

export function partOf(oracle: Oracle, held: Held, seed: number): Part {
  const agrees = held.points > 0 && held.faults.length === 0;
  const seesControl = held.controlSeen > 0;
  const output = [
    ...(held.points === 0 ? ['no point was asked'] : []),
    ...held.faults.slice(0, SHOWN),
    ...(held.faults.length > SHOWN ? [`and ${held.faults.length - SHOWN} points more`] : []),
    ...(seesControl ? [] : [`the control was not seen: ${oracle.control.is}`]),
    `tolerance ${JSON.stringify(oracle.tolerance)}: ${oracle.because}; seed ${seed}`,
  ];
  return {
    name: oracle.subject,
    passed: [agrees, seesControl].filter(Boolean).length,
    failed: [agrees, seesControl].filter((each) => !each).length,
    looked: `${held.points} points, ${held.digits.toFixed(1)} digits at the worst, against ${oracle.against}`,
    seconds: 0,
    output: output.join('\n'),
  };
}

function ofPoints(
  asked: readonly AskedOf[],
  { areAll, seconds }: { readonly areAll: boolean; readonly seconds: number },
): Part {
  const count = asked.reduce((sum, { points }) => sum + points.length, 0);
  const least = areAll ? FEWEST_POINTS : 1;
  const output = `${count} points were asked; ${least} is the least`;
  return check(
    'points in all',
    { ok: count >= least, looked: `${count} points, ${asked.length} oracles`, output },
    seconds,
  );
}
