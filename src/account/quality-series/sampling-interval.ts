// How often the outpost file asks for a measurement: lines of `service` that say what they measure and where.
import type { Outpost, Service } from '../../outpost/index.ts';
import type { MeasuredPoint } from './measured-point.ts';

export interface SamplingInterval {
  /** The line that holds while nothing is raised. */
  readonly service: string;
  readonly everyDays: number;
  /** Days until the next measurement is due after this one. */
  readonly daysAfter: (point: Pick<MeasuredPoint, 'told'>) => number;
}

/**
 * Of a sampling point; no line speaks of single stores. A raised figure brings in the line that stands in its place.
 * @example samplingInterval(outpost, { parameter: 'TOC', point: 'product' })?.everyDays // 7
 */
export function samplingInterval(
  { service }: Pick<Outpost, 'service'>,
  of: { readonly parameter: string; readonly point: string },
): SamplingInterval | null {
  const lines = service.filter(
    ({ measures }) =>
      measures?.parameters.includes(of.parameter) === true && measures.points.includes(of.point),
  );
  const usual = lines.find(({ whenAboveMgPerL }) => whenAboveMgPerL === undefined);
  if (usual === undefined) return null;
  const raised = lines.filter(({ insteadOf }) => insteadOf === usual.id);
  return {
    service: usual.id,
    everyDays: usual.everyDays,
    daysAfter: ({ told }) => raised.find((line) => isRaised(line, told))?.everyDays ?? usual.everyDays,
  };
}

function isRaised({ whenAboveMgPerL }: Service, { value, unit }: MeasuredPoint['told']): boolean {
  return whenAboveMgPerL !== undefined && unit === 'mg/L' && value > whenAboveMgPerL;
}
