// One field a parameter: what was found, its unit, its limit, and how it stands, as it is typed.
import { useId, useState } from 'react';
import { figureVerdicts, type ResultSheet, type WordedFinding } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { saidSides } from '../../pages/quality/limits.tsx';
import { Keypad } from '../../parts/fields.tsx';
import { Phrased } from '../../parts/phrased.tsx';
import type { Ahead } from './looking-ahead.ts';
import type { ResultField, ResultFields } from './parameters.ts';

interface Told {
  readonly fields: ResultFields;
  readonly typed: Readonly<Record<string, string>>;
  readonly units: Readonly<Record<string, string>>;
  readonly onType: (parameter: string, value: string) => void;
  readonly onUnit: (parameter: string, unit: string) => void;
  readonly ahead: Ahead<ResultSheet>;
}

export function Values({ fields, typed, units, onType, onUnit, ahead }: Told) {
  const { quality } = words();
  const [active, setActive] = useState<string | null>(null);
  const value = active === null ? '' : (typed[active] ?? '');
  return (
    <fieldset className="values">
      <legend>{quality.values}</legend>
      <p className="xs soft">{quality.valuesNote}</p>
      {fields.list.map((field) => (
        <Value
          key={field.parameter}
          field={field}
          value={typed[field.parameter] ?? ''}
          unit={units[field.parameter] ?? field.units[0] ?? ''}
          onChange={(text) => onType(field.parameter, text)}
          onUnit={(unit) => onUnit(field.parameter, unit)}
          onFocus={() => setActive(field.parameter)}
          verdict={verdictOf(ahead, field.parameter)}
          findings={findingsOf(ahead, field.parameter)}
        />
      ))}
      {active !== null && (
        <div className="value-pad">
          <p className="xs">
            <b>{active}</b>
          </p>
          <div className="amount">
            <Keypad value={value} onChange={(text) => onType(active, text)} />
          </div>
          <button
            type="button"
            className="b small"
            tabIndex={-1}
            aria-pressed={value.startsWith('<')}
            onClick={() => onType(active, value.startsWith('<') ? value.slice(1) : `<${value}`)}
          >
            {quality.below}
          </button>
        </div>
      )}
    </fieldset>
  );
}

function verdictOf({ sheet, isCurrent }: Ahead<ResultSheet>, parameter: string): Verdict | null {
  const verdict = sheet?.figures.find((figure) => figure.parameter === parameter)?.verdict;
  if (verdict === undefined || !isCurrent) return null;
  return { text: figureVerdicts[verdict], isCalm: verdict === 'within' || verdict === 'no limit' };
}

interface Verdict {
  readonly text: string;
  readonly isCalm: boolean;
}

/** What is wrong with the figure, and what is asked about it. */
function findingsOf(ahead: Ahead<ResultSheet>, parameter: string): readonly WordedFinding[] {
  if (!ahead.isCurrent) return [];
  return [...ahead.findings, ...(ahead.sheet?.findings ?? [])].filter(
    ({ where }) => where.field === parameter,
  );
}

interface One {
  readonly field: ResultField;
  readonly value: string;
  readonly unit: string;
  readonly onChange: (value: string) => void;
  readonly onUnit: (unit: string) => void;
  readonly onFocus: () => void;
  readonly verdict: Verdict | null;
  readonly findings: readonly WordedFinding[];
}

function Value({ field, value, unit, onChange, onUnit, onFocus, verdict, findings }: One) {
  const id = useId();
  const { parameter, units } = field;
  return (
    <div className="value">
      <label htmlFor={id}>{parameter}</label>
      <input
        id={id}
        className="f"
        value={value}
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        data-field={parameter}
        aria-describedby={`${id}-limit`}
        aria-invalid={findings.some(({ severity }) => severity === 'error') || undefined}
        onFocus={onFocus}
        onChange={({ target }) => onChange(target.value)}
      />
      {units.length > 1 ? (
        <select
          className="f"
          aria-label={`${words().log.unit}, ${parameter}`}
          value={unit}
          onChange={({ target }) => onUnit(target.value)}
        >
          {units.map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
        </select>
      ) : (
        <span className="unit">{unit}</span>
      )}
      <p className="value-limit xs" id={`${id}-limit`}>
        {limitsOf(field)}
      </p>
      <p className="value-verdict" aria-live="polite">
        {verdict !== null && (verdict.isCalm ? verdict.text : <b>{verdict.text}</b>)}
      </p>
      {findings.map((finding) => (
        <p key={finding.text} className="value-said off xs">
          <Phrased text={finding.text} />
        </p>
      ))}
    </div>
  );
}

function limitsOf({ limits }: ResultField): string {
  const { quality } = words();
  if (limits.length === 0) return quality.noLimitFor;
  const said = limits.map(({ limit, unit }) => saidSides(limit, unit));
  return quality.limitOf([...new Set(said)].join(', '));
}
