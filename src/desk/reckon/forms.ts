// The calculators as forms: which fields each has, in which units, what is taken where nobody fills one in, and an example.
import { unitNamesOf, unitSign } from '../../ground/units/index.ts';
import {
  choiceLabel,
  inputLabel,
  type ReckonField,
  type ReckonForms,
  reckonCautions,
  reckonWords,
  saidValue,
  sourceLabel,
} from '../../papers/index.ts';
import type { Calculator } from './calculator.ts';
import { CALCULATORS } from './calculators.ts';
import { EXAMPLES } from './examples.ts';
import { type InputSpec, isName, type QuantitySpec } from './input-spec.ts';

export function reckonForms(): ReckonForms {
  return {
    forms: [...CALCULATORS.values()].map((calculator) => {
      const { title, question } = reckonWords(calculator.name);
      return {
        calculator: calculator.name,
        title,
        question,
        fields: fieldsOf(calculator),
        example: EXAMPLES[calculator.name] ?? {},
        cautions: reckonCautions(calculator.cautions),
      };
    }),
  };
}

function fieldsOf({ inputs }: Calculator): readonly ReckonField[] {
  return inputs.filter((spec) => isName(spec) || spec.hidden !== true).map(fieldOf);
}

function fieldOf(spec: InputSpec): ReckonField {
  const bare = { name: spec.name, label: inputLabel(spec.name), units: [], choices: [], many: false };
  if (!isName(spec))
    return {
      ...bare,
      kind: spec.dimension === 'plain' ? 'plain' : 'quantity',
      units: unitsOf(spec),
      many: spec.many === true,
      needed: spec.optional !== true && spec.otherwise === undefined,
      otherwise: otherwiseOf(spec),
    };
  const choices = (spec.choices ?? []).map((value) => ({ value, label: choiceLabel(value) }));
  return { ...bare, kind: spec.of, choices, needed: false, otherwise: null };
}

function unitsOf({ dimension, unit, shownUnit = unit }: QuantitySpec): readonly string[] {
  if (dimension === 'plain') return unit === '' ? [] : [unit];
  return [...new Set([shownUnit, ...unitNamesOf(dimension)])];
}

function otherwiseOf({ otherwise, unit }: QuantitySpec): string | null {
  if (otherwise === undefined) return null;
  return `${saidValue(otherwise.value, unitSign(unit))}: ${sourceLabel('assumed', otherwise.why)}`;
}
