// A quantity in one piece that never breaks: value, ±, unit. Every figure opens how it was reckoned.
import { formatFigure } from '../../../ground/units/index.ts';
import type { SheetFigure } from '../../../papers/index.ts';
import { words } from '../language.ts';
import { openSheet } from '../open.ts';

interface Told {
  readonly figure: SheetFigure;
  /** Said before the figure in the panel that opens: what it is a figure of. */
  readonly of: string;
  /** Another text for the same figure: days of cover, parts of a sum that add up. */
  readonly text?: string;
  readonly className?: string;
}

export function Quantity({ figure, of, text, className = '' }: Told) {
  const said = text ?? formatFigure(figure, { style: 'screen' });
  return (
    <button
      type="button"
      className={`q ${className}`}
      aria-haspopup="dialog"
      onClick={() => openSheet({ kind: 'reckoned', figure, of, text: said })}
    >
      <span className="hidden">{of} </span>
      <span className="qty">{said}</span>
      <span className="hidden"> {words().reckoned.opens}</span>
    </button>
  );
}

/** A quantity under its name, the whole of it one thing to press. */
export function NamedQuantity({
  name,
  note,
  ...told
}: Told & { readonly name: string; readonly note?: string }) {
  const said = told.text ?? formatFigure(told.figure, { style: 'screen' });
  return (
    <button
      type="button"
      className="nq"
      aria-haspopup="dialog"
      onClick={() => openSheet({ kind: 'reckoned', figure: told.figure, of: told.of, text: said })}
    >
      <span className="nq-name">{name}</span>
      <span className="qty">{said}</span>
      {note !== undefined && <span className="nq-note">{note}</span>}
      <span className="hidden">{words().reckoned.opens}</span>
    </button>
  );
}

/** A quantity that stands where nothing can be pressed: inside a link or a button. */
export function StillQuantity({ figure }: { readonly figure: SheetFigure }) {
  return <span className="qty">{formatFigure(figure, { style: 'screen' })}</span>;
}
