// Today to be read aloud: at most 400 signs, in words that survive a voice loop.
import { useSheet } from '../api/cache.ts';
import { words } from '../language.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Failed, Working } from '../parts/states.tsx';
import { copyText } from '../parts/table.tsx';
import { type Place, sheetPath } from '../place.ts';

export function Say({ place }: { readonly place: Place }) {
  const { today, state } = words();
  const sheet = useSheet<{ readonly text: string }>(sheetPath('today/say', place));
  const { data } = sheet;
  return (
    <Dialog title={today.sayTitle}>
      {data === undefined ? (
        sheet.failed === null ? (
          <Working />
        ) : (
          <Failed sheet={sheet} />
        )
      ) : (
        <div className="stack">
          <p className="md say">{data.text}</p>
          <p className="xs soft">{today.sayCount(data.text.length)}</p>
          <button
            type="button"
            className="b"
            data-first
            onClick={() => void copyText(data.text, state.copied)}
          >
            {today.copyText}
          </button>
        </div>
      )}
    </Dialog>
  );
}
