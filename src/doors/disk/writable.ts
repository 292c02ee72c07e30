// Whether a book may be written where it is, and if not, why.
import { accessSync, constants } from 'node:fs';
import { dirname } from 'node:path';
import { DiskProblem } from './problem.ts';
import { systemCode } from './sqlite-error.ts';

/** Null where it may. The journal is made in the folder, so a book in a folder that may not be written is read only, too. */
export function whyNotWritable(file: string): DiskProblem | null {
  for (const [place, why] of [
    [file, 'file'],
    [dirname(file), 'folder'],
  ] as const) {
    const code = systemCode(() => accessSync(place, constants.W_OK));
    if (code === null) continue;
    return code === 'EACCES' || code === 'EPERM'
      ? new DiskProblem('not-permitted', file, { why, place })
      : new DiskProblem('read-only', file, { why: 'disk', place });
  }
  return null;
}
