// The close of a day: three lines to tick, then the signature. It freezes the paper, not the past.
import { useState } from 'react';
import type { KeptSheet, TodaySheet } from '../../../papers/index.ts';
import { postSheet, type Reply } from '../api/ask-server.ts';
import { refresh, useSheet } from '../api/cache.ts';
import { device } from '../device.ts';
import { words } from '../language.ts';
import { closeSheet, told } from '../open.ts';
import { dayInSight } from '../pages/day-steps.ts';
import { Dialog } from '../parts/dialog.tsx';
import { Failed } from '../parts/states.tsx';

export function CloseDay() {
  const { daybook } = words();
  const today = useSheet<TodaySheet>('/api/today');
  const day = dayInSight.get() ?? today.data?.head.day ?? 0;
  const { office } = device.use();
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const [failed, setFailed] = useState<Extract<Reply<unknown>, { ok: false }> | null>(null);
  const sign = async () => {
    const reply = await postSheet<KeptSheet>('/api/book/close', { day, by: office });
    if (!reply.ok) return setFailed(reply);
    told.set(daybook.closedSaid(day));
    void refresh();
    closeSheet();
  };
  return (
    <Dialog title={daybook.closeTitle(day)}>
      <div className="stack">
        <p>{daybook.closeNote}</p>
        {failed !== null && <Failed pressed sheet={{ failed, again: () => void sign() }} />}
        {daybook.closeChecks.map((check, k) => (
          <label key={check} className="tick">
            <input
              type="checkbox"
              checked={ticked.includes(check)}
              data-first={k === 0 || undefined}
              onChange={() =>
                setTicked(ticked.includes(check) ? ticked.filter((one) => one !== check) : [...ticked, check])
              }
            />
            <span>{check}</span>
          </label>
        ))}
        <button
          type="button"
          className="b main"
          disabled={ticked.length < daybook.closeChecks.length}
          onClick={() => void sign()}
        >
          {daybook.closeSign(office)}
        </button>
      </div>
    </Dialog>
  );
}
