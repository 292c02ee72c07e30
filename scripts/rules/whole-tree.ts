// Texts of the tree stand on their own: no host to install from, no path of one machine, no number of a tracker.
import type { Fault, SourceFile } from '../tree/source-file.ts';
import { type Rule, samples } from './rule.ts';

// The patterns and samples are put together here, for this file is looked at too.
const HOME_FOLDERS = ['work', 'home', 'root', 'Users'];
const MACHINE_PATH = new RegExp(
  `(^|[\\s"'\`(=:<,])(/(${HOME_FOLDERS.join('|')})/[\\w.]|[A-Z]:\\\\Users\\\\)`,
);
const HOST = new RegExp(
  `https?://[^\\s/"'<>]*(${['regis' + 'try', 'npm' + 'js', 'mirror', 'artifactory'].join('|')})`,
  'i',
);
const BARE_HOST = new RegExp(`\\b(${['npm' + 'js', 'yarn' + 'pkg'].join('|')})\\.(org|com)\\b`, 'i');
const TRACKER = /\b(issue|ticket|pull request|merge request)s?\s+(#\s?)?\d+\b/i;

const RULES = [
  { pattern: MACHINE_PATH, says: 'names a path of one machine' },
  { pattern: HOST, says: 'names a host to install from; npm knows its own' },
  { pattern: BARE_HOST, says: 'names a host to install from; npm knows its own' },
  { pattern: TRACKER, says: 'refers to a number in a tracker; say the matter itself' },
];

export const wholeTree: Rule = {
  name: 'texts that stand alone',
  why: 'a clone has to mean the same on every machine and without this one',
  looksAt: () => true,
  faults: faultsOf,
  caught: [
    ...samples(
      'docs/sample.md',
      `Run /${HOME_FOLDERS[0]}/main/bin/waterwright`,
      `"/${HOME_FOLDERS[1]}/keeper/book.water"`,
      `cd /${HOME_FOLDERS[2]}/x`,
      `C:\\${HOME_FOLDERS[3]}\\keeper`,
      `see ${'issue'} 12`,
      `a ${'ticket'} #7`,
    ),
    ...samples(
      'package-lock.json',
      `"resolved": "https://${'regis' + 'try'}.example.org/a.tgz"`,
      `"resolved": "https://a.${'npm' + 'js'}.org/a.tgz"`,
      `${'npm' + 'js'}.com/package/a`,
    ),
  ],
  passes: samples(
    'docs/sample.md',
    'It works at home and at work/rest.',
    'the registry of stores; https://example.org/home',
    'An issue of 3 litres, a homework/4 and 12 issues.',
    'bin/waterwright in ./root.md',
  ),
};

function faultsOf(file: SourceFile): readonly Fault[] {
  return file.text.split('\n').flatMap((line, at) =>
    RULES.filter(({ pattern }) => pattern.test(line)).map(({ says }) => ({
      path: file.path,
      line: at + 1,
      says,
    })),
  );
}
