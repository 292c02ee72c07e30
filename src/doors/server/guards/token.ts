// Only who was let in: the cookie of a page, or the key that stands in the file beside the book.
import { type Refusal, refusal } from '../refusal.ts';
import { type Asked, headerOf, isApi } from './asked.ts';

/** Cookies know no port: the name keeps two servers of one machine apart. */
export function cookieName(port: number): string {
  return `waterwright-${port}`;
}

/** Here a launch token is traded for a cookie, so nobody can have one yet. */
export const SESSION_PATH = '/api/session';
/** What only programs of the same user may do; a page has no business here. */
const PROGRAMS_ONLY = '/api/book-port/';

export function judgeToken(asked: Asked): Refusal | null {
  if (!isApi(asked) || (asked.path === SESSION_PATH && asked.method === 'POST')) return null;
  if (isKey(asked)) return null;
  const cookie = cookieOf(asked);
  const mayPage = !asked.path.startsWith(PROGRAMS_ONLY);
  if (mayPage && cookie !== null && asked.tokens.isSession(cookie)) return null;
  return { ...refusal(401, 'token-needed'), headers: { 'WWW-Authenticate': 'Bearer' } };
}

function isKey(asked: Asked): boolean {
  const [, token] = /^Bearer ([\w-]{1,200})$/.exec(headerOf(asked, 'authorization') ?? '') ?? [];
  return token !== undefined && asked.tokens.isKey(token);
}

export function cookieOf(asked: Pick<Asked, 'headers' | 'port'>): string | null {
  const name = cookieName(asked.port);
  const values = (headerOf(asked, 'cookie') ?? '')
    .split(';')
    .map((pair) => pair.trim().split('='))
    .filter(([each]) => each === name);
  const [, value] = values.length === 1 ? (values[0] ?? []) : [];
  return value !== undefined && /^[\w-]{1,200}$/.test(value) ? value : null;
}
