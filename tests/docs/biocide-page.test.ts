// Runs the examples of docs/methods/biocide.md: rates, ends, kinds, walls, ages and lives.

import {
  containerLife,
  fallingLevel,
  kindRate,
  type LogRow,
  standingAge,
  wettedArea,
} from '../../src/account/index.ts';
import { biocideEnds } from '../../src/forecast/index.ts';
import { exp, expm1, log } from '../../src/ground/maths/index.ts';
import { msPerDay } from '../../src/ground/units/index.ts';
import type { StoreKind } from '../../src/outpost/index.ts';
import { type Given, runExamplesOf } from './page-examples.ts';

/** `0.2,0.15,<0.05` on days since the stretch began. */
function rows(given: Given): readonly LogRow[] {
  const [days, u, perM] = [given.list('days'), given.number('u'), given.number('areaPerVolume')];
  return given
    .text('mgPerL')
    .split(',')
    .map((text, at) => {
      const below = text.startsWith('<');
      const value = Number(below ? text.slice(1) : text);
      return { log: log(value), u: u / value, below, exposureDaysPerM: perM * (days[at] ?? Number.NaN) };
    });
}

function level(given: Given) {
  const [now, perM] = [given.number('now'), given.number('areaPerVolume')];
  return fallingLevel({ exposureDaysPerM: now * perM }, [rows(given)], null);
}

function told(given: Given): string {
  const found = level(given);
  if (found === null) return 'no level, no rate';
  const mgPerL = exp(found.logMgPerL);
  const head = `${mgPerL.toFixed(3)} ± ${(2 * mgPerL * found.uLog).toFixed(3)} mg/L`;
  if (found.rate === null) return `${head} as read, rate not known`;
  const { metresPerDay, u } = found.rate;
  const perDay = -100 * expm1(-metresPerDay * given.number('areaPerVolume'));
  return `${head}, ${(1000 * metresPerDay).toFixed(2)} ± ${(2000 * u).toFixed(2)} mm/d, ${perDay.toFixed(2)} % a day`;
}

function ends(given: Given): string {
  const found = level(given);
  const water = { leastMgPerL: given.number('least'), areaPerVolumePerM: given.number('areaPerVolume') };
  const days = found === null ? null : biocideEnds(found, water);
  if (days === null) return 'not known';
  const said = (day: number | null) => (day === null ? 'never' : day.toFixed(0));
  return `${said(days.q05)}, ${said(days.q50)}, ${said(days.q95)} days`;
}

runExamplesOf('biocide.md', 16, {
  level: told,
  ends,
  kind: (given) => {
    const us = given.list('u');
    const others = given
      .list('rates')
      .map((metresPerDay, at) => ({ metresPerDay, u: us[at] ?? us[0] ?? Number.NaN }));
    const found = kindRate(others);
    return found === null ? 'too few' : `${found.metresPerDay.toFixed(2)} ± ${(2 * found.u).toFixed(2)}`;
  },
  wall: (given) => {
    const { areaM2, uM2 } = wettedArea({
      kind: given.text('kind') as StoreKind,
      capacityL: given.number('litres'),
    });
    return `${(1e4 * areaM2).toFixed(0)} ± ${(2e4 * uM2).toFixed(0)} cm²`;
  },
  age: (given) => {
    const most = given.text('most');
    const mostDays = most === 'none' ? null : Number(most);
    const { isOver, untilMs } = standingAge({ sinceMs: 0, atMs: given.number('days') * msPerDay, mostDays });
    if (untilMs === null) return 'no age is named: hold';
    return isOver ? 'over' : `${untilMs / msPerDay - given.number('days')} days left`;
  },
  life: (given) =>
    containerLife(
      { fills: given.number('fills'), empties: 0, firstMs: 0, disinfected: null },
      { lifeCycles: given.number('cycles'), lifeDays: given.number('most') },
      given.number('days') * msPerDay,
    ).verdict,
});
