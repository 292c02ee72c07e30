// Fields to enter with one finger or by keys alone: an amount with its unit, a reason, a pad of numbers.
import { type ReactNode, useId, useRef } from 'react';
import { words } from '../language.ts';

interface Field {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  readonly first?: boolean;
  readonly numeric?: boolean;
}

export function TextField({ label, value, onChange, hint, first = false, numeric = false }: Field) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        className="f"
        value={value}
        autoComplete="off"
        spellCheck={false}
        inputMode={numeric ? 'decimal' : 'text'}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        data-first={first || undefined}
        onChange={(event) => onChange(event.target.value)}
      />
      {hint !== undefined && (
        <p className="xs soft" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}

/** An amount and the unit that it is in; the unit is never left out. What is typed goes to the book as it was typed. */
export function AmountField({
  unit,
  units,
  onUnit,
  pad = true,
  ...field
}: Field & {
  readonly unit: string;
  readonly units: readonly string[];
  readonly onUnit: (unit: string) => void;
  readonly pad?: boolean;
}) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  return (
    <fieldset className="amount">
      <legend>{field.label}</legend>
      <div className="amount-row">
        <input
          ref={input}
          className="f wide-f"
          aria-label={field.label}
          value={field.value}
          autoComplete="off"
          inputMode="decimal"
          data-first={field.first || undefined}
          data-field="amount"
          onChange={(event) => field.onChange(event.target.value)}
        />
        {units.length === 1 ? (
          <span className="unit">{unit}</span>
        ) : (
          <select
            id={id}
            className="f"
            aria-label={words().log.unit}
            value={unit}
            onChange={(event) => onUnit(event.target.value)}
          >
            {units.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        )}
      </div>
      {field.hint !== undefined && <p className="xs soft">{field.hint}</p>}
      {pad && <Keypad value={field.value} onChange={field.onChange} />}
    </fieldset>
  );
}

/** Keys of numbers of one finger's size: a keyboard of the device may be too small for a glove. */
export function Keypad({
  value,
  onChange,
  dash = false,
}: {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly dash?: boolean;
}) {
  const { log } = words();
  const press = (sign: string) => onChange(value + sign);
  return (
    <fieldset className="keypad">
      <legend className="hidden">{log.keypad}</legend>
      {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((digit) => (
        <button key={digit} type="button" className="b" tabIndex={-1} onClick={() => press(digit)}>
          {digit}
        </button>
      ))}
      <button type="button" className="b" tabIndex={-1} aria-label={log.point} onClick={() => press('.')}>
        .
      </button>
      <button type="button" className="b" tabIndex={-1} onClick={() => press('0')}>
        0
      </button>
      <button
        type="button"
        className="b"
        tabIndex={-1}
        aria-label={log.erase}
        onClick={() => onChange(value.slice(0, -1))}
      >
        ⌫
      </button>
      {dash && (
        <button type="button" className="b dash-key" tabIndex={-1} onClick={() => onChange('-')}>
          <span aria-hidden="true">–</span>
          <span className="dash-word">{log.dash}</span>
        </button>
      )}
    </fieldset>
  );
}

/** Choices of which one counts: every one is in sight and one tap away. */
export function Choices<T extends string>({
  label,
  options,
  value,
  onChange,
  children,
}: {
  readonly label: string;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly value: T | null;
  readonly onChange: (value: T) => void;
  readonly children?: ReactNode;
}) {
  return (
    <fieldset className="choices">
      <legend>{label}</legend>
      <div className="flow">
        {options.map((option) => (
          <button
            key={option.value}
            type="button"
            className="b small"
            aria-pressed={option.value === value}
            onClick={() => onChange(option.value)}
          >
            {option.text}
          </button>
        ))}
        {children}
      </div>
    </fieldset>
  );
}

/** A reason out of a few usual ones, or in own words. */
export function ReasonField({
  label,
  usual,
  value,
  onChange,
}: {
  readonly label: string;
  readonly usual: readonly string[];
  readonly value: string;
  readonly onChange: (reason: string) => void;
}) {
  return (
    <>
      <Choices
        label={label}
        options={usual.map((text) => ({ value: text, text }))}
        value={usual.includes(value) ? value : null}
        onChange={onChange}
      />
      <TextField
        label={words().log.otherReason}
        value={usual.includes(value) ? '' : value}
        onChange={onChange}
      />
    </>
  );
}
