// What has just been said about a press comes into sight and takes the focus: nobody has to look for it.
import { type RefObject, useEffect, useRef } from 'react';

/** For an element that can be focused by the program; it is sought out anew whenever `said` is another one. */
export function useTakesFocus<E extends HTMLElement>(said: unknown): RefObject<E | null> {
  const ref = useRef<E>(null);
  useEffect(() => {
    if (said === null || said === undefined || said === false) return;
    ref.current?.scrollIntoView({ block: 'start' });
    ref.current?.focus({ preventScroll: true });
  }, [said]);
  return ref;
}
