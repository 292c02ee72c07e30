// What a run gives the book: drafts of entries with their doubts, each with a key of its own, due exactly once.
import {
  type Card,
  type CardFigure,
  type CardPost,
  type CardUnit,
  type Formula,
  figureOf,
  type Leaves,
  reckonFormula,
} from '../outpost/index.ts';
import type { Found, Moved } from './event.ts';
import { leavesInRun, movedBefore } from './known-in-run.ts';
import { counts, type FlowStretch, hasEnded, type RunState } from './run-state.ts';

export type DraftField =
  | { readonly is: 'name'; readonly name: string }
  | { readonly is: 'words'; readonly words: string }
  | { readonly is: 'figure'; readonly figure: CardFigure };

export interface Draft {
  /** The same for the same draft of the same run, whoever works it out and when. */
  readonly key: string;
  /** Kind of entry. */
  readonly kind: string;
  readonly happenedAtMs: number;
  readonly fields: Readonly<Record<string, DraftField>>;
}

/** What is due now: everything that the run has brought about and that no event says is posted. */
export function dueDrafts(card: Card, state: RunState): readonly Draft[] {
  return draftsOf(card, state).filter(({ key }) => !state.posted.has(key));
}

/** Everything that the run brings about, posted or not; what Finish shows before it is finished is that of the state to come. */
export function draftsOf(card: Card, state: RunState): readonly Draft[] {
  const leaves = leavesInRun(card, state);
  const drafts = [...flowDrafts(card, state, leaves), ...postDrafts(card, state, leaves)];
  return drafts.sort((a, b) => a.happenedAtMs - b.happenedAtMs);
}

const name = (of: string): DraftField => ({ is: 'name', name: of });

function figure(value: number, u: number, unit: CardUnit): DraftField {
  return { is: 'figure', figure: { is: 'known', value, u, unit } };
}

function formulaField(card: Card, leaves: Leaves, formula: Formula, unit: CardUnit): DraftField {
  return { is: 'figure', figure: figureOf(reckonFormula(formula, leaves, card.named), unit) };
}

const MS_PER_MIN = 60_000;
const minutesOf = (fromMs: number, toMs: number): DraftField =>
  figure((toMs - fromMs) / MS_PER_MIN, 0, 'min');

/** The water of a flow: begun, broken off, gone on with, ended; each stretch is told once, by what was found for it. */
function flowDrafts(card: Card, state: RunState, leaves: Leaves): readonly Draft[] {
  const { flow } = card;
  if (flow === null || state.flow.length === 0) return [];
  const ends = {
    from: name(state.chosen.get(flow.from) ?? ''),
    to: name(state.chosen.get(flow.to) ?? ''),
  };
  const hose = flow.hose === null ? {} : { hose: name(state.chosen.get(flow.hose) ?? '') };
  const drafts = state.flow.flatMap((stretch, index): Draft[] => {
    const draft = (what: string, happenedAtMs: number, fields: Draft['fields']): Draft => ({
      key: `${state.run}/flow/${index + 1}/${what}`,
      kind: `run-${what}`,
      happenedAtMs,
      fields: { run: name(state.run), ...fields },
    });
    const planned = formulaField(card, leaves, flow.planned, 'L');
    const start =
      index === 0
        ? draft('start', stretch.fromMs, { ...ends, ...hose, planned })
        : draft('resume', stretch.fromMs, hose);
    const { moved, toMs } = stretch;
    return moved === null || toMs === null
      ? [start]
      : [start, draft('pause', toMs, { ...ends, ...hose, ...movedFields(moved, stretch) })];
  });
  return [...drafts, ...finishDraft(card, state, { ...ends, ...hose })];
}

function movedFields(moved: Moved, { fromMs, toMs }: FlowStretch): Draft['fields'] {
  return {
    amount: figure(moved.litres, moved.u, 'L'),
    ...(moved.lineLitres !== null && { lineContent: figure(moved.lineLitres, 0, 'L') }),
    ...(toMs !== null && { flowMinutes: minutesOf(fromMs, toMs) }),
  };
}

/** The last stretch: by the card's own line, or by what was said at an abort; nothing where it had been broken off and told. */
function finishDraft(card: Card, state: RunState, ends: Draft['fields']): readonly Draft[] {
  const last = state.flow.at(-1);
  if (!hasEnded(state) || last === undefined || state.endedAtMs === null) return [];
  const happenedAtMs = last.toMs ?? state.endedAtMs;
  const found = foundAmount(card, state);
  const told = last.moved === null ? (found ?? state.lastMoved) : { litres: 0, u: 0, lineLitres: null };
  const fields = told === null ? {} : movedFields(told, { ...last, toMs: happenedAtMs });
  return [
    {
      key: `${state.run}/flow/finish`,
      kind: 'run-finish',
      happenedAtMs,
      fields: { run: name(state.run), ...ends, ...fields },
    },
  ];
}

function foundAmount(card: Card, state: RunState): Moved | null {
  const id = card.flow?.amount ?? '';
  const leaf = leavesInRun(card, state).get(`found.${id}`) ?? null;
  if (leaf === null) return null;
  const litres = figureOf({ is: 'known', ...leaf }, 'L');
  return litres.is === 'known' ? { litres: litres.value, u: litres.u, lineLitres: null } : null;
}

/** Of an aborted run what was done is posted all the same: a reading is a fact. */
function postDrafts(card: Card, state: RunState, leaves: Leaves): readonly Draft[] {
  return card.posts.flatMap((post, index): Draft[] => {
    const line = post.when === undefined ? null : (state.lines.get(post.when) ?? null);
    const done = line !== null && counts(line);
    const whole = line === null && state.status === 'finished';
    const isDue = whole || (done && (post.atOnce || hasEnded(state)));
    if (!isDue) return [];
    return [
      {
        key: `${state.run}/post/${index + 1}`,
        kind: post.kind,
        happenedAtMs: line?.atMs ?? state.endedAtMs ?? state.beganAtMs,
        fields: fieldsOf(card, state, post, leaves),
      },
    ];
  });
}

function fieldsOf(card: Card, state: RunState, post: CardPost, leaves: Leaves): Draft['fields'] {
  const fields: Record<string, DraftField> = {};
  for (const [field, of] of Object.entries(post.names)) {
    const said = of.startsWith('found.') ? saidAt(state, of.slice('found.'.length)) : state.chosen.get(of);
    if (said !== undefined) fields[field] = name(said);
  }
  for (const [field, { value, unit }] of Object.entries(post.figures))
    fields[field] = formulaField(card, leaves, value, unit);
  for (const [field, words] of Object.entries(post.words)) fields[field] = { is: 'words', words };
  if (post.use !== undefined) fields['use'] = { is: 'words', words: post.use };
  return fields;
}

function saidAt(state: RunState, id: string): string | undefined {
  const line = state.lines.get(id);
  const found: Found | null = line !== undefined && counts(line) ? line.found : null;
  if (found?.is === 'choice') return found.choice;
  return found?.is === 'text' ? found.text : undefined;
}

/** All that has moved, broken-off stretches and the last one together; for the line "moved so far". */
export function movedInAll(card: Card, state: RunState): { readonly litres: number; readonly u: number } {
  const before = movedBefore(state);
  const last = foundAmount(card, state) ?? { litres: 0, u: 0 };
  return {
    litres: before.litres + last.litres,
    u: Math.sqrt(before.u * before.u + last.u * last.u),
  };
}
