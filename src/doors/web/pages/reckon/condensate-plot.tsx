// Condensate over the days: what was expected as a band, what came as a dot; a day that falls out has a shape and a word.
import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import { useRef } from 'react';
import { type CondensateLine, type CondensateVerdict, saidVerdict } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { usePlotSize } from '../../parts/plot-size.ts';

const HEIGHT = 240;
const MARGIN = { top: 24, right: 20, bottom: 30, left: 44 };
/** A word takes so much; nearer than that the next one of its kind says nothing new. */
const WORD_PX = 96;

type Scale = ScaleLinear<number, number>;

export function CondensatePlot({ lines }: { readonly lines: readonly CondensateLine[] }) {
  const ref = useRef<HTMLDivElement>(null);
  const { width } = usePlotSize(ref);
  const { series } = words().reckon;
  const days = lines.map(({ day }) => day);
  const x = scaleLinear()
    .domain([Math.min(...days) - 0.5, Math.max(...days) + 0.5])
    .range([MARGIN.left, width - MARGIN.right]);
  const ends = lines.flatMap((each) => [...endsOf(each.expected), ...endsOf(each.collected)]);
  const y = scaleLinear()
    .domain([0, Math.max(...ends)])
    .nice()
    .range([HEIGHT - MARGIN.bottom, MARGIN.top]);
  const out = lines.filter(({ verdict }) => verdict !== 'as expected');
  const band = area<CondensateLine>()
    .x(({ day }) => x(day))
    .y0(({ expected }) => y(endsOf(expected)[0]))
    .y1(({ expected }) => y(endsOf(expected)[1]));
  const middle = line<CondensateLine>()
    .x(({ day }) => x(day))
    .y(({ expected }) => y(expected.value));
  return (
    <div ref={ref}>
      <svg
        className="plot"
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={series.label(lines.length, out.length)}
      >
        <Axes x={x} y={y} width={width} />
        <path d={band(lines) ?? ''} className="band" />
        <path d={middle(lines) ?? ''} className="expected-line" />
        {lines.map((each) => (
          <Dot key={each.day} line={each} x={x(each.day)} y={y} />
        ))}
        {labelled(out, x).map(({ day, collected, verdict }) => (
          <text
            key={day}
            x={Math.min(x(day), width - MARGIN.right)}
            y={y(collected.value) + (verdict === 'less came' ? 26 : -14)}
            textAnchor={x(day) > width - WORD_PX / 2 - MARGIN.right ? 'end' : 'middle'}
            className="xs out-word"
          >
            {saidVerdict(verdict)}
          </text>
        ))}
      </svg>
      <p className="xs soft">{series.note}</p>
    </div>
  );
}

function endsOf({
  value,
  u95,
}: {
  readonly value: number;
  readonly u95: number | null;
}): readonly [number, number] {
  return [Math.max(0, value - (u95 ?? 0)), value + (u95 ?? 0)];
}

/** One word for several days of a kind beside one another: at the one that falls out furthest. */
function labelled(out: readonly CondensateLine[], x: Scale): readonly CondensateLine[] {
  const kept: CondensateLine[] = [];
  const furthest = [...out].sort((a, b) => Math.abs(b.shortfall.value) - Math.abs(a.shortfall.value));
  for (const each of furthest)
    if (
      kept.every((other) => other.verdict !== each.verdict || Math.abs(x(other.day) - x(each.day)) > WORD_PX)
    )
      kept.push(each);
  return kept;
}

const SHAPES: Readonly<Record<CondensateVerdict, string>> = {
  'as expected': 'M-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0Z',
  'less came': 'M-8-6H8L0 8Z',
  'more came': 'M-8 6H8L0-8Z',
};

function Dot({
  line: { collected, verdict },
  x,
  y,
}: {
  readonly line: CondensateLine;
  readonly x: number;
  readonly y: Scale;
}) {
  const [low, high] = endsOf(collected);
  return (
    <g className={verdict === 'as expected' ? 'came' : 'came out'} data-verdict={verdict}>
      <line x1={x} x2={x} y1={y(low)} y2={y(high)} />
      <path d={SHAPES[verdict]} transform={`translate(${x} ${y(collected.value)})`} />
    </g>
  );
}

function Axes({ x, y, width }: { readonly x: Scale; readonly y: Scale; readonly width: number }) {
  const { today } = words();
  return (
    <>
      {y.ticks(4).map((litres) => (
        <g key={litres}>
          <line x1={MARGIN.left} x2={width - MARGIN.right} y1={y(litres)} y2={y(litres)} className="grid" />
          <text x={MARGIN.left - 8} y={y(litres) + 5} textAnchor="end" className="xs">
            {litres}
          </text>
        </g>
      ))}
      <text x={4} y={14} className="xs">
        L
      </text>
      {x
        .ticks(Math.max(2, Math.floor(width / 120)))
        .filter(Number.isInteger)
        .map((day) => (
          <text key={day} x={x(day)} y={HEIGHT - 8} textAnchor="middle" className="xs">
            {today.dayWord} {day}
          </text>
        ))}
    </>
  );
}
