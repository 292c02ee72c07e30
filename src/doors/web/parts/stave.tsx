// The stave: a rule that lies beside a silhouette. Solid: surely there. Open: may be there. Notch: best value. Hook: floor.
import { roundFigure } from '../../../ground/units/index.ts';
import { rankOf } from './grade.tsx';

export interface StaveFacts {
  readonly capacity: number;
  readonly grade: string | null;
  /** Best value; null where nobody knows. */
  readonly value: number | null;
  readonly low: number;
  readonly high: number;
  /** No reading has checked it: the open part is dashed. */
  readonly unchecked?: boolean;
  readonly floor?: number;
}

/** Full stands here, in parts of the width: what is more than full goes on a little to the right. */
const FULL = 95;
const EMPTY = 1.5;
/** More than full is drawn at most so much. */
const MOST_OVER = 1.04;
/** A zone thinner than this would not be seen. */
const THINNEST = 0.012;

export function Stave({ facts, label }: { readonly facts: StaveFacts; readonly label: string }) {
  const { value, floor, grade } = facts;
  const zones = zonesOf(facts);
  const rank = rankOf(grade);
  return (
    <svg className={`stave ${floor === undefined ? '' : 'with-hook'}`} role="img" aria-label={label}>
      <Rule capacity={facts.capacity} />
      {zones.sure > 0 && (
        <>
          <rect x={at(0)} y="12" width={wide(0, zones.sure)} height="10" className={`g${rank}`} />
          {rank > 1 && (
            <rect x={at(0)} y="12" width={wide(0, zones.sure)} height="10" fill={`url(#p${rank})`} />
          )}
          <rect x={at(0)} y="12" width={wide(0, zones.sure)} height="10" className="thin" />
        </>
      )}
      <rect
        x={at(zones.sure)}
        y="12"
        width={wide(zones.sure, zones.end)}
        height="10"
        className={`open-zone ${facts.unchecked === true ? 'dashed' : ''}`}
      />
      {value !== null && (
        <svg x={at(value / facts.capacity)} y="0" overflow="visible" aria-hidden="true">
          <path d="M-6 2h12l-6 9z" className="notch" />
        </svg>
      )}
      {floor !== undefined && (
        <svg x={at(floor / facts.capacity)} y="0" overflow="visible" aria-hidden="true">
          <path d="M0 7V34q0 4 4 4h5" className="hook" />
        </svg>
      )}
    </svg>
  );
}

/** Ends of the sure and of the open part, in parts of what the store holds. */
export function zonesOf({ capacity, value, low, high }: StaveFacts): { sure: number; end: number } {
  if (value === null) return { sure: 0, end: 1 };
  const part = (litres: number) => Math.min(MOST_OVER, Math.max(0, litres / capacity));
  const sure = part(low);
  return { sure, end: Math.max(part(high), Math.min(MOST_OVER, sure + THINNEST)) };
}

function at(part: number): string {
  const held = Math.min(MOST_OVER, Math.max(0, part));
  return `${EMPTY + held * (FULL - EMPTY)}%`;
}

function wide(from: number, to: number): string {
  return `${(to - from) * (FULL - EMPTY)}%`;
}

/** Twenty-odd steps at most, of 1, 2 or 5 litres or a tenfold of them; every fifth is longer. */
function Rule({ capacity }: { readonly capacity: number }) {
  const step = stepFor(capacity);
  const marks = Array.from({ length: Math.floor(capacity / step + 1e-9) + 1 }, (_, k) => k);
  return (
    <g>
      <line x1={at(0)} x2={at(1)} y1="24.5" y2="24.5" className="rule" />
      {[0, 1].map((end) => (
        <line key={end} x1={at(end)} x2={at(end)} y1="10" y2="32" className="thin" />
      ))}
      {marks.map((mark) => (
        <line
          key={mark}
          x1={at((mark * step) / capacity)}
          x2={at((mark * step) / capacity)}
          y1="24.5"
          y2={mark % 5 === 0 ? '31' : '28'}
          className="thin"
        />
      ))}
    </g>
  );
}

function stepFor(capacity: number): number {
  const steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];
  return steps.find((step) => capacity / step <= 25) ?? 5000;
}

/** Digits of a litre figure without its ±, for the sentence that a voice reads. */
export function bare(litres: number): string {
  return roundFigure({ value: Math.round(litres * 10) / 10, u95: null }).value;
}
