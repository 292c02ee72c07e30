// The present by which the page reads times: that of the device, and in a practice book that of the book.
import { parseInstantIso } from '../../ground/units/index.ts';
import type { SheetHead } from '../../papers/index.ts';
import { useSheet } from './api/cache.ts';
import type { Present } from './when-typed.ts';

export function usePresent(): Present {
  const head = useSheet<{ readonly head: SheetHead }>('/api/today').data?.head;
  const atBook = parseInstantIso(head?.at ?? '');
  const bookMs = atBook.ok ? atBook.instant.utcMs : Date.now();
  return { utcMs: head?.practice === true ? bookMs : Date.now(), day: head?.day ?? 0 };
}
