// Asks the calculator a moment after the last key; an answer that a younger question has overtaken is dropped.
import { useEffect, useRef, useState } from 'react';
import type { ReckonSheet } from '../../../../papers/index.ts';
import { postSheet, type Reply } from '../../api/ask-server.ts';
import { bookSeal } from '../../api/changes.ts';
import type { Fields } from './typed.ts';

/** Long enough for the next key of somebody who types, too short to be waited for. */
const PAUSE_MS = 200;

export interface Answered {
  /** What it is the answer to. */
  readonly fields: Fields;
  readonly reply: Reply<ReckonSheet>;
}

export interface Answering {
  readonly last: Answered | null;
  /** Something was typed since. */
  readonly isOld: boolean;
  readonly again: () => void;
}

export function useAnswering(path: string, fields: Fields): Answering {
  const question = JSON.stringify(fields);
  // The book has changed: what it fills in may have changed with it.
  const seal = bookSeal.use();
  const [last, setLast] = useState<(Answered & { readonly question: string }) | null>(null);
  const [times, setTimes] = useState(0);
  const youngest = useRef('');
  useEffect(() => {
    const turn = `${path} ${question} ${seal} ${times}`;
    const isFirst = youngest.current === '';
    youngest.current = turn;
    const asked = JSON.parse(question) as Fields;
    const wait = window.setTimeout(
      async () => {
        const reply = await postSheet<ReckonSheet>(path, { fields: asked });
        if (youngest.current === turn) setLast({ fields: asked, reply, question });
      },
      isFirst ? 0 : PAUSE_MS,
    );
    return () => window.clearTimeout(wait);
  }, [path, question, seal, times]);
  return { last, isOld: last?.question !== question, again: () => setTimes((before) => before + 1) };
}
