// What kind of vessel it is, drawn as its outline: never filled, with a collar in colour and pattern of the grade.
import { rankOf } from './grade.tsx';

interface Outline {
  readonly path: string;
  readonly collar: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

const bottle: Outline = {
  path: 'M9 25L14 16V8q0-2 2-2h7q2 0 2 2v7h5q6 0 6 6v26q0 5-5 5H14q-5 0-5-5ZM25 19h4.5a1.5 1.5 0 0 1 0 3h-4.5a1.5 1.5 0 0 1 0-3Z',
  collar: { x: 9, y: 28, width: 27, height: 8 },
};

const outlines: Readonly<Record<string, Outline>> = {
  tank: {
    path: 'M22 1v5M22 52v5M7 17Q7 6 22 6Q37 6 37 17V41Q37 52 22 52Q7 52 7 41Z',
    collar: { x: 7, y: 20, width: 30, height: 8 },
  },
  container: bottle,
  wasteContainer: bottle,
  softBag: {
    path: 'M7 7Q22 12 37 7Q32 30 37 53Q22 48 7 53Q12 30 7 7Z',
    collar: { x: 9.2, y: 16, width: 25.6, height: 8 },
  },
  buffer: {
    path: 'M22 2v6M11 16L6 21.5 11 27 6 32.5 11 38 6 43.5 11 49H33L38 43.5 33 38 38 32.5 33 27 38 21.5 33 16M11 8H33V16H11Z',
    collar: { x: 11, y: 8, width: 22, height: 8 },
  },
  vehicleTank: {
    path: 'M13 12H31Q41 12 41 29Q41 46 31 46H13Q3 46 3 29Q3 12 13 12ZM12 46v6M32 46v6M12 12V6M32 12V6',
    collar: { x: 18, y: 12, width: 8, height: 34 },
  },
};

export function Silhouette({
  kind,
  grade,
  hold = false,
}: {
  readonly kind: string;
  readonly grade: string | null;
  readonly hold?: boolean;
}) {
  const { path, collar } = outlines[kind] ?? bottle;
  const rank = rankOf(grade);
  return (
    <svg className="silhouette" viewBox="0 0 44 58" aria-hidden="true">
      {rank > 0 && <rect {...collar} className={`g${rank}`} />}
      {rank > 1 && <rect {...collar} fill={`url(#p${rank})`} />}
      {rank > 0 && <rect {...collar} className="thin" />}
      <path d={path} className="outline" />
      {hold && (
        <>
          <path d="M2 37L42 17M2 51L42 31" className="bar-edge" />
          <path d="M2 37L42 17M2 51L42 31" className="bar" />
          <path d="M26 40h18v18H26Z" className="behind" />
          <rect x="28" y="46" width="15" height="11" rx="1.5" className="lock" />
          <path d="M31.5 46v-3a4 4 0 0 1 8 0v3" className="lock-bow" />
        </>
      )}
    </svg>
  );
}
