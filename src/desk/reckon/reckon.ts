// Answers a calculator: reads what was typed, fills in what the book knows, reckons, and finds the ± of every result.

import { OutsideRange } from '../../ground/physics/index.ts';
import { type Finding, nearest } from '../../ground/units/index.ts';
import {
  type ReckonInput,
  type ReckonResult,
  type ReckonSheet,
  reckonCautions,
  reckonFormulas,
  reckonSaying,
} from '../../papers/index.ts';
import { type Answer, no, yes } from '../answer.ts';
import { deskFinding } from '../desk-finding.ts';
import type { Calculator, Reckoned, Result, Saying } from './calculator.ts';
import { CALCULATORS } from './calculators.ts';
import { type Doubt, doubtsOf } from './doubt.ts';
import type { FromBook } from './from-book.ts';
import { isName, type NameSpec, type QuantitySpec } from './input-spec.ts';
import { type Input, Inputs } from './inputs.ts';
import { readTyped } from './read-inputs.ts';

export interface ReckonRequest {
  readonly what: string;
  /** What was typed, by the names of the fields. */
  readonly fields: Readonly<Record<string, string>>;
}

/**
 * @param book the position that the book has at the moment asked for; null where there is no book: then nothing is filled in
 */
export function reckon(request: ReckonRequest, book: Omit<FromBook, 'names'> | null): Answer<ReckonSheet> {
  const calculator = CALCULATORS.get(request.what);
  if (calculator === undefined) {
    const near = nearest(request.what.slice(0, 40), [...CALCULATORS.keys()]);
    return no(
      'not in book',
      deskFinding('reckon-unknown', {
        what: request.what.slice(0, 40),
        nearest: near,
        all: [...CALCULATORS.keys()],
      }),
    );
  }
  const gathered = gather(calculator, request.fields, book);
  if (!gathered.ok) return gathered;
  const inputs = calculator.doubted?.(gathered.value) ?? gathered.value;
  const refused = calculator.refuse?.(inputs) ?? null;
  if (refused !== null) {
    const where = refused.field === undefined ? {} : { field: refused.field };
    return no('refused', deskFinding('reckon-refused', { rule: refused.rule, ...refused.data }, { where }));
  }
  try {
    const reckoned = calculator.reckon(inputs);
    const run = (given: Inputs): Reckoned => calculator.reckon(given, reckoned);
    return yes(sheetOf(calculator, inputs, reckoned, doubtsOf(inputs, run, reckoned.results)));
  } catch (error) {
    if (error instanceof OutsideRange) return no('bad input', outsideRange(error));
    throw error;
  }
}

function outsideRange({ left }: OutsideRange): Finding {
  const { quantity, value, unit, low, high, source } = left;
  const open = high === Number.POSITIVE_INFINITY;
  return deskFinding('reckon-outside-range', {
    quantity,
    value,
    unit,
    low,
    high: open ? null : high,
    source,
  });
}

function gather(
  calculator: Calculator,
  fields: Readonly<Record<string, string>>,
  book: Omit<FromBook, 'names'> | null,
): Answer<Inputs> {
  const unknown = unknownFields(calculator, fields);
  if (unknown.length > 0) return no('wrong use', ...unknown);
  const quantities = calculator.inputs.filter((spec): spec is QuantitySpec => !isName(spec));
  const typed = readTyped(quantities, fields);
  if (!typed.ok) return no('bad input', ...typed.findings);
  const names = namesOf(calculator, fields);
  if (!names.ok) return names;
  const filled = fill(calculator, names.value, book);
  if (!filled.ok) return filled;
  const inputs: Input[] = [];
  const missing: string[] = [];
  for (const spec of quantities) {
    const own = valuesOf(spec, typed.inputs, filled.value);
    if (own.length > 0) inputs.push(...own);
    else if (spec.optional !== true) missing.push(spec.name);
  }
  if (missing.length === 0) return yes(new Inputs(inputs, names.value));
  return no(
    'wrong use',
    deskFinding('reckon-input-missing', {
      calculator: calculator.name,
      inputs: missing,
      hasBook: book !== null,
    }),
  );
}

/** What was typed beats what the book says, and that beats what is assumed. */
function valuesOf(spec: QuantitySpec, typed: readonly Input[], filled: readonly Input[]): readonly Input[] {
  for (const source of [typed, filled]) {
    const own = source.filter(({ name }) => name === spec.name);
    if (own.length > 0) return own;
  }
  const { otherwise } = spec;
  if (otherwise === undefined) return [];
  const { value, u95, why } = otherwise;
  const u = u95 === null ? null : u95 / 2;
  return [{ name: spec.name, value, u, unit: spec.unit, by: 'assumed', from: why, entries: [] }];
}

function unknownFields(calculator: Calculator, fields: Readonly<Record<string, string>>): readonly Finding[] {
  const known = calculator.inputs
    .filter((spec) => isName(spec) || spec.hidden !== true)
    .map(({ name }) => name);
  return Object.keys(fields)
    .filter((name) => !known.includes(name))
    .map((name) =>
      deskFinding('reckon-field-unknown', {
        field: name.slice(0, 40),
        calculator: calculator.name,
        nearest: nearest(name.slice(0, 40), known),
        known,
      }),
    );
}

function namesOf(
  calculator: Calculator,
  fields: Readonly<Record<string, string>>,
): Answer<ReadonlyMap<string, string>> {
  const names = new Map<string, string>();
  for (const spec of calculator.inputs.filter((each): each is NameSpec => isName(each))) {
    const text = fields[spec.name]?.trim();
    if (text === undefined || text === '') continue;
    if (spec.choices !== undefined && !spec.choices.includes(text)) {
      return no(
        'bad input',
        deskFinding('reckon-choice', {
          field: spec.name,
          received: text.slice(0, 40),
          choices: spec.choices,
        }),
      );
    }
    names.set(spec.name, text);
  }
  return yes(names);
}

function fill(
  calculator: Calculator,
  names: ReadonlyMap<string, string>,
  book: Omit<FromBook, 'names'> | null,
): Answer<readonly Input[]> {
  const wanted = calculator.inputs.find(
    (spec) => isName(spec) && (spec.of === 'store' || spec.of === 'hose') && names.has(spec.name),
  );
  if (book === null) {
    return wanted === undefined
      ? yes([])
      : no('wrong use', deskFinding('reckon-needs-book', { field: wanted.name }));
  }
  return calculator.fill?.({ ...book, names }) ?? yes([]);
}

function sheetOf(
  calculator: Calculator,
  inputs: Inputs,
  { results, sayings }: Reckoned,
  doubts: readonly Doubt[],
): ReckonSheet {
  const { name, method } = calculator;
  const told = inputs.all.map((input, k) => inputOf(input, k, inputs, doubts[0]));
  const entries = [...new Set(inputs.all.flatMap((input) => input.entries))];
  const because = {
    entries,
    method,
    inputs: inputs.all.map(({ name: input, value, unit }) => ({ name: input, value, unit })),
  };
  return {
    calculator: name,
    names: Object.fromEntries(inputs.names),
    inputs: told,
    results: results.map((result, k): ReckonResult => {
      const u = doubts[k]?.u ?? null;
      const u95 = u === null ? null : 2 * u;
      return {
        name: result.name,
        value: atLimit(result, u95 ?? 0),
        u95,
        unit: result.unit,
        limit: result.limit ?? null,
        because,
      };
    }),
    sayings: [...sayings, ...ruling(calculator, told)].map(({ key, data }) => ({
      key,
      text: reckonSaying(key, data),
    })),
    cautions: reckonCautions(calculator.cautions),
    method,
    formulas: reckonFormulas(name),
  };
}

/** What most of the ± of the answer comes from, where one thing makes most of it. */
function ruling({ doubtGroups = {} }: Calculator, inputs: readonly ReckonInput[]): readonly Saying[] {
  const causes = new Map<string, number>();
  for (const { name, share } of inputs) {
    const group = Object.entries(doubtGroups).find(([, names]) => names.includes(name))?.[0];
    const cause = group ?? name;
    causes.set(cause, (causes.get(cause) ?? 0) + (share ?? 0));
  }
  const [first] = [...causes].sort(([, a], [, b]) => b - a);
  if (first === undefined || first[1] <= MOST) return [];
  return [{ key: 'ruled-by', data: { cause: first[0], share: first[1] } }];
}

const MOST = 0.5;

/** Where more would do harm, the end of the band that a person has to reckon with. */
function atLimit({ value, limit }: Result, u95: number): number {
  if (limit === undefined) return value;
  return limit === 'early' ? Math.max(0, value - u95) : value + u95;
}

function inputOf(input: Input, index: number, inputs: Inputs, main: Doubt | undefined): ReckonInput {
  const { name, value, u, unit, by, from, entries } = input;
  const same = inputs.all.filter((each) => each.name === name);
  const total = main?.u ?? null;
  const part = main?.parts.find((each) => each.index === index)?.part ?? 0;
  return {
    name,
    place: same.length > 1 ? 1 + same.indexOf(input) : 0,
    value,
    u95: u === null ? null : 2 * u,
    unit,
    by,
    from,
    refs: entries,
    share: total === null || total === 0 ? null : (part * part) / (total * total),
  };
}
