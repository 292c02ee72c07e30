// A control chart: results over the days, the limit, what the water does by itself, and where nothing was measured.
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { useRef } from 'react';
import { roundFigure } from '../../../ground/units/index.ts';
import type { Trend, TrendPoint } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { DayAxis, MARGIN, ValueAxis } from './plot-axes.tsx';
import { usePlotSize } from './plot-size.ts';

export function TrendPlot({ trend }: { readonly trend: Trend }) {
  const ref = useRef<HTMLDivElement>(null);
  const size = usePlotSize(ref);
  const { quality } = words();
  const { points } = trend;
  const days = points.map(({ day }) => day);
  const x = scaleLinear()
    .domain([Math.min(...days) - 1, Math.max(...days) + 1])
    .range([MARGIN.left, size.width - MARGIN.right]);
  const y = scaleLinear()
    .domain([0, highest(trend) * 1.08])
    .range([size.height - MARGIN.bottom, MARGIN.top])
    .clamp(true);
  const joined = line<TrendPoint>()
    .x(({ day }) => x(day))
    .y(({ figure }) => y(figure.value));
  return (
    <div ref={ref}>
      <svg
        className="plot"
        width={size.width}
        height={size.height}
        role="img"
        aria-label={quality.trendLabel(trend.parameter, trend.place.name, points.length)}
      >
        <ValueAxis y={y} size={size} unit={trend.unit} />
        <DayAxis x={x} size={size} />
        <Levels trend={trend} y={y} width={size.width} />
        {trend.place.kind !== 'everywhere' && trend.place.kind !== 'grade' && (
          <path d={joined(points) ?? ''} className="joined" />
        )}
        {trend.methodChanges.map(({ day }) => (
          <g key={day}>
            <line
              x1={x(day)}
              x2={x(day)}
              y1={MARGIN.top}
              y2={size.height - MARGIN.bottom}
              className="change"
            />
            <text x={x(day) + 4} y={MARGIN.top + 12} className="xs">
              {quality.methodMark}
            </text>
          </g>
        ))}
        {points.map((point) => (
          <Point key={`${point.id} ${point.day} ${point.sample}`} point={point} x={x(point.day)} y={y} />
        ))}
      </svg>
      <p className="xs soft">{quality.trendNote}</p>
    </div>
  );
}

type Scale = ScaleLinear<number, number>;

/** A limit far above everything that was found would press the results onto the axis: it then stands at the upper edge. */
function highest({ points, limits, chart }: Trend): number {
  const found = Math.max(...points.map(({ figure }) => figure.value), chart.limits?.high.value ?? 0);
  const most = limits.map(({ value }) => value ?? 0);
  const near = most.filter((value) => value < found * 8);
  return Math.max(found, ...near) || 1;
}

function Levels({ trend, y, width }: { readonly trend: Trend; readonly y: Scale; readonly width: number }) {
  const { quality } = words();
  const { limits } = trend.chart;
  const control = limits === null ? [] : [limits.high, ...(limits.low === null ? [] : [limits.low])];
  return (
    <>
      {trend.limits.flatMap(({ row, side, value }) =>
        value === null
          ? []
          : [
              <g key={row}>
                {isInside(y, value) && (
                  <line
                    x1={MARGIN.left}
                    x2={width - MARGIN.right}
                    y1={y(value)}
                    y2={y(value)}
                    className="limit"
                  />
                )}
                <text
                  x={width - MARGIN.right}
                  y={y(value) + (side === 'at least' ? 17 : -5)}
                  textAnchor="end"
                  className="xs"
                >
                  {limitText(
                    y,
                    value,
                    quality.limitLine(side, `${roundFigure({ value, u95: null }).value} ${trend.unit}`),
                  )}
                </text>
              </g>,
            ],
      )}
      {control.map(({ value }, k) => (
        <g key={k === 0 ? 'high' : 'low'}>
          <line x1={MARGIN.left} x2={width - MARGIN.right} y1={y(value)} y2={y(value)} className="control" />
          <text x={MARGIN.left + 4} y={y(value) + (k === 0 ? -5 : 17)} className="xs">
            {k === 0 ? quality.control.high : quality.control.low}
          </text>
        </g>
      ))}
    </>
  );
}

const isInside = (y: Scale, value: number): boolean => value <= (y.domain()[1] ?? 0);

/** A limit beyond the upper edge is named there, and no line is drawn where it is not. */
function limitText(y: Scale, value: number, said: string): string {
  return isInside(y, value) ? said : words().quality.farUp(said);
}

/** Less than a detection limit: an open ring with a mark that points down. Beyond the limit: full. */
function Point({ point, x, y }: { readonly point: TrendPoint; readonly x: number; readonly y: Scale }) {
  const at = y(point.figure.value);
  const isBeyond = point.against === 'above' || point.against === 'below';
  return (
    <g className={isBeyond ? 'reading beyond' : 'reading'}>
      <circle cx={x} cy={at} r="5" />
      {point.told.censored !== 'no' && (
        <path
          d={
            point.told.censored === 'below'
              ? `M${x} ${at + 6}v8m-4 -4l4 4l4 -4`
              : `M${x} ${at - 6}v-8m-4 4l4 -4l4 4`
          }
        />
      )}
    </g>
  );
}
