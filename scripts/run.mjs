// Sets up what is missing, then runs a file under Node 26 with the rest of the words: `node scripts/run.mjs FILE [WORDS]`.
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { SetupError, say } from './setup/say.mjs';
import { ROOT, setUp } from './setup.mjs';

const [file, ...words] = process.argv.slice(2);

try {
  if (file === undefined) throw new SetupError('Usage: node scripts/run.mjs FILE [WORDS]');
  const node = await setUp(ROOT);
  // The program takes file names from the folder in which the person typed; our own scripts work on the clone.
  const cwd = file.startsWith('dist/') ? process.env['INIT_CWD'] || process.cwd() : ROOT;
  const child = spawn(node, [join(ROOT, file), ...words], { cwd, stdio: 'inherit' });
  // The terminal sends its signals to the whole group; this process stays until the program has ended.
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGHUP'])) process.on(signal, () => {});
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.on('error', (error) => {
    say(`${node} could not be started: ${error.message}`);
    process.exitCode = 1;
  });
  child.on('exit', (code, signal) => {
    process.exitCode = code ?? (signal === 'SIGINT' ? 130 : 1);
  });
} catch (error) {
  if (!(error instanceof SetupError)) throw error;
  say(error.message);
  process.exitCode = 1;
}
