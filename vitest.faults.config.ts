// The tests that inject faults (power cuts, full and failing disks): one at a time, for each owns its disk and its processes.
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/faults/**/*.test.ts'],
    pool: 'forks',
    maxWorkers: 1,
    fileParallelism: false,
    allowOnly: false,
    testTimeout: 900_000,
    hookTimeout: 120_000,
  },
});
