// Table of the guards, in the order in which they look at a request.
import type { Refusal } from '../refusal.ts';
import type { Asked } from './asked.ts';
import { judgeOrigin } from './cross-site.ts';
import { judgeHost } from './host.ts';
import { judgeType } from './json-only.ts';
import { judgeToken } from './token.ts';

export interface Guard {
  readonly name: 'host' | 'cross-site' | 'token' | 'json-only';
  /** Against whom it stands. */
  readonly against: string;
  readonly judge: (asked: Asked) => Refusal | null;
}

export const GUARDS: readonly Guard[] = [
  { name: 'host', against: 'a name that was pointed at this machine (DNS rebinding)', judge: judgeHost },
  { name: 'cross-site', against: 'a page of another origin', judge: judgeOrigin },
  { name: 'token', against: 'whoever was not let in', judge: judgeToken },
  { name: 'json-only', against: 'a form of another page', judge: judgeType },
];
