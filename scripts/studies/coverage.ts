// The coverage study: 20 000 simulated outposts, and the page docs/verification/coverage.md that says what came of them.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Covered, coverageOf } from '../../tests/reference/coverage.ts';

const OUTPOSTS = 20_000;
const FIRST_SEED = 1_000_001;
const DAYS = [1, 2, 5, 10, 20, 30, 45, 60];
const ROOT = join(import.meta.dirname, '..', '..');

const started = performance.now();
const rows = coverageOf({ outposts: OUTPOSTS, days: DAYS, firstSeed: FIRST_SEED });
const seconds = Math.round((performance.now() - started) / 1000);
const page = pageOf(rows);
mkdirSync(join(ROOT, 'docs', 'verification'), { recursive: true });
writeFileSync(join(ROOT, 'docs', 'verification', 'coverage.md'), page);
console.log(page);
console.log(`${seconds} s`);
process.exitCode = rows.every(({ share }) => share > 0.93 && share < 0.97) ? 0 : 1;

function pageOf(covered: readonly Covered[]): string {
  const percent = (value: number): string => (100 * value).toFixed(2);
  const lines = covered.map(
    ({ what, share, shareU, meanUKg, meanSquare }) =>
      `| ${what} | ${percent(share)} % | ${percent(shareU)} | ${meanUKg.toFixed(4)} | ${meanSquare.toFixed(3)} |`,
  );
  return `# Coverage of the printed ±

How often does ± as printed (twice the standard deviation) hold the truth? Made by \`node scripts/run.mjs scripts/studies/coverage.ts\`; a shorter run is among the tests (\`tests/reference/coverage.test.ts\`).

${OUTPOSTS} simulated outposts (seeds ${FIRST_SEED} to ${FIRST_SEED + OUTPOSTS - 1}), each with calibration errors, tank errors and contents of its own, looked at on days ${DAYS.join(', ')}; ${covered[0]?.cells ?? 0} cells a line. The product's estimator is told what the instruments say and never what is true. A normal band of two standard deviations holds 95.45 %; 93 to 97 % is asked for.

| what | inside ± | standard error, points | mean u, kg | mean square of (estimate - truth) / u |
|---|---|---|---|---|
${lines.join('\n')}

The standard error counts an outpost's days together, for they share its errors.

## What is simulated
The network of \`tests/reference/reference-network.ts\`: five people, seven stores that are read every day (two tanks gauged by pressure with an error that repeats, containers on a scale, two tanks and the electrolyser's feed with gauges, the cabin air), eleven flows a day by instruments whose calibration errors are drawn anew in each outpost and drift by 2 % of their doubt per root day. Flows differ by 10 % from day to day, and people keep tanks near their usual content; the estimator is told neither. What an instrument says is made from the truth, so that its error is not quite of the form that the estimator takes it to have.

Body water of the crew is a state: a difference from its norm with sd 0.8 kg that keeps 0.7 of itself from day to day. Nobody reads it, and nobody measures vapour: what people drink and eat less what is counted behind them and what stays in the air tells of both. The dispenser's calibration is another state that only the stores around it tell of; its mean u is relative.

## What is not
Errors are normal; no slip of the pen, no lost water, no late or missing reading, no store that runs dry or over. Containers are one store. The reserve and the cargo tank stand still. How the vent is known (10 %), how much of a difference in body water is left after a day, and the 10 % from day to day are our assumptions.
`;
}
