// Sees to it that a Chromium is there: the page is tested in a real browser.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const INSTALL = 'apt-get update && apt-get install -y --no-install-recommends chromium';

/** Installs Chromium where that can be done. Where it cannot, the tests of the page say what is missing. */
export function makeSureOfChromium(): void {
  if (PLACES.some((path) => existsSync(path)) || process.env['WATERWRIGHT_CHROMIUM'] !== undefined) return;
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return;
  console.error(`Installing Chromium: ${INSTALL}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const { status, stderr } = spawnSync('sh', ['-c', INSTALL], { encoding: 'utf8', env });
  if (status !== 0) console.error(stderr.trim());
}
