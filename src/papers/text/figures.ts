// Figures of a sheet in the units that were asked for, in a sentence or in a cell.
import { convertAtDensity, formatFigure, roundFigure } from '../../ground/units/index.ts';
import type { SheetFigure } from '../sheets/figure.ts';
import type { StoreLine } from '../sheets/today.ts';
import type { TextOptions } from './options.ts';
import { signed } from './signs.ts';

export interface Amount {
  readonly value: number;
  readonly u95: number | null;
  readonly unit: string;
}

/** A stock of a store: both of its figures are there, so nothing is converted. */
export function stockOf(store: Pick<StoreLine, 'mass' | 'volume'>, { units }: TextOptions): Amount {
  return units === 'kg' ? store.mass : store.volume;
}

/** A volume, in kilograms at the density that it was made with where that was asked for. */
export function amountOf(figure: SheetFigure, { units }: TextOptions): Amount {
  const density = densityOf(figure);
  if (units === 'L' || density === null || !figure.unit.startsWith('L')) return figure;
  const to = figure.unit.replace('L', 'kg');
  const convert = (value: number) =>
    convertAtDensity(value, { from: figure.unit, to, densityKgPerM3: density });
  return { value: convert(figure.value), u95: figure.u95 === null ? null : convert(figure.u95), unit: to };
}

/** The density that stands among the inputs of a volume, in kg/m3. */
export function densityOf({ because }: SheetFigure): number | null {
  const input = because.inputs.find(({ name }) => name === 'density');
  return typeof input?.value === 'number' ? input.value : null;
}

/** A bare volume beside a figure, such as a floor: in the same units as it. */
export function besideOf(litres: number, figure: SheetFigure, options: TextOptions): Amount {
  return amountOf({ ...figure, value: litres, u95: null }, options);
}

/** `171 ± 4 L`, in one piece. */
export function said(amount: Amount, { style }: TextOptions): string {
  return signed(formatFigure(amount, { style: 'screen' }), style);
}

/** Value and ± of a record for programs: rounded together, without their unit, which the name of the field has. */
export function fieldsOf(amount: Pick<Amount, 'value' | 'u95'>): readonly [string, string] {
  const { value, u95 } = roundFigure(amount);
  return [value, u95 ?? ''];
}
