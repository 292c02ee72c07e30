// A value that parts of the page share: set anywhere, seen everywhere.
import { useSyncExternalStore } from 'react';

export interface Shared<T> {
  readonly get: () => T;
  readonly set: (value: T) => void;
  readonly use: () => T;
}

export function store<T>(first: T): Shared<T> {
  let value = first;
  const tells = new Set<() => void>();
  const get = () => value;
  const watch = (tell: () => void) => {
    tells.add(tell);
    return () => tells.delete(tell);
  };
  return {
    get,
    set: (next) => {
      value = next;
      for (const tell of tells) tell();
    },
    use: () => useSyncExternalStore(watch, get),
  };
}
