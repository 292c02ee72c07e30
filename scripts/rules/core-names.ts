// In the core no time, no chance, no locale, no platform: the same book has to give the same bits on every machine.
import ts from 'typescript';
import { type Fault, faultAt, isCore, nodesOf, type SourceFile } from '../tree/source-file.ts';
import { type Rule, samples } from './rule.ts';

const REFUSED = new Map([
  ...['Date', 'Temporal', 'performance', 'setTimeout', 'setInterval', 'setImmediate'].map(
    (name) => [name, 'time comes in as an argument'] as const,
  ),
  ...['Intl'].map((name) => [name, 'what is printed may not depend on a locale'] as const),
  ...['crypto', 'WeakRef', 'FinalizationRegistry'].map(
    (name) => [name, 'what is worked out may not depend on chance'] as const,
  ),
  ...['process', 'fetch', 'console', 'require', 'globalThis', 'eval'].map(
    (name) => [name, 'the core has no platform; a door brings it'] as const,
  ),
]);

const OF_A_LOCALE = /^(toLocale\w*|localeCompare)$/;

export const coreNames: Rule = {
  name: 'core without platform',
  why: 'time, chance, locale and the platform are known to the doors alone',
  looksAt: isCore,
  faults: (file) => nodesOf(file.syntax()).flatMap((node) => faultOf(file, node) ?? []),
  caught: [
    ...samples(
      'src/account/sample.ts',
      'const now = Date.now();',
      'export type Moment = Date;',
      'const text = new Intl.NumberFormat().format(1);',
      'const text = (1).toLocaleString();',
      `const order = 'a'.localeCompare('b');`,
      `const order = 'a'['localeCompare']('b');`,
      'const home = process.env;',
      'setTimeout(() => {}, 1);',
      `await fetch('a');`,
      'console.log(1);',
      'const id = crypto.randomUUID();',
      'const all = { process };',
      `const d = globalThis['Date'];`,
      'const now = Temporal.Now.instant();',
    ),
    ...samples('src/desk/sample.ts', 'const { now } = performance;'),
  ],
  passes: [
    ...samples(
      'src/account/sample.ts',
      'const at = entry.process;',
      'const o = { console: 1 };',
      '// Date and Intl in words',
    ),
    ...samples('src/doors/cli/sample.ts', 'const now = Date.now();'),
    ...samples('src/account/sample.test.ts', 'const now = Date.now();'),
  ],
};

function faultOf(file: SourceFile, node: ts.Node): Fault | undefined {
  if (ts.isIdentifier(node) && !isMemberName(node)) {
    const why = REFUSED.get(node.text);
    return why === undefined ? undefined : faultAt(file, node, `uses ${node.text}: ${why}`);
  }
  const member = memberOf(node);
  return member !== undefined && OF_A_LOCALE.test(member)
    ? faultAt(file, node, `uses ${member}: what is printed may not depend on a locale`)
    : undefined;
}

function memberOf(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node)) return node.name.text;
  if (ts.isElementAccessExpression(node) && ts.isStringLiteralLike(node.argumentExpression)) {
    return node.argumentExpression.text;
  }
  return undefined;
}

/** The name after a point or before a colon: it names a member of ours, not a thing of the platform. */
function isMemberName(node: ts.Identifier): boolean {
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent)) return parent.name === node;
  if (ts.isQualifiedName(parent)) return parent.right === node;
  if (ts.isBindingElement(parent)) return parent.propertyName === node;
  return (
    (ts.isPropertyAssignment(parent) ||
      ts.isPropertySignature(parent) ||
      ts.isPropertyDeclaration(parent) ||
      ts.isMethodDeclaration(parent) ||
      ts.isMethodSignature(parent)) &&
    parent.name === node
  );
}
