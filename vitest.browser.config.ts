// The tests that `npm run test:browser` runs: the page in a real browser, in all else as `npm test` runs its own.
import { defineConfig } from 'vitest/config';
import everyday from './vitest.config.ts';

export default defineConfig({
  test: { ...everyday.test, include: ['tests/page/**/*.test.ts'], exclude: ['node_modules/**'] },
});
