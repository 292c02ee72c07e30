// What is open in a position: what still asks for somebody, the gravest first, and what is one thing told as one.
import type { AccountFinding, Position } from '../account/index.ts';
import { dayOf, msPerDay } from '../ground/units/index.ts';

/** A finding about an entry is shown for this long; one about a state as long as the state lasts. */
const SHOWN_MS = 7 * msPerDay;
/** These wait for a decision, however old they are. */
const WAITING: ReadonlySet<string> = new Set(['duplicate-proposed', 'copy-proposed']);

export const gravity = { error: 0, 'act-now': 1, 'act-today': 2, know: 3 } as const;

/** What is still open, the gravest first, the youngest first among equals. */
export function openFindings(position: Position): readonly AccountFinding[] {
  return drawsByDay(
    position,
    toldOnce(position).filter((finding) => isOpen(position, finding)),
  ).sort((a, b) => gravity[a.severity] - gravity[b.severity] || b.atMs - a.atMs);
}

/** What asked for somebody once and does not any more: to be known where one looks at its store. The youngest first. */
export function pastFindings(position: Position): readonly AccountFinding[] {
  const past = toldOnce(position).filter((finding) => !isOpen(position, finding));
  return drawsByDay(position, past)
    .map((finding) => ({ ...finding, severity: 'know' as const }))
    .sort((a, b) => b.atMs - a.atMs);
}

function isOpen(position: Position, { code, atMs }: AccountFinding): boolean {
  return WAITING.has(code) || position.atMs - atMs <= SHOWN_MS;
}

function toldOnce(position: Position): readonly AccountFinding[] {
  const standing = new Set(
    position.findings.flatMap(({ code, where }) => (code === 'stands-over-capacity' ? [where.store] : [])),
  );
  // What it still is, is not said a second time of the entry that brought it there.
  return position.findings.filter(
    ({ code, where }) => code !== 'over-capacity' || !standing.has(where.store),
  );
}

/** Less than this prints as nothing, and nothing was drawn. */
export const NOTHING_L = 0.05;

/** What was drawn from the reserve on one day is one line: all of it, with the youngest of its entries. */
function drawsByDay(position: Position, findings: readonly AccountFinding[]): AccountFinding[] {
  const days = new Map<string, AccountFinding[]>();
  const others: AccountFinding[] = [];
  for (const finding of findings) {
    if (finding.code !== 'reserve-drawn') {
      others.push(finding);
      continue;
    }
    const key = `${finding.where.store ?? ''} ${dayOf(finding.atMs, position.dayRule)}`;
    days.set(key, [...(days.get(key) ?? []), finding]);
  }
  return [...others, ...[...days.values()].flatMap((draws) => drawnOfDay(position, draws))];
}

export function drawnMgOf({ data }: AccountFinding): number {
  return typeof data['massMg'] === 'number' ? data['massMg'] : 0;
}

function drawnOfDay({ mgPerL, dayRule }: Position, draws: readonly AccountFinding[]): AccountFinding[] {
  const last = draws.reduce((youngest, each) => (each.atMs >= youngest.atMs ? each : youngest));
  const massMg = draws.reduce((sum, finding) => sum + drawnMgOf(finding), 0);
  if (massMg < NOTHING_L * mgPerL) return [];
  if (draws.length === 1) return [last];
  const said = draws.every(({ data }) => data['said'] === true);
  const data = { ...last.data, massMg, said, times: draws.length, day: dayOf(last.atMs, dayRule) };
  return [{ ...last, data, entries: [...new Set(draws.flatMap(({ entries }) => entries))] }];
}
