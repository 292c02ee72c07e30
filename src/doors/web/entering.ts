// Saving an entry: posted at once, the strip with Undo on success, the findings with their way out on a refusal.
import { useState } from 'react';
import type { LogRequest, RequestWith, SecondNamed } from '../../desk/index.ts';
import type { KeptSheet, WordedFinding } from '../../papers/index.ts';
import { postSheet } from './api/ask-server.ts';
import { refresh } from './api/cache.ts';
import { reachable } from './api/changes.ts';
import { device } from './device.ts';
import { words } from './language.ts';
import { closeSheet, entered, savedAt, stripOpen, told } from './open.ts';

export interface Problem {
  readonly status: number;
  readonly findings: readonly WordedFinding[];
  /** What was asked for, to be asked again with a reason. */
  readonly request: LogRequest;
  readonly more: More;
  readonly second: SecondNamed | null;
}

/** What is said with an entry; `sure`: it was asked about, and it is so. */
export type More = RequestWith & { readonly sure?: boolean };

export interface Entering {
  readonly saving: boolean;
  readonly problem: Problem | null;
  readonly save: (request: LogRequest, more?: More, second?: SecondNamed) => Promise<boolean>;
  readonly forget: () => void;
}

export function useEntering(): Entering {
  const [saving, setSaving] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const save = async (request: LogRequest, more: More = {}, second?: SecondNamed) => {
    if (saving) return false;
    setSaving(true);
    const reply = await enter(request, more, second);
    setSaving(false);
    if (!reply.ok) {
      setProblem({ status: reply.status, findings: reply.findings, request, more, second: second ?? null });
      return false;
    }
    setProblem(null);
    closeSheet();
    return true;
  };
  return { saving, problem, save, forget: () => setProblem(null) };
}

/** Keeps an entry and shows what it changed. */
export async function enter(request: LogRequest, more: More = {}, second?: SecondNamed) {
  const body = { request, with: more, by: device.get().office, ...(second !== undefined && { second }) };
  const reply = await postSheet<KeptSheet>('/api/log', body);
  if (reply.ok) {
    savedAt.set(clock());
    if (request.what === 'undo') {
      // What was entered before that one is next: undo goes back step by step.
      const undone = request.entry ?? '';
      entered.set(entered.get().filter(({ sheet }) => entryName(sheet.line.ref) !== undone));
      stripOpen.set(false);
      told.set(words().log.undone(undone.replace(':', ' ') || reply.value.line.ref));
    } else {
      told.set(null);
      entered.set([...entered.get(), { sheet: reply.value, atMs: performance.now() }]);
      stripOpen.set(true);
    }
    // The server tells of the change at once; without its line the page asks by itself.
    if (!reachable.get()) void refresh();
  }
  return reply;
}

/** Ten minutes long what was entered on this page is undone, the last one first, each by one press. */
const UNDO_MS = 10 * 60_000;

export async function undoLast(): Promise<void> {
  const last = entered.get().at(-1);
  if (last === undefined || performance.now() - last.atMs > UNDO_MS) {
    told.set(words().log.nothingToUndo);
    stripOpen.set(false);
    return;
  }
  const reply = await enter({ what: 'undo', entry: entryName(last.sheet.line.ref) });
  if (reply.ok) return;
  // Somebody may have undone it meanwhile: it is not offered for ever.
  entered.set(entered.get().filter((one) => one !== last));
  stripOpen.set(false);
  told.set(reply.findings[0]?.text ?? words().log.bad);
}

/** `corrie 34` as it is typed: `corrie:34`. */
export function entryName(ref: string): string {
  return ref.replace(' ', ':');
}

function clock(): string {
  return new Date().toISOString().slice(11, 16);
}
