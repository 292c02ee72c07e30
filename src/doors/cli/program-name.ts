// How this program is called from the folder that the person is in.
import { existsSync, realpathSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import type { Call } from './call.ts';
import { packageRoot } from './package-root.ts';

const NAME = 'waterwright';

/** The bare name where the search path leads to this clone; else the path of the launcher. */
export function programName(call: Call): string {
  const { env, cwd } = call.terminal;
  const launcher = join(packageRoot(), 'bin', NAME);
  const onPath = (env['PATH'] ?? '').split(delimiter).some((folder) => leadsTo(join(folder, NAME), launcher));
  if (onPath) return NAME;
  return leadsTo(join(cwd, 'bin', NAME), launcher) ? `./bin/${NAME}` : launcher;
}

function leadsTo(path: string, launcher: string): boolean {
  return existsSync(path) && realpathSync(path) === realpathSync(launcher);
}
