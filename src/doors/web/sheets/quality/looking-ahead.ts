// What an entry would change, asked a moment after the last key and with nothing kept.
import { useEffect, useRef, useState } from 'react';
import type { WordedFinding } from '../../../../papers/index.ts';
import { postSheet } from '../../api/ask-server.ts';
import { bodyOfEntry, type Entrance } from '../../entering.ts';

export interface Ahead<Answered> {
  readonly sheet: Answered | null;
  /** What is wrong with what was typed so far. */
  readonly findings: readonly WordedFinding[];
  /** The sheet is of what stands in the fields now. */
  readonly isCurrent: boolean;
}

const PAUSE_MS = 250;

/** @param request null: there is too little to ask about */
export function useAhead<Request, Answered>(
  entrance: Entrance<Request, Answered>,
  request: Request | null,
  at: string,
): Ahead<Answered> {
  const [ahead, setAhead] = useState<Omit<Ahead<Answered>, 'isCurrent'> & { of: string }>({
    sheet: null,
    findings: [],
    of: '',
  });
  const said = request === null ? '' : JSON.stringify([request, at]);
  const turn = useRef(0);
  useEffect(() => {
    turn.current += 1;
    const mine = turn.current;
    if (said === '') {
      setAhead({ sheet: null, findings: [], of: '' });
      return;
    }
    const wait = window.setTimeout(async () => {
      const [asked] = JSON.parse(said) as [Request];
      const more = { dryRun: true, ...(at !== '' && { at }) };
      const reply = await postSheet<Answered>(entrance.path, bodyOfEntry(entrance, asked, { more }));
      // Something else was typed meanwhile: its answer counts.
      if (turn.current !== mine) return;
      setAhead(
        reply.ok
          ? { sheet: reply.value, findings: [], of: said }
          : { sheet: null, findings: reply.findings, of: said },
      );
    }, PAUSE_MS);
    return () => window.clearTimeout(wait);
  }, [said, at, entrance]);
  return { sheet: ahead.sheet, findings: ahead.findings, isCurrent: ahead.of === said };
}
