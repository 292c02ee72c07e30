// What npm installs is fixed by name, version and content: nothing from git, a file or a bare address, and no scripts.
import type { Fault, SourceFile } from '../tree/source-file.ts';
import { type Rule, type Sample, samples } from './rule.ts';

interface Entry {
  readonly version?: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly link?: boolean;
  readonly hasInstallScript?: boolean;
}

/** They have an install script and work without it: what it would fetch comes as a package of the platform. */
const WORKS_WITHOUT_ITS_SCRIPT = new Set(['node_modules/esbuild', 'node_modules/fsevents']);

const GOOD: Entry = { version: '1.2.3', integrity: 'sha512-abc' };

export const lockfile: Rule = {
  name: 'lockfile',
  why: 'an install has to bring the same bytes everywhere, and run none of them',
  looksAt: (path) => path === 'package-lock.json',
  faults: faultsOf,
  caught: [
    lock({ 'node_modules/a': { version: '1.2.3' } }),
    lock({ 'node_modules/a': { ...GOOD, resolved: 'git+ssh://git@example.org/a.git#0123' } }),
    lock({ 'node_modules/a': { ...GOOD, resolved: 'file:../a' } }),
    lock({ 'node_modules/a': { ...GOOD, resolved: 'https://example.org/a.tgz' } }),
    lock({ 'node_modules/a': { ...GOOD, version: 'git+https://example.org/a.git' } }),
    lock({ 'node_modules/a': { link: true, resolved: 'a' } }),
    lock({ 'node_modules/a': { ...GOOD, hasInstallScript: true } }),
    lock({}),
    ...samples('package-lock.json', '{}', 'not JSON'),
  ],
  passes: [
    lock({ 'node_modules/a': GOOD, 'node_modules/@b/c': { ...GOOD, version: '2.0.0-rc.1' } }),
    lock({ 'node_modules/esbuild': { ...GOOD, hasInstallScript: true } }),
  ],
};

function lock(packages: Record<string, Entry>): Sample {
  return { path: 'package-lock.json', text: JSON.stringify({ packages: { '': {}, ...packages } }) };
}

function faultsOf({ path, text }: SourceFile): readonly Fault[] {
  const entries = Object.entries(packagesOf(text)).filter(([name]) => name !== '');
  const says =
    entries.length === 0
      ? ['holds no package']
      : entries.flatMap(([name, entry]) => faultsOfEntry(name, entry));
  return says.map((each) => ({ path, line: 1, says: each }));
}

function faultsOfEntry(name: string, entry: Entry): readonly string[] {
  const faults = [
    [
      entry.link === true || !/^\d+\.\d+\.\d+/.test(entry.version ?? ''),
      'is not a version of a published package',
    ],
    [!/^sha512-/.test(entry.integrity ?? ''), 'has no integrity'],
    [entry.resolved !== undefined, 'names where it came from; .npmrc has npm leave that out'],
    [
      entry.hasInstallScript === true && !WORKS_WITHOUT_ITS_SCRIPT.has(name),
      'wants to run a script when installed',
    ],
  ] as const;
  return faults.filter(([broken]) => broken).map(([, says]) => `${name} ${says}`);
}

function packagesOf(text: string): Record<string, Entry> {
  try {
    return (JSON.parse(text) as { packages?: Record<string, Entry> }).packages ?? {};
  } catch {
    return {};
  }
}
