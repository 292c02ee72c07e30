// Which limits bear on release now, which sets there are, and one set whole.
import { type Position, rowsOfGrade } from '../../account/index.ts';
import { entryOf } from '../../book/index.ts';
import { formatShortStamp } from '../../ground/units/index.ts';
import type { LimitSetSheet, LimitSetsSheet, LimitsSheet } from '../../papers/index.ts';
import { type Answer, yes } from '../answer.ts';
import { type Desk, type Moment, positionAt, type Sight } from '../desk.ts';
import { headOf, wordOf } from '../today.ts';
import { findSet, type KnownSet, knownSets, setOfChosen } from './known-sets.ts';
import { exposureOf, setLine, setLines } from './limit-lines.ts';

/** What is in force, in the sight that was asked for. */
export async function limitsInForce(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<LimitsSheet>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const position = seen.value;
  const known = await setsOf(desk);
  if (!known.ok) return known;
  const { limits } = position;
  const whatOf = new Map(known.value.map(({ set }) => [set.id, set]));
  return yes({
    head: headOf(desk, sight, position),
    sets: limits.sets.map((chosen) => {
      const { what = '', uses = [] } = whatOf.get(chosen.set) ?? {};
      const own = setOfChosen(chosen);
      return setLines({ ...own, what, uses: uses.length === 0 ? own.uses : uses });
    }),
    exposureDays: exposureOf(limits.exposureDays),
    chosen: await chosenBy(desk, position),
    findings: position.findings
      .filter(({ code }) => code === 'limit-off')
      .map((finding) => wordOf(position, finding)),
  });
}

async function setsOf(desk: Desk): Promise<Answer<readonly KnownSet[]>> {
  const opened = await desk.account();
  return opened.ok ? knownSets(desk, opened.value.fold) : opened;
}

async function chosenBy(desk: Desk, { limits, dayRule }: Position): Promise<LimitsSheet['chosen']> {
  const row = limits.entry === null ? null : await desk.port.find(limits.entry);
  if (row === null) return null;
  const { by, happenedAtMs } = entryOf(row);
  return {
    ...{ ref: `${row.site} ${row.number}`, id: row.id, by, reason: limits.reason ?? '' },
    at: formatShortStamp(happenedAtMs, dayRule),
  };
}

/** All sets that can be chosen by their name. */
export async function limitSets(desk: Desk, moment: Moment): Promise<Answer<LimitSetsSheet>> {
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return seen;
  const known = await setsOf(desk);
  return known.ok ? yes({ sets: known.value.map((one) => setLine(one, seen.value)) }) : known;
}

/** One set whole, with figures that were typed. */
export async function limitSetShow(desk: Desk, name: string, moment: Moment): Promise<Answer<LimitSetSheet>> {
  const seen = await positionAt(desk, { kind: 'now' }, moment);
  if (!seen.ok) return seen;
  const known = await setsOf(desk);
  if (!known.ok) return known;
  const found = findSet(known.value, name);
  if (!found.ok) return found;
  const { limits, index } = seen.value;
  const { set } = found.value;
  const required = limits.sets.find((one) => one.set === set.id)?.rows.map(({ id }) => id) ?? [];
  const grades = index.outpost.grades.flatMap(({ id }) =>
    rowsOfGrade(limits, index, id).map((row) => row.id),
  );
  const inForce = required.filter((id) => grades.includes(id));
  return yes({ ...setLine(found.value, seen.value), set: setLines(set), inForce });
}
