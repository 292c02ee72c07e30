// The slip study: 200 slips of twelve kinds in the practice book, clean books by chance, and the page docs/verification/slips.md.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chanceRate, practiceRate } from './slips/false-questions.ts';
import { slipStudy } from './slips/judge.ts';
import { pageOf, shareCaught } from './slips/page.ts';
import { QUESTIONS } from './slips/questions.ts';

const SLIPS = 200;
/** Not among the seeds that thresholds were chosen on. */
const SEED = 2147;
const FIRST_CHANCE_SEED = 1001;
const CHANCE_BOOKS = 40;
const TUNED_ON = 'slips of the seeds 1 to 4 and clean books of the seeds 1 to 40';

const started = performance.now();
const judged = slipStudy({ seed: SEED, slips: SLIPS });
const without = slipStudy({ seed: SEED, slips: SLIPS, without: QUESTIONS });
const readerAlone = slipStudy({ seed: SEED, slips: SLIPS, without: 'the account' });
const practice = practiceRate();
const chance = chanceRate({ firstSeed: FIRST_CHANCE_SEED, books: CHANCE_BOOKS });
const page = pageOf({
  ...{ seed: SEED, tunedOn: TUNED_ON, firstChanceSeed: FIRST_CHANCE_SEED },
  ...{ judged, without, readerAlone, practice, chance },
});
const folder = join(import.meta.dirname, '../../docs/verification');
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'slips.md'), page);
console.log(page);
console.log(`${Math.round((performance.now() - started) / 1000)} s`);
const isGood = shareCaught(judged) >= 0.9 && practice.perFifty <= 1 && chance.perFifty <= 1;
process.exitCode = isGood ? 0 : 1;
