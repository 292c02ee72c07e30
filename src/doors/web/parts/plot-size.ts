// The size of a plot: as wide as there is room, so that its text keeps its size; on paper that of a sheet.
import { useLayoutEffect, useState } from 'react';
import { flushSync } from 'react-dom';

export interface PlotSize {
  readonly width: number;
  readonly height: number;
}

const HEIGHT = 200;
/** Before it is measured, and where nothing is laid out. */
const USUAL: PlotSize = { width: 720, height: HEIGHT };
/** Beside the margin of a sheet of A4, and low, so that the life of a store stands on the same sheet. */
const ON_PAPER: PlotSize = { width: 590, height: 140 };

/** The room that is there: text in a drawing keeps its size on every screen. */
export function usePlotSize(ref: { readonly current: HTMLDivElement | null }): PlotSize {
  const [size, setSize] = useState(USUAL);
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return;
    let isPrinting = false;
    const measure = () => {
      if (isPrinting) return;
      setSize({ width: Math.max(240, Math.floor(element.clientWidth)), height: HEIGHT });
    };
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    // Paper is laid out without asking: the drawing has to have its width before.
    const forPaper = () => {
      isPrinting = true;
      flushSync(() => setSize(ON_PAPER));
    };
    const again = () => {
      isPrinting = false;
      measure();
    };
    window.addEventListener('beforeprint', forPaper);
    window.addEventListener('afterprint', again);
    return () => {
      watch.disconnect();
      window.removeEventListener('beforeprint', forPaper);
      window.removeEventListener('afterprint', again);
    };
  }, [ref]);
  return size;
}
