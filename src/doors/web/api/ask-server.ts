// Asks the server: an answer is a value, or findings with their words; a lost connection is one of them.
import type { WordedFinding } from '../../../papers/index.ts';

export type Reply<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly status: number; readonly findings: readonly WordedFinding[] };

interface Envelope {
  readonly schema: string;
  readonly data: unknown;
}

export function getSheet<T>(path: string): Promise<Reply<T>> {
  return asked<T>(path, { headers: { accept: 'application/json' } });
}

/** `keepalive`: the browser finishes the request although the page is closed or ended meanwhile. */
export function postSheet<T>(path: string, body: unknown): Promise<Reply<T>> {
  return asked<T>(path, {
    method: 'POST',
    keepalive: true,
    headers: { 'content-type': 'application/json', accept: 'application/json' },
    body: JSON.stringify(body),
  });
}

async function asked<T>(path: string, init: RequestInit): Promise<Reply<T>> {
  try {
    const response = await fetch(path, { ...init, credentials: 'same-origin', cache: 'no-store' });
    const { data } = (await response.json()) as Envelope;
    if (response.ok) return { ok: true, value: data as T };
    return { ok: false, status: response.status, findings: findingsIn(data) };
  } catch {
    return { ok: false, status: 0, findings: [] };
  }
}

function findingsIn(data: unknown): readonly WordedFinding[] {
  return Array.isArray(data) ? (data as WordedFinding[]) : [];
}
