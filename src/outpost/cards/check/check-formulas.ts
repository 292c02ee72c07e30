// Formulas of a card: each can be read, its units fit where it stands, and it uses nothing that is found only later.

import type { Path } from '../../outpost-finding.ts';
import { type CardUnit, typeOfUnit } from '../card-units.ts';
import { leafNames } from '../formula/evaluate.ts';
import { type Formula, parseFormula } from '../formula/parse.ts';
import { type QuantityType, sameDimensions, sameType, typeInWords } from '../formula/quantity-type.ts';
import { type NamesInForce, typeOfFormula } from '../formula/type-of.ts';
import { FOUND, MOVED_SO_FAR, namesInReach, typeOfName } from '../names.ts';
import type { CardFaults, SoundCard } from './sound-card.ts';

/** What a place asks of its formula: the type of a unit, a difference of it, or a comparison. */
type Wanted = { readonly unit: CardUnit; readonly difference?: true } | 'truth';

class Checker {
  readonly #card: SoundCard;
  readonly #faults: CardFaults;
  readonly #types = new Map<string, QuantityType>();
  readonly #named = new Map<string, Formula>();
  readonly #choices: ReadonlyMap<string, SoundCard['choose'][number]['item']['of']>;
  /** Lines with a number, and their places. */
  readonly #lines: ReadonlyMap<string, number>;

  constructor(card: SoundCard, faults: CardFaults) {
    this.#card = card;
    this.#faults = faults;
    this.#choices = new Map(card.choose.map(({ item }) => [item.id, item.of]));
    this.#lines = new Map(card.steps.map(({ item }, index) => [item.id, index]));
    for (const { item } of card.choose)
      if (item.unit !== undefined) this.#types.set(item.id, typeOfUnit(item.unit));
    for (const { item } of card.steps)
      if (item.input.unit !== undefined) this.#types.set(FOUND + item.id, typeOfUnit(item.input.unit));
    if (card.flow !== null) this.#types.set(MOVED_SO_FAR, typeOfUnit('L'));
  }

  /** Values first, in their order: a value may use those before it. */
  checkAll(): void {
    const { values, choose, needs, steps, flow, posts } = this.#card;
    const later = new Set(values.map(({ item }) => item.id));
    for (const { item, path } of values) {
      const formula = this.#check(item.formula, [...path, 'formula'], { unit: item.unit }, null, later);
      later.delete(item.id);
      this.#types.set(item.id, typeOfUnit(item.unit));
      if (formula !== null) this.#named.set(item.id, formula);
    }
    for (const { item, path } of choose)
      if (item.otherwise !== undefined && item.unit !== undefined)
        this.#check(item.otherwise, [...path, 'otherwise'], { unit: item.unit }, 0);
    needs?.conditions.forEach(({ holds }, k) => {
      this.#check(holds, ['needs', 'conditions', k, 'holds'], 'truth', 0);
    });
    steps.forEach((_, index) => {
      this.#checkStep(index);
    });
    if (flow !== null) {
      this.#check(flow.planned, ['flow', 'planned'], { unit: 'L' }, 0);
      this.#check(flow.minutes, ['flow', 'minutes'], { unit: 'min' }, 0);
      if (flow.lineContent !== undefined)
        this.#check(flow.lineContent, ['flow', 'lineContent'], { unit: 'L' }, 0);
    }
    for (const { item, path } of posts)
      for (const [field, { value, unit }] of Object.entries(item.figures))
        this.#check(value, [...path, 'figures', field, 'value'], { unit }, null);
  }

  #checkStep(index: number): void {
    const placed = this.#card.steps[index];
    const unit = placed?.item.input.unit;
    if (placed === undefined || unit === undefined) return;
    const { item, path } = placed;
    const { about, within, atLeast, atMost } = item.expect ?? {};
    for (const [key, text] of Object.entries({ about, atLeast, atMost }))
      if (text !== undefined) this.#check(text, [...path, 'expect', key], { unit }, index);
    const span = { unit, difference: true } as const;
    if (within !== undefined) this.#check(within, [...path, 'expect', 'within'], span, index);
    const { doubt } = item.input;
    if (doubt !== undefined) this.#check(doubt, [...path, 'input', 'doubt'], span, index);
  }

  /** `before` is the line before which everything used has to be found; null where anything may be used. */
  #check(
    text: string,
    path: Path,
    wanted: Wanted,
    before: number | null,
    later: ReadonlySet<string> = new Set(),
  ): Formula | null {
    const parsed = parseFormula(text);
    if (!parsed.ok) {
      this.#faults.addIn(path, parsed.fault);
      return null;
    }
    const typed = typeOfFormula(parsed.formula, this.#names(later));
    if (!typed.ok) {
      // A name that an unreadable part would have brought is not known to be a slip.
      if (this.#card.whole || typed.fault.code !== 'formula-name-unknown')
        this.#faults.addIn(path, typed.fault);
      return null;
    }
    this.#checkResult(typed.type, wanted, path);
    if (before !== null) this.#checkFound(parsed.formula, before, path);
    return parsed.formula;
  }

  #names(later: ReadonlySet<string>): NamesInForce {
    return {
      typeOf: (name) => this.#types.get(name) ?? typeOfName(name, this.#choices),
      known: [...this.#types.keys(), ...namesInReach(this.#choices)],
      later,
    };
  }

  #checkResult(type: QuantityType | 'truth', wanted: Wanted, path: Path): void {
    if (type === 'truth' || wanted === 'truth') {
      if (type === wanted) return;
      const words = (each: QuantityType | Wanted): string =>
        each === 'truth' ? 'a comparison' : 'unit' in each ? `a value in ${each.unit}` : 'a value';
      const data = { expected: words(wanted), received: words(type) };
      this.#faults.addIn(path, { code: 'formula-result', column: 1, data });
      return;
    }
    const own = typeOfUnit(wanted.unit);
    const expected = wanted.difference === true ? { ...own, point: false } : own;
    if (sameType(type, expected)) return;
    const isScale = sameDimensions(type, expected);
    const data = {
      expected: `a value in ${wanted.unit}${isScale && wanted.difference === true ? ', as a difference' : ''}`,
      received: isScale ? `${type.point ? 'a point' : 'a difference'} of that kind` : typeInWords(type),
    };
    this.#faults.addIn(path, { code: 'formula-result', column: 1, data });
  }

  #checkFound({ term, compared }: Formula, before: number, path: Path): void {
    const terms = compared === null ? [term] : [term, compared.with];
    for (const name of terms.flatMap((each) => leafNames(each, this.#named))) {
      const line = name.startsWith(FOUND) ? this.#lines.get(name.slice(FOUND.length)) : undefined;
      if (line !== undefined && line >= before)
        this.#faults.addIn(path, { code: 'formula-name-too-early', column: 1, data: { name } });
    }
  }
}

export function checkFormulas(card: SoundCard, faults: CardFaults): void {
  new Checker(card, faults).checkAll();
}
