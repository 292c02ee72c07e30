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

export interface Problem<Request = LogRequest> {
  readonly status: number;
  readonly findings: readonly WordedFinding[];
  /** What was asked for, to be asked again with a reason. */
  readonly request: Request;
  readonly more: More;
  readonly second: SecondNamed | null;
}

/** What is said with an entry; `sure`: it was asked about, and it is so. */
export type More = RequestWith & { readonly sure?: boolean };

export interface Entering<Request = LogRequest> {
  readonly saving: boolean;
  readonly problem: Problem<Request> | null;
  readonly save: (request: Request, more?: More, second?: SecondNamed) => Promise<boolean>;
  readonly forget: () => void;
}

/** Where something is entered, how it is asked for, and what of the answer is told in the strip. */
export interface Entrance<Request, Answered> {
  readonly path: string;
  /** Absent: `{request, with, by, second}`. */
  readonly bodyOf?: (request: Request, more: More) => Readonly<Record<string, unknown>>;
  /** Null where the answer is no line of the book that could be undone by one press. */
  readonly keptIn: (answered: Answered) => KeptSheet | null;
  /** A short word instead of the strip. */
  readonly toldOf?: (answered: Answered) => string;
}

export const LOG: Entrance<LogRequest, KeptSheet> = { path: '/api/log', keptIn: (sheet) => sheet };

export function useEntering(): Entering {
  return useEntrance(LOG);
}

export function useEntrance<Request, Answered>(
  entrance: Entrance<Request, Answered>,
  onKept: () => void = closeSheet,
): Entering<Request> {
  const [saving, setSaving] = useState(false);
  const [problem, setProblem] = useState<Problem<Request> | null>(null);
  const save = async (request: Request, more: More = {}, second?: SecondNamed) => {
    if (saving) return false;
    setSaving(true);
    const reply = await kept(entrance, request, { more, second });
    setSaving(false);
    if (!reply.ok) {
      setProblem({ status: reply.status, findings: reply.findings, request, more, second: second ?? null });
      return false;
    }
    setProblem(null);
    onKept();
    return true;
  };
  return { saving, problem, save, forget: () => setProblem(null) };
}

/** An undo of the log takes something off the strip instead of putting it there. */
function kept<Request, Answered>(
  entrance: Entrance<Request, Answered>,
  request: Request,
  { more, second }: { readonly more: More; readonly second?: SecondNamed | undefined },
) {
  const isLog = entrance.path === LOG.path;
  return isLog ? enter(request as LogRequest, more, second) : enterAt(entrance, request, { more, second });
}

/** What is sent, exactly: who it is by stands on the device. */
export function bodyOfEntry<Request>(
  { bodyOf }: Pick<Entrance<Request, never>, 'bodyOf'>,
  request: Request,
  { more, second }: { readonly more: More; readonly second?: SecondNamed | undefined },
) {
  const who = { by: device.get().office, ...(second !== undefined && { second }) };
  return bodyOf === undefined ? { request, with: more, ...who } : { ...bodyOf(request, more), ...who };
}

async function enterAt<Request, Answered>(
  entrance: Entrance<Request, Answered>,
  request: Request,
  how: { readonly more: More; readonly second?: SecondNamed | undefined },
) {
  const reply = await postSheet<Answered>(entrance.path, bodyOfEntry(entrance, request, how));
  if (reply.ok) {
    savedAt.set(clock());
    const kept = entrance.keptIn(reply.value);
    if (kept !== null) showKept(kept);
    told.set(entrance.toldOf?.(reply.value) ?? null);
    refreshUnlessHeard();
  }
  return reply;
}

function showKept(sheet: KeptSheet): void {
  told.set(null);
  entered.set([...entered.get(), { sheet, atMs: performance.now() }]);
  stripOpen.set(true);
}

/** The server tells of the change at once; without its line the page asks by itself. */
function refreshUnlessHeard(): void {
  if (!reachable.get()) void refresh();
}

/** Keeps an entry and shows what it changed. */
export async function enter(request: LogRequest, more: More = {}, second?: SecondNamed) {
  if (request.what !== 'undo') return await enterAt(LOG, request, { more, second });
  const reply = await postSheet<KeptSheet>(LOG.path, bodyOfEntry(LOG, request, { more, second }));
  if (reply.ok) {
    savedAt.set(clock());
    // What was entered before that one is next: undo goes back step by step.
    const undone = request.entry ?? '';
    entered.set(entered.get().filter(({ sheet }) => entryName(sheet.line.ref) !== undone));
    stripOpen.set(false);
    told.set(words().log.undone(undone.replace(':', ' ') || reply.value.line.ref));
    refreshUnlessHeard();
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
