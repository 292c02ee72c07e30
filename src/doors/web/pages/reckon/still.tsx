// A sentence of the papers with its quantities in one piece, and a quantity that stands alone.
import { Phrased } from '../../parts/phrased.tsx';

export function StillText({ text }: { readonly text: string }) {
  return <Phrased text={text} />;
}

/** `341.7 ± 18 s, 5 min 42 s`: each of the two stays whole, and they may stand under one another. */
export function Pieces({ text }: { readonly text: string }) {
  const [figure, ...again] = text.split(', ');
  return (
    <>
      <span className="qty">{figure}</span>
      {again.length > 0 && (
        <>
          , <span className="qty again">{again.join(', ').replaceAll(' ', '\u00A0')}</span>
        </>
      )}
    </>
  );
}
