// Grade badge: shape and numeral and word; a grade that only this outpost knows has a shape of its own.
import { words } from '../language.ts';

const shapes = {
  drinking: { rank: '1', shape: <circle cx="12" cy="12" r="10" />, y: 16.6 },
  technical: { rank: '2', shape: <rect x="2.5" y="2.5" width="19" height="19" rx="1" />, y: 16.6 },
  raw: { rank: '3', shape: <path d="M12 1.5L23 21.5H1Z" />, y: 18.6 },
  waste: { rank: '4', shape: <path d="M8 2h8l6 6v8l-6 6H8l-6-6V8z" />, y: 16.6 },
} as const;

const own = { shape: <path d="M12 1.5L22.5 9.5L18.5 22H5.5L1.5 9.5Z" />, y: 17 };

type Known = keyof typeof shapes;

function isKnown(grade: string): grade is Known {
  return Object.hasOwn(shapes, grade);
}

/** The number of the fill that goes with a grade: 1 to 4, 5 for one of the outpost's own, 0 for none. */
export function rankOf(grade: string | null): number {
  if (grade === null) return 0;
  return isKnown(grade) ? ['drinking', 'technical', 'raw', 'waste'].indexOf(grade) + 1 : 5;
}

export function GradeBadge({ grade }: { readonly grade: string | null }) {
  if (grade === null) {
    return (
      <svg className="ic" viewBox="0 0 24 24" role="img" aria-label={words().grade.unknown}>
        <g className="badge">
          <circle cx="12" cy="12" r="10" strokeDasharray="3 3" />
          <text x="12" y="16.6" textAnchor="middle">
            ?
          </text>
        </g>
      </svg>
    );
  }
  const { shape, y } = isKnown(grade) ? shapes[grade] : own;
  const sign = isKnown(grade) ? shapes[grade].rank : grade.charAt(0).toUpperCase();
  const name = isKnown(grade) ? words().grade.badge(sign, grade) : words().grade.own(grade);
  return (
    <svg className="ic" viewBox="0 0 24 24" role="img" aria-label={name}>
      <g className={`badge ${grade === 'waste' ? 'solid' : ''}`}>
        {shape}
        <text x="12" y={y} textAnchor="middle">
          {sign}
        </text>
      </g>
    </svg>
  );
}

/** What the marks mean, in a line; on paper too. */
export function GradeKey({ grades }: { readonly grades: readonly (string | null)[] }) {
  const { grade: names } = words();
  const known = Object.keys(shapes);
  const others = grades.flatMap((grade) => (grade === null || known.includes(grade) ? [] : [grade]));
  return (
    <ul className="grade-key xs" aria-label={names.key}>
      {[...known, ...new Set(others)].map((grade) => (
        <li key={grade}>
          <GradeBadge grade={grade} /> {grade}
        </li>
      ))}
    </ul>
  );
}

/** Fills of the grades, once a page; every drawing points at them. */
export function Patterns() {
  return (
    <svg width="0" height="0" className="patterns" aria-hidden="true">
      <defs>
        <pattern id="p2" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V7" className="lift" strokeWidth="4" />
        </pattern>
        <pattern id="p3" width="6" height="6" patternUnits="userSpaceOnUse">
          <circle cx="3" cy="3" r="1.5" className="lift-dot" />
        </pattern>
        <pattern id="p4" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6M0 0H6" className="lift" strokeWidth="1.6" />
        </pattern>
        <pattern id="p5" width="8" height="8" patternUnits="userSpaceOnUse">
          <path d="M0 4H8" className="lift" strokeWidth="2.5" />
        </pattern>
      </defs>
    </svg>
  );
}
