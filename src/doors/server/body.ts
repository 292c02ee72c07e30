// The body of a request: bytes up to a cap, then text that is held to UTF-8, then one JSON value.
import { LIMITS } from './limits.ts';
import { type Refusal, refusal } from './refusal.ts';

export type BodyRead =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly refusal: Refusal };

export async function readBody(request: Request, takesFile: boolean): Promise<BodyRead> {
  const most = takesFile ? LIMITS.fileBodyBytes : LIMITS.bodyBytes;
  const bytes = await bytesOf(request, most);
  if (bytes === null) return { ok: false, refusal: refusal(413, 'body-too-large', { most }) };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { ok: true, value: JSON.parse(text, holdKey) as unknown };
  } catch (error) {
    const says = error instanceof SyntaxError ? withoutPiece(error.message) : 'no UTF-8';
    return { ok: false, refusal: refusal(400, 'body-unreadable', { says }) };
  }
}

/** What is wrong and where, without the piece of the body that the engine quotes: there may be a code in it. */
function withoutPiece(message: string): string {
  const bare = message.replace(
    /,? ?(?:\.\.\.)?".*"(?:\.\.\.)? is not valid JSON$/s,
    '; it is not valid JSON',
  );
  return bare.slice(0, 120).toWellFormed();
}

/** A key that changes what an object is, and not what is in it, is in no request. */
function holdKey(key: string, value: unknown): unknown {
  if (key === '__proto__') throw new SyntaxError('the key "__proto__"');
  return value;
}

/** Null as soon as there are too many; what comes behind is not read. */
async function bytesOf(request: Request, most: number): Promise<Uint8Array | null> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of (request.body ?? []) as AsyncIterable<Uint8Array>) {
    length += piece.length;
    if (length > most) return null;
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}
