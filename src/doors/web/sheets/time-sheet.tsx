// Another time to look at: the page then shows what was known, as the command line does with --at.
import { type FormEvent, useId, useRef, useState } from 'react';
import { words } from '../language.ts';
import { closeSheet } from '../open.ts';
import { dayInSight } from '../pages/day-steps.ts';
import { Dialog } from '../parts/dialog.tsx';
import { go, isPast, type Place } from '../place.ts';
import { usePresent } from '../present.ts';
import { judgeWhen, tidyWhen } from '../when-typed.ts';

export function TimeSheet({ place }: { readonly place: Place }) {
  const { time } = words();
  const present = usePresent();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState(place.at ?? '');
  const [wrong, setWrong] = useState<string | null>(null);
  const look = (at: string | null) => {
    closeSheet();
    go({ page: place.page, item: place.page === 'daybook' ? null : place.item, at });
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const at = tidyWhen(typed, present);
    if (at === '') return look(null);
    const judged = judgeWhen(at, present);
    if (judged === 'fine') return look(at);
    setWrong(judged === 'unreadable' ? time.unread(typed.trim()) : time.toCome(present.day));
    input.current?.focus();
  };
  return (
    <Dialog title={time.look}>
      <form className="stack" onSubmit={submit}>
        <div className="field">
          <label htmlFor={id}>{time.field}</label>
          <input
            ref={input}
            id={id}
            className="f"
            value={typed}
            autoComplete="off"
            spellCheck={false}
            data-first
            aria-invalid={wrong !== null}
            aria-describedby={`${id}-hint`}
            onChange={(event) => {
              setTyped(event.target.value);
              setWrong(null);
            }}
          />
          {wrong !== null && (
            <p className="off" role="alert">
              {wrong}
            </p>
          )}
          <p className="xs soft" id={`${id}-hint`}>
            {time.hint}
          </p>
        </div>
        <button type="submit" className="b main">
          {time.show}
        </button>
        <Steps place={place} today={present.day} onLook={look} />
      </form>
    </Dialog>
  );
}

function Steps({
  place,
  today,
  onLook,
}: {
  readonly place: Place;
  readonly today: number;
  readonly onLook: (at: string | null) => void;
}) {
  const { time } = words();
  const day = dayInSight.get();
  return (
    <div className="flow">
      {day !== null && (
        <>
          <button type="button" className="b" disabled={day <= 1} onClick={() => onLook(`D${day - 1}`)}>
            {time.back}
          </button>
          <button
            type="button"
            className="b"
            disabled={!isPast(place) || day >= today}
            onClick={() => onLook(`D${day + 1}`)}
          >
            {time.on}
          </button>
        </>
      )}
      <button type="button" className="b" disabled={!isPast(place)} onClick={() => onLook(null)}>
        {time.now}
      </button>
    </div>
  );
}
