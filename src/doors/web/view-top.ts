// A view that is opened by a link begins at its top; Back leaves the scrolling to the browser, which knows where it was.
import { useEffect, useLayoutEffect, useRef } from 'react';
import type { Place } from './place.ts';

export function useTopOfView({ page, item }: Place): void {
  const byLink = useRef(false);
  useEffect(() => {
    const pressed = ({ target }: MouseEvent): void => {
      byLink.current = target instanceof Element && target.closest('a[href^="#/"]') !== null;
    };
    window.addEventListener('click', pressed, true);
    return () => window.removeEventListener('click', pressed, true);
  }, []);
  const view = `${page}/${item ?? ''}`;
  const before = useRef(view);
  useLayoutEffect(() => {
    if (before.current === view) return;
    before.current = view;
    if (byLink.current) window.scrollTo(0, 0);
    byLink.current = false;
  }, [view]);
}
