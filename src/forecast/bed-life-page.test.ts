// The examples of docs/methods/bed-life.md are run as they stand there.
import { runExamplesOf } from '../../tests/docs/page-examples.ts';
import { type BedStory, type FitReading, fitBed } from '../account/index.ts';
import { formatFigure, msPerDay } from '../ground/units/index.ts';
import { bedDate, type FeedAhead } from './bed-date.ts';
import { sureUse } from './use-ahead.ts';

const MG = 1_000_000;

function readingsIn(text: string): FitReading[] {
  if (text === 'none') return [];
  return text.split(',').map((pair) => {
    const [throughputL = '', value = ''] = pair.split(':');
    const below = value.startsWith('<');
    return { throughputL: Number(throughputL), value: Number(below ? value.slice(1) : value), below };
  });
}

interface GivenLife {
  readonly number: (name: string) => number;
  readonly text: (name: string) => string;
}

function fitOf({ number, text }: GivenLife) {
  const prior = { lifeL: number('life'), lifeUL: number('u'), limit: number('most') };
  return fitBed(readingsIn(text('readings')), { random: 0.085, calibration: 0.05 }, prior);
}

function feedOf(litresPerDay: number): FeedAhead {
  const cases = [sureUse({ meanMg: litresPerDay * MG, uMg: 0, dayUMg: 0.05 * litresPerDay * MG })];
  const use = {
    basis: 'learned',
    meanMg: 0,
    meanUMg: 0,
    dayUMg: 0,
    memory: 0,
    days: 9,
    entries: [],
    cases,
  } as const;
  return { use, people: [{ fromMs: 0, people: 1 }], litresPerDay, litresPerDayU: 0, mgPerL: MG };
}

runExamplesOf('bed-life.md', 7, {
  limit: (given) => {
    const { limitAtL, limitAtUL } = fitOf(given);
    return formatFigure({ value: limitAtL, u95: 2 * limitAtUL, unit: 'L' }, { style: 'screen' }).replaceAll(
      '\u00A0',
      ' ',
    );
  },
  date: (given) => {
    const standing = { leadStartL: given.number('now'), leadStartUL: 0 };
    const story = { standing, fedL: 0, fedUL: 0, countedToMs: 0 } as BedStory;
    const { ms } = bedDate(fitOf(given), story, feedOf(given.number('feed')));
    return [ms.q10, ms.q50, ms.q90]
      .map((at) => (at === null ? 'never' : (at / msPerDay).toFixed(1)))
      .join(' ');
  },
});
