// A request as the guards look at it.
import type { Tokens } from '../tokens.ts';

export interface Asked {
  readonly method: string;
  readonly path: string;
  /** Header lines as they came, names in lower case; a name that came twice is there twice. */
  readonly headers: readonly (readonly [name: string, value: string])[];
  readonly port: number;
  readonly tokens: Tokens;
}

/** The only value of a header; null where there is none, or more than one. */
export function headerOf({ headers }: Pick<Asked, 'headers'>, name: string): string | null {
  const values = headers.filter(([each]) => each === name);
  return values.length === 1 ? (values[0]?.[1] ?? null) : null;
}

export function hasHeader({ headers }: Pick<Asked, 'headers'>, name: string): boolean {
  return headers.some(([each]) => each === name);
}

/** Node gives names and values in turn. */
export function headerPairs(raw: readonly string[]): readonly (readonly [string, string])[] {
  return raw.flatMap((name, at) => (at % 2 === 0 ? [[name.toLowerCase(), raw[at + 1] ?? ''] as const] : []));
}

export function isApi({ path }: Pick<Asked, 'path'>): boolean {
  return path === '/api' || path.startsWith('/api/');
}

export function changesSomething({ method }: Pick<Asked, 'method'>): boolean {
  return method !== 'GET' && method !== 'HEAD';
}
