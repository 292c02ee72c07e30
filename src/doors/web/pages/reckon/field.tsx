// One field of a calculator: what it asks for, in which unit, what is taken where it is empty, and what is found in it.
import { type ReactNode, useId } from 'react';
import { unitSign } from '../../../../ground/units/index.ts';
import {
  givenBy,
  inputText,
  type ReckonField,
  type ReckonInput,
  type StoreLine,
  type WordedFinding,
} from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { Choices } from '../../parts/fields.tsx';
import { ON_SCREEN } from './on-screen.ts';
import { StillText } from './still.tsx';
import { apart, type Typed, unitOf } from './typed.ts';

export interface OfField {
  readonly field: ReckonField;
  readonly typed: Typed;
  readonly onType: (typed: Typed) => void;
  readonly findings: readonly WordedFinding[];
  readonly isNeeded: boolean;
  /** What the last answer took for it. */
  readonly taken: readonly ReckonInput[];
  readonly names: NamesOfBook;
}

export interface NamesOfBook {
  readonly stores: readonly StoreLine[];
  readonly hoses: readonly string[];
}

export function Field(told: OfField) {
  switch (told.field.kind) {
    case 'choice':
      return <ChoiceField {...told} />;
    case 'store':
    case 'hose':
      return <NameField {...told} />;
    default:
      return <FigureField {...told} />;
  }
}

function FigureField({ field, typed, onType, ...about }: OfField) {
  const id = useId();
  const isWrong = about.findings.length > 0;
  return (
    <Around id={id} field={field} typed={typed} {...about}>
      <input
        id={id}
        className="f"
        name={field.name}
        value={typed.text}
        maxLength={200}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={isWrong || undefined}
        aria-describedby={`${id}-hint ${id}-found`}
        onChange={(event) => onType({ ...typed, text: event.target.value })}
        onBlur={() => onType(apart(field, typed))}
      />
      <UnitOf field={field} typed={typed} onType={onType} />
    </Around>
  );
}

function UnitOf({ field, typed, onType }: Pick<OfField, 'field' | 'typed' | 'onType'>) {
  const { units, label } = field;
  if (units.length === 0) return null;
  if (units.length === 1) return <span className="unit">{unitSign(units[0] ?? '')}</span>;
  return (
    <select
      className="f"
      aria-label={words().reckon.unitOf(label)}
      value={unitOf(field, typed)}
      onChange={(event) => onType({ ...typed, unit: event.target.value })}
    >
      {units.map((unit) => (
        <option key={unit} value={unit}>
          {unitSign(unit)}
        </option>
      ))}
    </select>
  );
}

/** A store or a hose of the book; the first of the list is none. */
function NameField({ field, typed, onType, names, ...about }: OfField) {
  const id = useId();
  const { reckon } = words();
  const known =
    field.kind === 'store'
      ? names.stores.map((store) => ({ id: store.id, text: storeLine(store) }))
      : names.hoses.map((hose) => ({ id: hose, text: hose }));
  const isKnown = typed.text === '' || known.some((each) => each.id === typed.text);
  return (
    <Around id={id} field={field} typed={typed} names={names} {...about}>
      <select
        id={id}
        className="f of-book"
        name={field.name}
        value={typed.text}
        aria-describedby={`${id}-hint ${id}-found`}
        onChange={(event) => onType({ ...typed, text: event.target.value })}
      >
        <option value="">{reckon.notSaid}</option>
        {!isKnown && <option value={typed.text}>{typed.text}</option>}
        {known.map((each) => (
          <option key={each.id} value={each.id}>
            {each.text}
          </option>
        ))}
      </select>
    </Around>
  );
}

function storeLine({ id, grade, volume }: StoreLine): string {
  const { reckon, grade: grades } = words();
  return reckon.storeLine(id, grade ?? grades.unknown, inputText(volume, ON_SCREEN));
}

function ChoiceField({ field, typed, onType, ...about }: OfField) {
  const id = useId();
  return (
    <div className="reckon-choice">
      <Choices
        label={field.label}
        value={typed.text}
        options={[
          { value: '', text: words().reckon.notSaid },
          ...field.choices.map(({ value, label }) => ({ value, text: label })),
        ]}
        onChange={(text) => onType({ text, unit: null })}
      />
      <Found id={id} findings={about.findings} />
    </div>
  );
}

type About = Pick<OfField, 'field' | 'typed' | 'findings' | 'isNeeded' | 'taken'>;

function Around({
  id,
  children,
  ...told
}: About & { readonly id: string; readonly children: ReactNode; readonly names: NamesOfBook }) {
  const { field, findings, isNeeded } = told;
  return (
    <div className="reckon-field">
      <label htmlFor={id}>
        {field.label}
        {isNeeded && <span className="needed">{words().reckon.needed}</span>}
      </label>
      <div className="reckon-entry">{children}</div>
      <Hint id={id} {...told} />
      <Found id={id} findings={findings} />
    </div>
  );
}

/** Under an empty field: what was taken for it, and until there is an answer what would be. */
function Hint({ id, field, typed, taken }: About & { readonly id: string }) {
  const { reckon } = words();
  const isEmpty = typed.text.trim() === '';
  const [first] = taken;
  const told =
    first !== undefined && first.by !== 'typed'
      ? reckon.taken(taken.map((input) => inputText(input, ON_SCREEN)).join(', '), sourcesOf(taken))
      : field.otherwise !== null && taken.length === 0
        ? reckon.otherwise(field.otherwise)
        : '';
  return (
    <p className="reckon-hint xs soft" id={`${id}-hint`}>
      {isEmpty && told !== '' && <StillText text={told} />}
    </p>
  );
}

/** Two couplings may come from two records. */
function sourcesOf(taken: readonly ReckonInput[]): string {
  return [...new Set(taken.map(givenBy))].join('; ');
}

function Found({ id, findings }: { readonly id: string; readonly findings: readonly WordedFinding[] }) {
  return (
    <div className="reckon-found" id={`${id}-found`}>
      {findings.map((finding) => (
        <p key={`${finding.code} ${finding.text}`}>
          <b>
            <StillText text={finding.text} />
          </b>{' '}
          <StillText text={finding.remedy} />
        </p>
      ))}
    </div>
  );
}
