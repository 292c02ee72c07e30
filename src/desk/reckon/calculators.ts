// Table of the calculators, in the order in which they are offered.
import type { Calculator } from './calculator.ts';
import { condense } from './of/condense.ts';
import { dewpoint } from './of/dewpoint.ts';
import { dose } from './of/dose.ts';
import { gauge } from './of/gauge.ts';
import { heat } from './of/heat.ts';
import { mix } from './of/mix.ts';
import { oxygen } from './of/oxygen.ts';
import { pressure } from './of/pressure.ts';
import { thaw } from './of/thaw.ts';
import { transfer } from './of/transfer.ts';
import { weigh } from './of/weigh.ts';

export const CALCULATORS: ReadonlyMap<string, Calculator> = new Map(
  [transfer, gauge, weigh, condense, dewpoint, oxygen, heat, dose, mix, thaw, pressure].map((each) => [
    each.name,
    each,
  ]),
);
