// Whether water is released for a use, by whom of results or certificate and until when, or every reason why it is not.
import type { LimitRow } from '../../outpost/index.ts';
import { judgeRow } from './judge-row.ts';
import type {
  Certificate,
  Lack,
  Reason,
  ReasonCode,
  SampleResult,
  Verdict,
  WaterSince,
} from './sample-result.ts';

export interface VerdictAsked {
  /** The rows that the outpost's choice requires for the use. */
  readonly rows: readonly LimitRow[];
  /** All results of the water of one store; a result that was set aside with a reason is not among them. */
  readonly results: readonly SampleResult[];
  readonly water: WaterSince;
  readonly nowMs: number;
  readonly forReserve: boolean;
  readonly certificate: Certificate | null;
}

/** What a certificate stands in for: the own result is not back. One that was back and has run out has ended it. */
const AWAITED: ReadonlySet<ReasonCode> = new Set<Lack>([
  'missing',
  'unverified',
  'older-water',
  'not-degassed',
]);

/**
 * Fail-closed: water is released only where every required row is in force and met by a verified, valid result of this water,
 * and nothing speaks against it. The certificate is no exception to that but one more row of the same table.
 * @source none: the outpost's own rule, docs/methods/release-verdict.md
 * @example verdictOf({ rows: [], results, water, nowMs, forReserve: false, certificate: null }).released // false
 */
export function verdictOf(asked: VerdictAsked): Verdict {
  const { rows, results, certificate, forReserve, nowMs } = asked;
  if (rows.length === 0) return { released: false, reasons: [NOTHING_REQUIRED] };
  const byParameter = grouped(results);
  const judged = [...rows]
    .sort(byId)
    .map((row) => judgeRow(row, byParameter.get(row.parameter) ?? [], asked));
  const reasons = judged.flatMap((each) => each.reasons);
  if (reasons.length === 0)
    return byResults(judged.map(({ evidence }) => evidence).filter((each) => each !== null));
  const isAwaited = reasons.every(({ code }) => AWAITED.has(code));
  if (isAwaited && !forReserve && certificate !== null && holds(certificate, nowMs))
    return {
      released: true,
      by: 'certificate',
      untilMs: certificate.validUntilMs,
      evidence: [certificate.id],
    };
  return { released: false, reasons };
}

const NOTHING_REQUIRED: Reason = { code: 'nothing-required', row: '', parameter: '', results: [] };

const byId = (one: LimitRow, other: LimitRow): number => (one.id < other.id ? -1 : 1);

function grouped(results: readonly SampleResult[]): ReadonlyMap<string, readonly SampleResult[]> {
  const groups = new Map<string, SampleResult[]>();
  for (const result of results) {
    const group = groups.get(result.parameter);
    if (group === undefined) groups.set(result.parameter, [result]);
    else group.push(result);
  }
  return groups;
}

function byResults(evidence: readonly SampleResult[]): Verdict {
  const untilMs = Math.min(...evidence.map(({ validUntilMs }) => validUntilMs));
  const ids = [...new Set(evidence.map(({ id }) => id))].sort();
  return { released: true, by: 'results', untilMs, evidence: ids };
}

/** `=== true` and `<`, so that what is unknown does not hold. */
function holds({ allowedByPolicy, coversAllWater, validUntilMs }: Certificate, nowMs: number): boolean {
  return allowedByPolicy === true && coversAllWater === true && nowMs < validUntilMs;
}
