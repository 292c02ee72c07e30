// A page is let in: the launch token of its address is traded for a cookie that no script can read.
import type { Context } from 'hono';
import * as z from 'zod';
import { readBody } from './body.ts';
import type { Asked } from './guards/asked.ts';
import { cookieName, cookieOf } from './guards/token.ts';
import { type Refusal, refusal } from './refusal.ts';

const shape = z.strictObject({ token: z.string().regex(/^[\w-]{1,200}$/) });

export async function openSession(
  c: Context,
  { port, tokens }: Asked,
  refuse: (refused: Refusal) => Response,
): Promise<Response> {
  const body = await readBody(c.req.raw, false);
  if (!body.ok) return refuse(body.refusal);
  const read = shape.safeParse(body.value);
  const cookie = read.success ? tokens.trade(read.data.token) : null;
  if (cookie === null) return refuse(refusal(401, 'launch-token-spent'));
  return c.body(null, 204, { 'Set-Cookie': `${cookieName(port)}=${cookie}; ${ATTRIBUTES}` });
}

/** Not `Secure`: over plain http to this machine some browsers would then not send it back. */
const ATTRIBUTES = 'HttpOnly; SameSite=Strict; Path=/';

/** The page is closed for good: its cookie counts no more, and what the browser kept of it goes. */
export function endSession(c: Context, asked: Asked): Response {
  const cookie = cookieOf(asked);
  if (cookie !== null) asked.tokens.forgetSession(cookie);
  return c.body(null, 204, {
    'Set-Cookie': `${cookieName(asked.port)}=; Max-Age=0; ${ATTRIBUTES}`,
    'Clear-Site-Data': '"cache", "storage"',
  });
}
