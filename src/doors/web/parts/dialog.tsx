// A dialog of the platform's own: it holds the focus, Esc closes it, what lies behind it cannot be reached.
import { type ReactNode, useEffect, useId, useRef } from 'react';
import { words } from '../language.ts';
import { closeSheet } from '../open.ts';

interface Told {
  readonly title: string;
  readonly children: ReactNode;
  readonly wide?: boolean;
}

export function Dialog({ title, children, wide = false }: Told) {
  const ref = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = ref.current;
    const before = document.activeElement;
    dialog?.showModal();
    dialog?.querySelector<HTMLElement>('[data-first]')?.focus();
    return () => {
      dialog?.close();
      // The opener may have been drawn anew meanwhile: focus is never left on nothing.
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <dialog
      ref={ref}
      className={wide ? 'sheet-dialog wide' : 'sheet-dialog'}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        closeSheet();
      }}
    >
      <div className="dialog-head">
        <h2 id={id} tabIndex={-1}>
          {title}
        </h2>
        <button type="button" className="b small" onClick={closeSheet}>
          {words().log.close}
        </button>
      </div>
      {children}
    </dialog>
  );
}
