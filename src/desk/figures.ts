// Figures as they leave the desk: whole milligrams become kilograms and litres, a standard deviation becomes ± at 95 %.
import type { Position, StockSum } from '../account/index.ts';
import type { Because, SheetFigure } from '../papers/index.ts';

const MG_PER_KG = 1_000_000;

/** Coverage factor of the printed ±: 95 % of a normal distribution, rounded as is custom. @source GUM 6.3.3 */
const COVERAGE = 2;

export function massFigure(stock: StockSum, because: Because): SheetFigure {
  return { value: stock.massMg / MG_PER_KG, u95: (COVERAGE * stock.uMg) / MG_PER_KG, unit: 'kg', because };
}

/** Litres at the outpost's declared density; the density stands among the inputs. */
export function volumeFigure(
  position: Pick<Position, 'mgPerL'>,
  stock: StockSum,
  because: Because,
): SheetFigure {
  const { mgPerL } = position;
  const density = { name: 'density', value: mgPerL / 1000, unit: 'kg/m3' };
  return {
    value: stock.massMg / mgPerL,
    u95: (COVERAGE * stock.uMg) / mgPerL,
    unit: 'L',
    because: { ...because, inputs: [...because.inputs, density] },
  };
}
