// Runs the tests that inject faults, for which the system calls of a process have to be recorded.
import { check, close } from './checks/part.ts';
import { makeSureOfStrace } from './checks/strace.ts';
import { testsPart } from './checks/tests-part.ts';

const missing = makeSureOfStrace();

close(
  missing === undefined
    ? [await testsPart('injected faults', ['--config', 'vitest.faults.config.ts', ...process.argv.slice(2)])]
    : [check('strace', { ok: false, output: missing }, 0)],
);
