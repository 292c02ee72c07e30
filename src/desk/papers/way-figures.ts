// Figures that came with a release or a downgrade itself, each held against the rows of its stores.
import { judgedFigure, rowsOfGrade, rowsOfStores, type SampleResult } from '../../account/index.ts';
import type { Entry } from '../../book/index.ts';
import { formatShortStamp } from '../../ground/units/index.ts';
import { basisUnlessSaid } from '../../outpost/index.ts';
import type { PaperFigure } from '../../papers/index.ts';
import { figureLine } from '../quality/figure-lines.ts';
import { refOf } from '../quality/past.ts';
import type { Seen } from '../quality/seen.ts';

/** What ends a hold for a store. */
export type WayOut = Entry<'release'> | Entry<'downgrade'> | Entry<'waiver'>;

/** The account knows figures that a release brought by this name. */
export const sampleOfWay = (way: WayOut): string => `release ${refOf(way)}`;

export function figuresOfWay(
  { fold, position }: Pick<Seen, 'fold' | 'position'>,
  way: WayOut | null,
  stores: readonly string[],
): readonly PaperFigure[] {
  if (way === null || way.kind === 'waiver') return [];
  // A downgrade tells what failed for the better use.
  const rows =
    way.kind === 'downgrade'
      ? rowsOfGrade(fold.limits, fold.index, way.body.fromGrade)
      : rowsOfStores(fold, stores);
  const sample = sampleOfWay(way);
  return way.body.values.map((told): PaperFigure => {
    const figure: SampleResult = {
      ...{ id: way.id, sample, parameter: told.parameter, value: told.value, unit: told.unit },
      censored: told.below === true ? 'below' : told.above === true ? 'above' : 'no',
      basis: told.basis ?? basisUnlessSaid(told.parameter) ?? null,
      ...({ method: null, madeAt: 'aboard', degassed: null, verified: true } as const),
      takenAtMs: way.happenedAtMs,
      validUntilMs: Number.POSITIVE_INFINITY,
    };
    return {
      stores,
      sample,
      taken: formatShortStamp(way.happenedAtMs, position.dayRule),
      figure: { ...figureLine(figure, judgedFigure(rows, figure, position.atMs)), ref: refOf(way) },
    };
  });
}
