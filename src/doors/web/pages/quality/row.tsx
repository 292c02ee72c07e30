// A part of the page with its heading in the margin.
import type { ReactNode } from 'react';

interface Told {
  readonly head: string;
  readonly children: ReactNode;
  /** Under the heading. */
  readonly note?: ReactNode;
  readonly className?: string;
}

export function Row({ head, children, note, className = '' }: Told) {
  return (
    <section className={`row ${className}`}>
      <div className="margin">
        <h2>{head}</h2>
        {note !== undefined && <div className="xs">{note}</div>}
      </div>
      <div>{children}</div>
    </section>
  );
}
