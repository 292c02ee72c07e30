// The purifier beds: the list of them, and one bed with what is read behind it and when it is due.
import {
  type BedStory,
  type Beds,
  bedCauses,
  bedTrends,
  leadUsedL,
  type Position,
} from '../account/index.ts';
import { bedCurve, bedDate, type FeedAhead, feedAhead } from '../forecast/index.ts';
import { dayOf, type Finding, formatIsoUtc, msPerDay } from '../ground/units/index.ts';
import {
  type BedLine,
  type BedPlot,
  type BedSheet,
  type BedsSheet,
  evidenceInWords,
  type SheetFigure,
} from '../papers/index.ts';
import { type Answer, no, yes } from './answer.ts';
import { adviceOf, soonest } from './bed-advice.ts';
import { datesOf, dayAt, feedOf, parameterOf } from './bed-parameter.ts';
import { changeLines, readingLines } from './bed-readings.ts';
import type { DatedTrend } from './dated-trend.ts';
import { type Desk, type Moment, positionAt, type Sight, viewOf } from './desk.ts';
import { deskFinding } from './desk-finding.ts';
import { findName } from './log/context.ts';
import { headOf, wordOf } from './today.ts';

const METHOD = 'bed-life';
const COVERAGE = 2;
/** The days ahead that a plot and a table show, at the least and at the most. */
const LEAST_AHEAD = 7;
const MOST_AHEAD = 60;

interface Seen {
  readonly position: Position;
  readonly told: Beds;
}

export async function bedList(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<BedsSheet>> {
  const seen = await look(desk, sight, moment);
  if (!seen.ok) return seen;
  const { position, told } = seen.value;
  return yes({
    head: headOf(desk, sight, position),
    beds: told.beds.flatMap((story) => {
      const feed = feedAhead(position, story);
      const trends = datedTrends(position, story, feed);
      return story.positions.map((_, place) => bedLine(position, told, { story, place, trends }));
    }),
    spares: sparesOf(told),
    findings: contradictionsOf(told).map((finding) => wordOf(position, finding)),
  });
}

export async function bedShow(
  desk: Desk,
  query: { readonly bed?: string },
  sight: Sight,
  moment: Moment,
): Promise<Answer<BedSheet>> {
  const seen = await look(desk, sight, moment);
  if (!seen.ok) return seen;
  const { position, told } = seen.value;
  const all = told.beds.flatMap((story) => story.positions.map((_, place) => ({ story, place })));
  const names = all.map(({ story, place }) => nameOf(told, story, place));
  const found = findName('bed', query.bed ?? names[0] ?? '', names);
  if (!found.ok) return found;
  const bed = all[names.indexOf(found.value)] as (typeof all)[number];
  return yes(await sheetOf(desk, { sight, position, told, ...bed }));
}

async function look(desk: Desk, sight: Sight, moment: Moment): Promise<Answer<Seen>> {
  const seen = await positionAt(desk, sight, moment);
  if (!seen.ok) return seen;
  const told = await desk.beds(viewOf(sight));
  if (!told.ok) return told;
  if (told.value.beds.length === 0) return no('wrong use', deskFinding('no-beds'));
  return yes({ position: seen.value, told: told.value });
}

async function sheetOf(
  desk: Desk,
  of: Seen & { readonly sight: Sight; readonly story: BedStory; readonly place: number },
): Promise<BedSheet> {
  const { sight, position, told, story, place } = of;
  const isLead = place === 0;
  const feed = feedAhead(position, story);
  const trends = datedTrends(position, story, feed);
  const refOf = await refsOf(desk, story);
  const dayRule = position.dayRule;
  return {
    head: headOf(desk, sight, position),
    bed: bedLine(position, told, { story, place, trends }),
    // What is read behind the beds tells of the first one: those behind it have let nothing through before it does.
    parameters: isLead ? trends.map((dated) => parameterOf(position, { dated, refOf })) : [],
    advice: isLead ? adviceOf(position, { trends, spares: sparesOf(told) }) : null,
    causes: isLead
      ? bedCauses(
          story,
          trends.map(({ trend }) => trend),
        ).map(({ cause, evidence }) => ({
          cause,
          evidence: evidence.map((each) => ({
            side: each.weight > 0 ? 'for' : each.weight < 0 ? 'against' : 'open',
            text: evidenceInWords(each, position.mgPerL),
          })),
        }))
      : [],
    feed: feed === null ? null : feedOf(position, { story, feed, trends }),
    readings: readingLines(story, { dayRule, trends, refOf }),
    changes: changeLines(story, { dayRule, refOf }),
    plot: isLead && feed !== null ? plotOf(position, { story, feed, trends }) : null,
    findings: contradictionsOf(told).map((finding) => wordOf(position, finding)),
  };
}

function datedTrends(position: Position, story: BedStory, feed: FeedAhead | null): readonly DatedTrend[] {
  return bedTrends(position.index, story).map((trend) => ({
    trend,
    date: feed === null ? null : bedDate(trend.fit, story, feed),
  }));
}

/** With one purifier its beds are called by their places. */
function nameOf({ beds }: Beds, { unit, positions }: BedStory, place: number): string {
  const position = positions[place] ?? '';
  return beds.length === 1 ? position : `${unit} ${position}`;
}

function sparesOf({ spares }: Beds): BedsSheet['spares'] {
  return spares === null ? null : { part: spares.part, count: spares.count };
}

function bedLine(
  position: Position,
  told: Beds,
  of: { readonly story: BedStory; readonly place: number; readonly trends: readonly DatedTrend[] },
): BedLine {
  const { story, place, trends } = of;
  const { standing } = story;
  const used = place === 0 ? leadUsedL(story) : lagUsed(position, story);
  const { nominalL, capacityDoubtL } = bedsOfFile(position, story);
  const inputs = [{ name: 'life', value: nominalL, unit: 'L' }];
  const figure = (value: number, u: number): SheetFigure => ({
    value,
    u95: COVERAGE * u,
    unit: 'L',
    because: { entries: standing.entry === '' ? [] : [standing.entry], method: METHOD, inputs },
  });
  const percent = (lifeL: number): number => (100 * used.valueL) / Math.max(1e-9, lifeL);
  const due = place === 0 ? soonest(trends) : null;
  return {
    id: nameOf(told, story, place),
    unit: story.unit,
    position: story.positions[place] ?? '',
    used: figure(used.valueL, used.uL),
    life: figure(nominalL, capacityDoubtL),
    usedPercent: {
      value: percent(nominalL),
      low: percent(nominalL + COVERAGE * capacityDoubtL),
      high: percent(Math.max(0.1 * nominalL, nominalL - COVERAGE * capacityDoubtL)),
    },
    since: {
      begun: standing.begun,
      day: dayOf(standing.sinceMs, position.dayRule),
      at: formatIsoUtc(standing.sinceMs),
    },
    dates: due === null ? null : datesOf(due.date, position.dayRule),
    by: due?.trend.parameter ?? null,
  };
}

function bedsOfFile({ index }: Position, { unit }: BedStory) {
  const found = index.units.get(unit);
  if (found?.kind !== 'purifier' || found.beds === undefined) throw new Error(`${unit} has no beds`);
  return found.beds;
}

/** Beds behind the first are told by the share of its use that the file gives. */
function lagUsed(position: Position, story: BedStory): { readonly valueL: number; readonly uL: number } {
  const { lagStartL, lagStartUL } = story.standing;
  const share = bedsOfFile(position, story).lagUseShareAfterChange ?? 0;
  const own = LAG_RELATIVE_U * share * story.fedL;
  return { valueL: lagStartL + share * story.fedL, uL: Math.sqrt(lagStartUL * lagStartUL + own * own) };
}

/** As in the account: the file calls the share about so. Ours, no source. */
const LAG_RELATIVE_U = 0.25;

/** Of the quantity that rises, else of the one that is due first. */
function plotOf(
  position: Position,
  of: { readonly story: BedStory; readonly feed: FeedAhead; readonly trends: readonly DatedTrend[] },
): BedPlot | null {
  const { story, feed, trends } = of;
  const chosen = soonest(trends);
  if (chosen === null) return null;
  const { trend, date } = chosen;
  const lastMs = date?.ms.q90 ?? null;
  const until = lastMs === null ? MOST_AHEAD : Math.ceil((lastMs - story.countedToMs) / msPerDay) + 2;
  const days = Math.min(MOST_AHEAD, Math.max(LEAST_AHEAD, until));
  return {
    parameter: trend.parameter,
    unit: trend.unit,
    limit: trend.limit,
    curve: bedCurve({ trend, story, feed }, days).map(
      ({ atMs, throughputL, throughputUL, reading, isAhead }) => ({
        ...dayAt(atMs, position.dayRule),
        ...reading,
        unit: trend.unit,
        throughputL,
        throughputU95L: COVERAGE * throughputUL,
        isAhead,
      }),
    ),
  };
}

function contradictionsOf({ contradictions }: Beds): readonly Finding[] {
  return contradictions.map(({ entries, of, sample, place, measured, expected, u, unit, inU, isWhole }) =>
    deskFinding(
      'figures-contradict',
      { of, sample, place, measured, expected, u95: COVERAGE * u, unit, inU, isWhole },
      { severity: 'act-today', entries },
    ),
  );
}

/** How people name the entries that a sheet speaks of. */
async function refsOf(desk: Desk, { results, past }: BedStory): Promise<(id: string) => string> {
  const refs = new Map<string, string>();
  for (const id of new Set([...results, ...past].map(({ entry }) => entry))) {
    const found = await desk.port.find(id);
    if (found !== null) refs.set(id, `${found.site} ${found.number}`);
  }
  return (id) => refs.get(id) ?? id;
}
