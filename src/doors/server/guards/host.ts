// Only this machine's own names: a page whose name was pointed at this machine comes with that name.
import { type Refusal, refusal } from '../refusal.ts';
import { type Asked, headerOf } from './asked.ts';

export function ownHosts(port: number): readonly string[] {
  return ['127.0.0.1', 'localhost', '[::1]'].map((name) => `${name}:${port}`);
}

/** Compared with a list of our own: a rebound page sends an Origin that equals its Host. */
export function judgeHost(asked: Asked): Refusal | null {
  const host = headerOf(asked, 'host');
  const allowed = ownHosts(asked.port);
  if (host !== null && allowed.includes(host.toLowerCase())) return null;
  return refusal(421, 'host-refused', { host: (host ?? '').slice(0, 60), allowed });
}
