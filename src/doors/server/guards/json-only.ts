// What changes something comes as JSON: a form of another page cannot say that of itself without asking first.
import { type Refusal, refusal } from '../refusal.ts';
import { type Asked, changesSomething, hasHeader, headerOf, isApi } from './asked.ts';

export function judgeType(asked: Asked): Refusal | null {
  if (!changesSomething(asked) || !isApi(asked)) return null;
  const type = headerOf(asked, 'content-type');
  if (type !== null && /^application\/json(?:;\s*charset=utf-8)?$/i.test(type)) return null;
  const received = hasHeader(asked, 'content-type') ? (type ?? 'more than one').slice(0, 60) : null;
  return refusal(415, 'not-json', { type: received });
}
