// `completion`: the script that a shell runs to complete commands of this program.

import { nearest } from '../../../ground/units/index.ts';
import type { Call } from '../call.ts';
import { completionScript, SHELLS } from '../complete/scripts.ts';
import type { Outcome } from '../outcome.ts';
import { wrongUse } from '../problem.ts';

export function run(call: Call): Promise<Outcome> {
  const shell = SHELLS.find((each) => each === call.arg(0));
  if (shell === undefined) {
    const data = {
      flag: 'SHELL',
      received: call.arg(0).slice(0, 60),
      wanted: SHELLS,
      nearest: nearest(call.arg(0), SHELLS),
    };
    return Promise.reject(wrongUse('flag-value-wrong', data));
  }
  return Promise.resolve({ raw: [completionScript(shell)] });
}
