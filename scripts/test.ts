// Runs every check and every test, or with words the tests that they choose: `npm test -- src/book`.
import { makeSureOfChromium } from './checks/chromium.ts';
import { close } from './checks/part.ts';
import { staticParts } from './checks/static-parts.ts';
import { testsPart } from './checks/tests-part.ts';

const words = process.argv.slice(2);
const checks = words.length === 0 ? await staticParts() : [];

makeSureOfChromium();
close([...checks, await testsPart('tests', words)]);
