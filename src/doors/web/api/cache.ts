// Sheets by address: asked once, shown while they are asked anew, and asked anew when the book has changed.
import { useSyncExternalStore } from 'react';
import { getSheet, type Reply } from './ask-server.ts';

export interface Slot {
  /** The last answer that was a value; it stays while a newer one is on its way. */
  readonly value: unknown;
  readonly failed: Extract<Reply<unknown>, { ok: false }> | null;
  readonly asking: boolean;
}

const nothing: Slot = { value: undefined, failed: null, asking: true };
const slots = new Map<string, Slot>();
const watched = new Map<string, Set<() => void>>();
const turns = new Map<string, number>();

export function ask(path: string): void {
  if (slots.has(path)) return;
  void fetchAnew(path);
}

async function fetchAnew(path: string): Promise<void> {
  const turn = (turns.get(path) ?? 0) + 1;
  turns.set(path, turn);
  put(path, { ...(slots.get(path) ?? nothing), asking: true });
  const reply = await getSheet(path);
  // A younger question has been asked meanwhile: its answer counts.
  if (turns.get(path) !== turn) return;
  const value = slots.get(path)?.value;
  put(
    path,
    reply.ok ? { value: reply.value, failed: null, asking: false } : { value, failed: reply, asking: false },
  );
}

function put(path: string, slot: Slot): void {
  slots.set(path, slot);
  for (const tell of watched.get(path) ?? []) tell();
}

/** After something was kept by anybody: what is on screen is asked anew, the rest is forgotten. */
export async function refresh(): Promise<void> {
  for (const path of [...slots.keys()]) if (!watched.has(path)) slots.delete(path);
  await Promise.all([...watched.keys()].map(fetchAnew));
}

export interface Sheet<T> {
  readonly data: T | undefined;
  readonly failed: Slot['failed'];
  readonly asking: boolean;
  readonly again: () => void;
}

/** The sheet at an address; null asks for nothing. */
export function useSheet<T>(path: string | null): Sheet<T> {
  const slot = useSyncExternalStore(
    (tell) => watch(path, tell),
    () => (path === null ? nothing : (slots.get(path) ?? nothing)),
  );
  return {
    data: slot.value as T | undefined,
    failed: slot.failed,
    asking: slot.asking,
    again: () => path !== null && void fetchAnew(path),
  };
}

function watch(path: string | null, tell: () => void): () => void {
  if (path === null) return () => {};
  const tells = watched.get(path) ?? new Set();
  watched.set(path, tells.add(tell));
  ask(path);
  return () => {
    tells.delete(tell);
    if (tells.size === 0) watched.delete(path);
  };
}
