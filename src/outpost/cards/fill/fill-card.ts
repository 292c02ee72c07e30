// A card filled in for this outpost and this work: expected values as numbers, boxes with the outpost's figures, and why it may not start.
import type { Card, CardForm, CardHazard, CardStep } from '../card.ts';
import type { CardStartFinding } from '../card-finding.ts';
import type { CardUnit } from '../card-units.ts';
import { type Leaves, reckonFormula } from '../formula/evaluate.ts';
import type { Formula } from '../formula/parse.ts';
import { nameLine } from '../names.ts';
import { type CardFigure, type Expected, expectedAt, figureOf } from './expected.ts';
import type { CardValue, FillAsked } from './fill-asked.ts';
import { leavesOf } from './leaves-of.ts';
import { startFindings } from './start-findings.ts';

export interface FilledHazard {
  readonly hazard: CardHazard;
  /** Null: "limit of this outpost: ____". */
  readonly limits: readonly { readonly what: string; readonly figure: CardValue | null }[];
}

export interface FilledStep {
  readonly step: CardStep;
  /** With the names of what was chosen. */
  readonly do: string;
  readonly expected: Expected;
  /** Boxes that stand before the line. */
  readonly hazards: readonly FilledHazard[];
}

export interface FilledCard {
  readonly card: Card;
  readonly form: CardForm;
  /** Names of what was chosen, without the quantities. */
  readonly chosen: ReadonlyMap<string, string>;
  readonly leaves: Leaves;
  readonly values: readonly { readonly id: string; readonly what: string; readonly figure: CardFigure }[];
  readonly steps: readonly FilledStep[];
  readonly flow: {
    readonly planned: CardFigure;
    readonly minutes: CardFigure;
    readonly lineContent: CardFigure | null;
  } | null;
  readonly mayStart: boolean;
  /** Every reason why it may not. */
  readonly findings: readonly CardStartFinding[];
}

/** @example fillCard(card, { index, values, chosen: { from: 'FA', to: 'C-11', hose: 'H-1' }, stores, rules }).mayStart */
export function fillCard(card: Card, asked: FillAsked): FilledCard {
  const chosen = new Map(
    Object.entries(asked.chosen).flatMap(([id, thing]) => (typeof thing === 'string' ? [[id, thing]] : [])),
  );
  const leaves = leavesOf(card, asked, chosen);
  const steps = card.steps.map((step) => filledStep(step, { card, leaves, chosen }));
  const form = asked.form ?? card.forms[0] ?? 'READ-DO';
  const findings = startFindings(card, asked, { form, chosen, leaves, expected: steps });
  const figure = (formula: Formula, unit: CardUnit) =>
    figureOf(reckonFormula(formula, leaves, card.named), unit);
  const { flow } = card;
  return {
    card,
    form,
    chosen,
    leaves,
    values: card.values.map(({ id, what, unit }) => ({
      id,
      what,
      figure: figure(card.named.get(id) as Formula, unit),
    })),
    steps,
    flow:
      flow === null
        ? null
        : {
            planned: figure(flow.planned, 'L'),
            minutes: figure(flow.minutes, 'min'),
            lineContent: flow.lineContent === null ? null : figure(flow.lineContent, 'L'),
          },
    mayStart: findings.length === 0,
    findings,
  };
}

interface Filling {
  readonly card: Card;
  readonly leaves: Leaves;
  readonly chosen: ReadonlyMap<string, string>;
}

function filledStep(step: CardStep, { card, leaves, chosen }: Filling): FilledStep {
  const boxes = step.hazards.flatMap((id) => card.hazards.find((hazard) => hazard.id === id) ?? []);
  return {
    step,
    do: step.do.replace(/\{([a-z][a-z0-9_]*)\}/g, (whole, id: string) => chosen.get(id) ?? whole),
    expected: expectedAt(step, leaves, card.named),
    hazards: boxes.map((hazard) => ({
      hazard,
      limits: hazard.limits.map(({ what, figure }) => ({ what, figure: boxFigure(figure, leaves) })),
    })),
  };
}

function boxFigure(name: string, leaves: Leaves): CardValue | null {
  const leaf = leaves.get(name) ?? null;
  const line = nameLine(name, new Map());
  if (leaf === null || line === null) return null;
  const figure = figureOf({ is: 'known', ...leaf }, line.unit);
  return figure.is === 'known' ? { value: figure.value, u: 0, unit: line.unit } : null;
}
