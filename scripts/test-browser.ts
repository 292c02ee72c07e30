// Runs the tests of the page in a real browser, all or those that words choose: `npm run test:browser -- reckon`.
import { makeSureOfChromium } from './checks/chromium.ts';
import { close } from './checks/part.ts';
import { testsPart } from './checks/tests-part.ts';

makeSureOfChromium();
close([
  await testsPart('tests in a browser', ['--config', 'vitest.browser.config.ts', ...process.argv.slice(2)]),
]);
