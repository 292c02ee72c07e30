// How it was reckoned: what was asked for, each input with where it comes from, the formulas, their range and source.
import { unitSign } from '../../../../ground/units/index.ts';
import {
  choiceLabel,
  fieldsOf,
  givenBy,
  inputLabel,
  inputName,
  inputText,
  type ReckonForm,
  type ReckonInput,
  type ReckonSheet,
  resultLabel,
  shareText,
} from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { Table } from '../../parts/table.tsx';
import { ON_SCREEN } from './on-screen.ts';

interface Told {
  readonly form: ReckonForm;
  readonly sheet: ReckonSheet;
}

export function How({ form, sheet }: Told) {
  const { reckon } = words();
  const [main] = sheet.results;
  const asked = Object.entries(sheet.names).map(([name, value]) => saidName(form, name, value));
  const shares = sheet.inputs.some((input) => shareText(input) !== '');
  return (
    <section className="how stack" aria-labelledby="reckon-how">
      <h2 id="reckon-how">{reckon.how}</h2>
      {asked.length > 0 && <p>{reckon.askedFor(asked.join(', '))}</p>}
      <Inputs inputs={sheet.inputs} shares={shares} />
      {shares && main !== undefined && <p className="xs soft">{reckon.shareNote(resultLabel(main.name))}</p>}
      <Formulas sheet={sheet} />
    </section>
  );
}

function saidName({ fields }: ReckonForm, name: string, value: string): string {
  const isChoice = fields.some((field) => field.name === name && field.kind === 'choice');
  return `${inputLabel(name)} ${isChoice ? choiceLabel(value) : value}`;
}

function Inputs({ inputs, shares }: Pick<ReckonSheet, 'inputs'> & { readonly shares: boolean }) {
  const { reckon } = words();
  const [value, doubt] = [0, 1] as const;
  return (
    <Table<ReckonInput>
      className="figures-apart"
      caption={reckon.inputs}
      rows={inputs}
      keyOf={({ name, place }) => `${name} ${place}`}
      columns={[
        { head: reckon.input, text: inputName },
        {
          head: reckon.value,
          text: (input) => fieldsOf(input)[value],
          show: (input) => <span className="qty">{inputText(input, ON_SCREEN)}</span>,
        },
        { head: reckon.doubt, text: (input) => fieldsOf(input)[doubt] },
        { head: reckon.unit, text: ({ unit }) => unitSign(unit) },
        { head: reckon.from, text: givenBy },
        ...(shares ? [{ head: reckon.share, right: true, text: shareText }] : []),
      ]}
    />
  );
}

function Formulas({ sheet }: Pick<Told, 'sheet'>) {
  const { reckon } = words();
  return (
    <div className="formulas stack">
      <h3>{reckon.formulas}</h3>
      <div className="formulas-list stack">
        {sheet.formulas.map(({ equation, range, source }) => (
          <div key={equation}>
            <p className="equation">{equation}</p>
            <p className="xs soft">
              {reckon.range}: {range}. {reckon.source}: {source}.
            </p>
          </div>
        ))}
      </div>
      <p className="xs soft">
        {reckon.method} <code>docs/methods/{sheet.method}.md</code>
      </p>
    </div>
  );
}
