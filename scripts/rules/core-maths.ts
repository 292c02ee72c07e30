// In the core only arithmetic that every engine rounds alike: engines differ in the last bits of exp, log, pow and their kin.
import ts from 'typescript';
import { type Fault, faultAt, isCore, nodesOf, type SourceFile } from '../tree/source-file.ts';
import { type Rule, samples } from './rule.ts';

/** Exact by the language's standard, or a constant of it. */
const ALIKE = new Set(
  'abs sqrt floor ceil round trunc min max sign fround clz32 imul PI E LN2 LN10 LOG2E LOG10E SQRT2 SQRT1_2'.split(
    ' ',
  ),
);

const UNLIKE =
  'exp log log2 log10 log1p expm1 pow sin cos tan asin acos atan atan2 sinh cosh tanh asinh acosh atanh cbrt hypot random'.split(
    ' ',
  );

export const coreMaths: Rule = {
  name: 'core arithmetic',
  why: 'what is derived has to be equal bit for bit on every engine',
  looksAt: isCore,
  faults: (file) => nodesOf(file.syntax()).flatMap((node) => faultOf(file, node) ?? []),
  caught: [
    ...samples('src/ground/maths/sample.ts', ...UNLIKE.map((name) => `const y = Math.${name}(x);`)),
    ...samples(
      'src/ground/physics/sample.ts',
      'const y = x ** 2;',
      'y **= 2;',
      'const { exp } = Math;',
      `const y = Math['exp'](x);`,
      'const m = Math;',
      'xs.map(Math.log);',
    ),
  ],
  passes: [
    ...samples('src/ground/maths/sample.ts', ...[...ALIKE].map((name) => `const y = Math.${name};`)),
    ...samples(
      'src/ground/maths/sample.ts',
      'const y = x * x; // x ** 2',
      `import type { Math } from './ours.ts';`,
    ),
    ...samples('src/doors/cli/sample.ts', 'const y = Math.random();'),
    ...samples('src/ground/maths/exp.test.ts', 'const y = Math.exp(1);'),
  ],
};

function faultOf(file: SourceFile, node: ts.Node): Fault | undefined {
  if (ts.isBinaryExpression(node) && /^\*\*=?$/.test(node.operatorToken.getText())) {
    return faultAt(file, node.operatorToken, 'uses **: multiply, or use ground/maths');
  }
  if (!ts.isIdentifier(node) || node.text !== 'Math') return undefined;
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent)) {
    const isOwner = parent.expression === node;
    return !isOwner || ALIKE.has(parent.name.text)
      ? undefined
      : faultAt(file, node, `uses Math.${parent.name.text}: use ground/maths`);
  }
  return ts.isImportSpecifier(parent)
    ? undefined
    : faultAt(file, node, 'passes Math on: name the function that is used');
}
