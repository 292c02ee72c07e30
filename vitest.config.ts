// The tests that `npm test` runs: those beside the code and the journeys under tests/, without the injected faults and the tours of the page.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts', 'scripts/**/*.test.ts', 'bench/**/*.test.ts'],
    exclude: ['tests/faults/**', 'tests/page/**', 'node_modules/**'],
    // Processes, not threads: tests of the disk and of the program change folder, send signals and end processes.
    pool: 'forks',
    maxWorkers: 2,
    allowOnly: false,
    testTimeout: 30_000,
    hookTimeout: 30_000,
  },
});
