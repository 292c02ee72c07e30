// One calculator: its form, its hazard boxes, its answer as one types, and how that was reckoned.
import { type ReckonForm, resultLabel, resultText } from '../../../../papers/index.ts';
import { words } from '../../language.ts';
import { type Place, sheetPath } from '../../place.ts';
import { Answer } from './answer.tsx';
import { useAnswering } from './answering.ts';
import { Condensate } from './condensate.tsx';
import { FormOf } from './form.tsx';
import { Hazards } from './hazards.tsx';
import { How } from './how.tsx';
import { NoAnswer } from './no-answer.tsx';
import { ON_SCREEN } from './on-screen.ts';
import { drafts, type Fields, sentOf } from './typed.ts';
import { type Verdict, verdictOf } from './verdict.ts';

interface Told {
  readonly form: ReckonForm;
  readonly place: Place;
}

export function CalculatorView({ form, place }: Told) {
  const { reckon } = words();
  const sent = sentOf(form, drafts.use()[form.calculator] ?? {});
  const answering = useAnswering(sheetPath(`reckon/${form.calculator}`, place), sent);
  const { last, isOld } = answering;
  const verdict = last === null ? null : verdictOf(form, last);
  const sheet = verdict?.kind === 'answer' ? verdict.sheet : null;
  return (
    <div className="calculator" data-answer={verdict?.kind ?? 'none'} data-old={isOld || undefined}>
      <div className="calculator-head">
        <h2 className="md">{form.title}</h2>
        <p>{form.question}</p>
      </div>
      <div>
        <FormOf form={form} place={place} sent={sent} answering={answering} verdict={verdict} />
        {/* For the eye alone: the same stands in the answer, and a voice is told by it. */}
        {sheet !== null && (
          <p className="peek no-print" aria-hidden="true">
            {inShort({ kind: 'answer', sheet })}
          </p>
        )}
      </div>
      <Hazards cautions={sheet?.cautions ?? form.cautions} />
      <section className="answer" aria-label={reckon.answer} aria-busy={isOld}>
        <p className="hidden" role="status">
          {verdict === null || isOld ? '' : inShort(verdict)}
        </p>
        {sheet !== null && <Answer sheet={sheet} />}
        {verdict !== null && verdict.kind !== 'answer' && (
          <NoAnswer verdict={verdict} again={answering.again} />
        )}
        {verdict?.kind === 'refused' && <Given form={form} sent={last?.fields ?? {}} />}
      </section>
      {sheet !== null && <How form={form} sheet={sheet} />}
      {form.calculator === 'condense' && <Condensate place={place} />}
    </div>
  );
}

/** On paper, where the form is not: what was refused. */
function Given({ form, sent }: { readonly form: ReckonForm; readonly sent: Fields }) {
  return (
    <dl className="given">
      {form.fields
        .filter(({ name }) => Object.hasOwn(sent, name))
        .map(({ name, label }) => (
          <div key={name}>
            <dt>{label}</dt>
            <dd>{sent[name]}</dd>
          </div>
        ))}
    </dl>
  );
}

/** What a voice says after the pause: one line, not the whole answer anew. */
function inShort(verdict: Verdict): string {
  const { reckon, frame } = words();
  switch (verdict.kind) {
    case 'answer': {
      const [main] = verdict.sheet.results;
      return main === undefined ? '' : reckon.said(resultLabel(main.name), resultText(main, ON_SCREEN));
    }
    case 'needs':
    case 'look': {
      const labels = verdict.fields.map(({ label }) => label).join(', ');
      return `${verdict.kind === 'needs' ? reckon.needs : reckon.look} ${labels}`;
    }
    case 'lost':
      return frame.noServer;
    default:
      return verdict.findings.map(({ text }) => text).join(' ');
  }
}
