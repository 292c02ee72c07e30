// Another time to look at: the page then shows what was known, as the command line does with --at.
import { type FormEvent, useState } from 'react';
import { words } from '../language.ts';
import { closeSheet } from '../open.ts';
import { dayInSight } from '../pages/day-steps.ts';
import { Dialog } from '../parts/dialog.tsx';
import { TextField } from '../parts/fields.tsx';
import { go, isPast, type Place } from '../place.ts';

export function TimeSheet({ place }: { readonly place: Place }) {
  const { time } = words();
  const day = dayInSight.get();
  const [typed, setTyped] = useState(place.at ?? '');
  const look = (at: string | null) => {
    closeSheet();
    go({ page: place.page, item: place.page === 'daybook' ? null : place.item, at });
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    look(typed.trim() === '' ? null : typed.trim());
  };
  return (
    <Dialog title={time.look}>
      <form className="stack" onSubmit={submit}>
        <TextField label={time.field} hint={time.hint} value={typed} onChange={setTyped} first />
        <button type="submit" className="b main">
          {time.show}
        </button>
        <div className="flow">
          {day !== null && (
            <>
              <button type="button" className="b" onClick={() => look(`D${day - 1}`)}>
                {time.back}
              </button>
              <button
                type="button"
                className="b"
                disabled={!isPast(place)}
                onClick={() => look(`D${day + 1}`)}
              >
                {time.on}
              </button>
            </>
          )}
          <button type="button" className="b" disabled={!isPast(place)} onClick={() => look(null)}>
            {time.now}
          </button>
        </div>
      </form>
    </Dialog>
  );
}
