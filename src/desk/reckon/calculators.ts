// Table of the calculators, in the order in which they are offered.
import type { Calculator } from './calculator.ts';
import { condense } from './of/condense.ts';
import { dewpoint } from './of/dewpoint.ts';
import { dose } from './of/dose.ts';
import { mix } from './of/mix.ts';
import { oxygen } from './of/oxygen.ts';
import { pressure } from './of/pressure.ts';
import { transfer } from './of/transfer.ts';

export const CALCULATORS: ReadonlyMap<string, Calculator> = new Map(
  [transfer, pressure, dewpoint, condense, oxygen, dose, mix].map((each) => [each.name, each]),
);
