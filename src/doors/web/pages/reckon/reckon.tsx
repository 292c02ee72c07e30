// Reckon: the calculators, each with its question; one of them is open, and answers as one types.
import '../../style/reckon.css';
import { useEffect } from 'react';
import type { ReckonForm, ReckonForms, SheetHead } from '../../../../papers/index.ts';
import { useSheet } from '../../api/cache.ts';
import { words } from '../../language.ts';
import { FailedView, Working } from '../../parts/states.tsx';
import { hrefOf, type Place, sheetPath } from '../../place.ts';
import { dayInSight } from '../day-steps.ts';
import { CalculatorView } from './calculator.tsx';

export function Reckon({ place }: { readonly place: Place }) {
  const forms = useSheet<ReckonForms>('/api/reckon');
  const head = useSheet<{ readonly head: SheetHead }>(sheetPath('today', place)).data?.head;
  const { pages, frame, reckon } = words();
  useEffect(() => {
    if (head === undefined) return;
    document.title = frame.title(pages.reckon, head.outpost);
    dayInSight.set(head.day);
  }, [head, frame, pages]);
  const { data } = forms;
  if (data === undefined)
    return forms.failed === null ? <Working /> : <FailedView name={pages.reckon} sheet={forms} />;
  const form = data.forms.find(({ calculator }) => calculator === place.item);
  return (
    <div data-ready="reckon" className={form === undefined ? 'reckon' : 'reckon one-open'}>
      <div className="title">
        <h1>{pages.reckon}</h1>
        {form !== undefined && (
          <a className="b small to-list no-print" href={hrefOf({ ...place, item: null })}>
            {reckon.all}
          </a>
        )}
      </div>
      {form === undefined && (
        <p className="reckon-about">{place.item === null ? reckon.about : reckon.unknown(place.item)}</p>
      )}
      <div className="reckon-parts">
        <List forms={data.forms} place={place} />
        {form !== undefined && <CalculatorView key={form.calculator} form={form} place={place} />}
      </div>
    </div>
  );
}

function List({ forms, place }: { readonly forms: readonly ReckonForm[]; readonly place: Place }) {
  return (
    <nav className="calculators no-print" aria-label={words().reckon.list}>
      <ul>
        {forms.map(({ calculator, title, question }) => (
          <li key={calculator}>
            <a
              href={hrefOf({ ...place, item: calculator })}
              aria-current={calculator === place.item ? 'page' : undefined}
            >
              <b>{title}</b>
              <span className="xs soft">{question}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
