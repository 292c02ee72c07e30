// What a crew will use, on simulated crews: bands of 90 % hold about as often as they say, and better than simpler ones.
import { expect, test } from 'vitest';
import { FIVE_PEOPLE, LEARNERS, useCoverage } from './use-study.ts';

const crews = 400;
const horizons = [30, 90, 180];
const sharesOf = (learner: keyof typeof LEARNERS, learnedDays: number, world = FIVE_PEOPLE) =>
  useCoverage({ crews, firstSeed: 50_001, learnedDays, horizons, world, learner: LEARNERS[learner] }).map(
    ({ share }) => share,
  );

// Three standard errors of a share of 400 are 4.5 points.
test.each([14, 30, 90])(
  'learned from %i days, bands that should hold 90 of 100 hold between 84 and 97',
  (learnedDays) => {
    for (const share of sharesOf('bayes', learnedDays)) {
      expect(share).toBeGreaterThan(0.84);
      expect(share).toBeLessThan(0.97);
    }
  },
);

test('bands that take the mean for known, each day for new, or count fewer days are too narrow by far', () => {
  for (const [learner, most] of [
    ['daysAlone', 0.6],
    ['meanToo', 0.75],
    ['fewerDays', 0.75],
  ] as const)
    for (const share of sharesOf(learner, 30)) expect(share, learner).toBeLessThan(most);
});

test('days that hardly remember each other, and a norm that is half as high again, leave the bands wide enough', () => {
  for (const world of [
    { ...FIVE_PEOPLE, memory: 0.3 },
    { ...FIVE_PEOPLE, normTimes: 1.5 },
  ])
    for (const share of sharesOf('bayes', 30, world)) expect(share).toBeGreaterThan(0.84);
});
