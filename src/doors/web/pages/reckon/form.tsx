// The form of a calculator: what it cannot do without first, the rest folded where the form is long.
import type { FormEvent } from 'react';
import type { ReckonField, ReckonForm, ReckonInput } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { type Place, sheetPath } from '../../place.ts';
import type { Answering } from './answering.ts';
import { Field, type NamesOfBook } from './field.tsx';
import { clear, drafts, type Fields, fillIn, type Typed, type } from './typed.ts';
import { findingsAt, type Verdict } from './verdict.ts';

/** More fields than these are a long form. */
const LONG = 9;
const NOTHING: Typed = { text: '', unit: null };

interface Told {
  readonly form: ReckonForm;
  readonly place: Place;
  /** As it stands now. */
  readonly sent: Fields;
  readonly answering: Answering;
  readonly verdict: Verdict | null;
}

export function FormOf({ form, place, ...told }: Told) {
  const { reckon } = words();
  const names = useNames(place);
  const { first, rest } = folded(form);
  const filledRest = rest.filter(({ name }) => Object.hasOwn(told.sent, name)).length;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    told.answering.again();
  };
  return (
    <form className="reckon-form" onSubmit={submit} aria-label={reckon.form}>
      <p className="xs soft">
        {reckon.formNote} {form.fields.some(({ many }) => many) && reckon.formNoteMany}
      </p>
      <div className="flow no-print">
        <button type="button" className="b small" onClick={() => fillIn(form)}>
          {reckon.example}
        </button>
        <button type="button" className="b small" onClick={() => clear(form.calculator)}>
          {reckon.clear}
        </button>
      </div>
      <FieldsOf group={first} form={form} names={names} {...told} />
      {rest.length > 0 && (
        <details className="more-fields" open={filledRest > 0 || undefined}>
          <summary>{reckon.more(rest.length)}</summary>
          <FieldsOf group={rest} form={form} names={names} {...told} />
        </details>
      )}
    </form>
  );
}

function FieldsOf({
  group,
  form,
  names,
  ...told
}: Omit<Told, 'place'> & { readonly group: readonly ReckonField[]; readonly names: NamesOfBook }) {
  const draft = drafts.use()[form.calculator] ?? {};
  const { last } = told.answering;
  return group.map((field) => {
    const isSame = last?.fields[field.name] === told.sent[field.name];
    return (
      <Field
        key={field.name}
        field={field}
        names={names}
        typed={draft[field.name] ?? NOTHING}
        onType={(typed) => type(form.calculator, { [field.name]: typed })}
        findings={isSame ? findingsAt(form, field.name, last) : []}
        isNeeded={told.verdict?.kind === 'needs' && told.verdict.fields.includes(field)}
        taken={takenFor(field, told.verdict)}
      />
    );
  });
}

function takenFor({ name }: ReckonField, verdict: Verdict | null): readonly ReckonInput[] {
  return verdict?.kind === 'answer' ? verdict.sheet.inputs.filter((input) => input.name === name) : [];
}

/** Of a long form: names of the book, what is needed and what the example shows stand in sight. */
function folded({ fields, example }: ReckonForm) {
  const isFirst = ({ name, kind, needed }: ReckonField) =>
    needed || kind === 'store' || kind === 'hose' || Object.hasOwn(example, name);
  if (fields.length <= LONG) return { first: fields, rest: [] };
  return { first: fields.filter(isFirst), rest: fields.filter((field) => !isFirst(field)) };
}

function useNames(place: Place): NamesOfBook {
  const stores = useSheet<{ readonly stores: NamesOfBook['stores'] }>(sheetPath('stores', place));
  const names = useSheet<{ readonly hoses: readonly string[] }>('/api/offices');
  return { stores: stores.data?.stores ?? [], hoses: names.data?.hoses ?? [] };
}
