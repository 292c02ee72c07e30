// What entries did, or would do, as a sheet: the entries in words, the stores that they changed, the days of cover.
import type { AccountFinding, Position } from '../../account/index.ts';
import { notFreeBecause } from '../../account/index.ts';
import type { AnyEntry, BookPort } from '../../book/index.ts';
import { coverOf } from '../../forecast/index.ts';
import { formatFigure } from '../../ground/units/index.ts';
import { becameInWords, type KeptSheet } from '../../papers/index.ts';
import { bookLine, refsIn } from '../book-line.ts';
import { coveredGrades } from '../covered-grades.ts';
import { drawnMgOf, NOTHING_L } from '../open-findings.ts';
import { wordOf } from '../today.ts';

/** Days of cover that change by less than this are not told. */
const TOLD_DAYS = 0.1;

/** @param what.entries those that are kept together; the first of them is what the sheet is about */
export async function sheetOf(
  port: BookPort,
  what: {
    readonly entries: readonly [AnyEntry, ...AnyEntry[]];
    readonly kept: boolean;
    readonly before: Position;
    readonly after: Position;
  },
): Promise<KeptSheet> {
  const { entries, kept, before, after } = what;
  const [entry, ...others] = entries;
  const old = new Map(before.stores.map((store) => [store.facts.id, store]));
  const litres = (mg: number) => mg / after.mgPerL;
  const stores = after.stores.flatMap((store): KeptSheet['stores'][number][] => {
    const was = old.get(store.facts.id);
    // A reading of one store moves its neighbours by a hair: only what a person would see is told.
    if (was !== undefined && printed(was, after.mgPerL) === printed(store, after.mgPerL)) return [];
    return [
      {
        before: was === undefined ? null : { valueL: litres(was.massMg), u95L: litres(2 * was.uMg) },
        after: { id: store.facts.id, valueL: litres(store.massMg), u95L: litres(2 * store.uMg) },
      },
    ];
  });
  const { dayRule, mgPerL, index } = after;
  const context = { dayRule, mgPerL, instruments: index.instruments, ...(await refsIn(port, entries)) };
  return {
    kept,
    line: bookLine(entry, context),
    ...(others.length > 0 && { also: others.map((other) => bookLine(other, context)) }),
    stores,
    // An opening tells of every store what it is; it stands in its own line.
    became: entry.kind === 'opening' ? [] : becameIn({ kept, before, after }),
    cover: coverChanges(before, after),
    findings: askedAbout({ before, after }, new Set(entries.map(({ id }) => id))),
  };
}

/** What water became another: the label that everybody reads from now on, and what holds it back. */
function becameIn({
  kept,
  before,
  after,
}: {
  kept: boolean;
  before: Position;
  after: Position;
}): readonly string[] {
  const old = new Map(before.stores.map((store) => [store.facts.id, store]));
  return after.stores.flatMap((store) => {
    const was = old.get(store.facts.id);
    return becameInWords({
      store: store.facts.id,
      kept,
      was: was === undefined ? null : { grade: was.grade, why: notFreeBecause(before, was) },
      is: {
        grade: store.grade,
        why: notFreeBecause(after, store),
        hold: store.hold?.hold ?? store.conditional?.hold ?? null,
      },
    });
  });
}

/** What is asked about an entry is asked when it is made, and what a store stands at since; what is merely good to know stands in *Today*. */
function askedAbout(
  { before, after }: { readonly before: Position; readonly after: Position },
  entries: ReadonlySet<string>,
): KeptSheet['findings'] {
  const stood = new Set(before.findings.filter(isStanding).map(standingName));
  return after.findings
    .filter(
      (finding) =>
        (entries.has(finding.where.entry ?? '') &&
          finding.severity !== 'know' &&
          !isNoDraw(after, finding)) ||
        (isStanding(finding) && !stood.has(standingName(finding))),
    )
    .map((finding) => wordOf(after, finding));
}

/** A draw that prints as nothing. */
function isNoDraw({ mgPerL }: Position, finding: AccountFinding): boolean {
  return finding.code === 'reserve-drawn' && drawnMgOf(finding) < NOTHING_L * mgPerL;
}

const isStanding = ({ code }: AccountFinding) => code === 'negative-stock' || code === 'stands-over-capacity';
const standingName = ({ code, where }: AccountFinding) => `${code} ${where.store ?? ''}`;

function printed(stock: { massMg: number; uMg: number }, mgPerL: number): string {
  return formatFigure(
    { value: stock.massMg / mgPerL, u95: (2 * stock.uMg) / mgPerL, unit: 'L' },
    { style: 'plain' },
  );
}

function coverChanges(before: Position, after: Position): KeptSheet['cover'] {
  return coveredGrades(after).flatMap((grade) => {
    const beforeQ05 = coverOf(before, grade).q05;
    const afterQ05 = coverOf(after, grade).q05;
    const same =
      beforeQ05 === afterQ05 ||
      (beforeQ05 !== null && afterQ05 !== null && Math.abs(afterQ05 - beforeQ05) < TOLD_DAYS);
    return same ? [] : [{ grade, beforeQ05, afterQ05 }];
  });
}
