// The answer: what was asked for, large; the other results; what is to be said beside them.

import { unitSign } from '../../../../ground/units/index.ts';
import {
  fieldsOf,
  type ReckonResult,
  type ReckonSheet,
  resultLabel,
  resultText,
} from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { Table, Twin } from '../../parts/table.tsx';
import { ON_SCREEN } from './on-screen.ts';
import { Pieces, StillText } from './still.tsx';

export function Answer({ sheet }: { readonly sheet: ReckonSheet }) {
  const { reckon } = words();
  const [main, ...others] = sheet.results;
  if (main === undefined) return null;
  const isExact = sheet.results.every(({ u95 }) => u95 === null);
  return (
    <div className="stack">
      <p className="answer-main">
        <span className="answer-name">{resultLabel(main.name)}</span>
        <span className="answer-figure">
          <Pieces text={resultText(main, ON_SCREEN)} />
        </span>
      </p>
      {(isExact || sheet.sayings.length > 0) && (
        <ul className="sayings">
          {sheet.sayings.map(({ key, text }) => (
            <li key={`${key} ${text}`}>
              <StillText text={text} />
            </li>
          ))}
          {isExact && <li>{reckon.noDoubt}</li>}
        </ul>
      )}
      {others.length > 0 && (
        <div>
          <h3 className="xs">{reckon.beside}</h3>
          <Twin picture={<Others results={others} />} table={<ResultTable results={sheet.results} />} />
        </div>
      )}
    </div>
  );
}

function Others({ results }: { readonly results: readonly ReckonResult[] }) {
  return (
    <dl className="results">
      {results.map((result) => (
        <div key={result.name}>
          <dt>{resultLabel(result.name)}</dt>
          <dd>
            <Pieces text={resultText(result, ON_SCREEN)} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** As the command line gives it to programs: value, ± and unit apart, for a sheet. */
function ResultTable({ results }: { readonly results: readonly ReckonResult[] }) {
  const { reckon } = words();
  return (
    <Table
      className="figures-apart"
      caption={reckon.answer}
      rows={results}
      keyOf={({ name }) => name}
      columns={[
        { head: reckon.result, text: ({ name }) => resultLabel(name) },
        {
          head: reckon.value,
          text: (result) => fieldsOf(result)[0],
          show: (result) => <Pieces text={resultText(result, ON_SCREEN)} />,
        },
        { head: reckon.doubt, text: (result) => fieldsOf(result)[1] },
        { head: reckon.unit, text: ({ unit }) => unitSign(unit) },
      ]}
    />
  );
}
