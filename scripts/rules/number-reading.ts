// Text becomes a number in one place: the parser of ground/units, which never guesses.
import ts from 'typescript';
import { type Fault, faultAt, isTest, isTypeScript, nodesOf, type SourceFile } from '../tree/source-file.ts';
import { type Rule, samples } from './rule.ts';

export const numberReading: Rule = {
  name: 'reading of numbers',
  why: 'parseFloat reads "1,5" as 1 and Number reads "" as 0: what people type goes through the parser of ground/units',
  // ground/maths is given bare numbers and no text; there Number turns a whole number of its own into a double.
  looksAt: (path) =>
    path.startsWith('src/') &&
    isTypeScript(path) &&
    !isTest(path) &&
    !/^src\/ground\/(units|maths)\//.test(path),
  faults: (file) => nodesOf(file.syntax()).flatMap((node) => faultOf(file, node) ?? []),
  caught: samples(
    'src/doors/cli/sample.ts',
    'const n = parseFloat(word);',
    'const n = Number(word);',
    'const n = Number.parseFloat(word);',
    'const n = Number.parseInt(word, 10);',
    'const n = parseInt(word, 10);',
    'const ns = words.map(Number);',
    'const n = new Number(word);',
    'const n = +word;',
    `const n = Number['parseFloat'](word);`,
    'const n = isNaN(word);',
  ),
  passes: [
    ...samples(
      'src/doors/cli/sample.ts',
      'const ok = Number.isSafeInteger(n);',
      'const n = -word;',
      'const n = +1;',
      'type N = Number2; const m = a + b;',
      'const n = quantity.Number;',
    ),
    ...samples('src/ground/units/sample.ts', 'const n = Number(digits);'),
    ...samples('src/book/sample.test.ts', 'const n = Number(digits);'),
  ],
};

const READERS = new Set(['parseFloat', 'parseInt', 'isNaN', 'isFinite']);

function faultOf(file: SourceFile, node: ts.Node): Fault | undefined {
  if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.PlusToken) {
    return ts.isNumericLiteral(node.operand) ? undefined : faultAt(file, node, 'reads a number by +');
  }
  if (!ts.isIdentifier(node)) return undefined;
  const parent = node.parent;
  if (ts.isPropertyAccessExpression(parent) && parent.name === node) {
    const isReader =
      (node.text === 'parseFloat' || node.text === 'parseInt') && parent.expression.getText() === 'Number';
    return isReader ? faultAt(file, node, `reads a number by Number.${node.text}`) : undefined;
  }
  if (READERS.has(node.text)) return faultAt(file, node, `reads a number by ${node.text}`);
  const isNumber = node.text === 'Number' && !ts.isPropertyAccessExpression(parent);
  return isNumber ? faultAt(file, node, 'reads a number by Number') : undefined;
}
