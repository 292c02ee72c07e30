// Files of at most 500 lines and functions of at most 70, so that each can be read at one sitting.
import ts from 'typescript';
import { type Fault, faultAt, isTest, isTypeScript, nodesOf, type SourceFile } from '../tree/source-file.ts';
import { openingOf } from './opening-sentence.ts';
import { type Rule, samples } from './rule.ts';

const MOST_LINES_OF_A_FILE = 500;
const MOST_LINES_OF_A_FUNCTION = 70;

const isOurs = (path: string): boolean => isTypeScript(path) || path.endsWith('.mjs');
const lines = (count: number, line = 'x();\n'): string => line.repeat(count);

export const fileSize: Rule = {
  name: 'size of files',
  why: 'a file holds one idea; only a table may be long, and its first line says that it is one',
  looksAt: isOurs,
  faults: (file) => {
    const count = lineCount(file.text);
    return count <= MOST_LINES_OF_A_FILE || isTable(file)
      ? []
      : [{ path: file.path, line: 1, says: `has ${count} lines; ${MOST_LINES_OF_A_FILE} is the most` }];
  },
  caught: samples('src/book/sample.ts', lines(501), `// Entries as plain data.\n${lines(500)}`),
  passes: samples('src/book/sample.ts', lines(500), `// Table of units.\n${lines(900)}`),
};

export const functionSize: Rule = {
  name: 'size of functions',
  why: 'a function that does not fit on a screen does more than one thing',
  looksAt: isOurs,
  faults: (file) => nodesOf(file.syntax()).flatMap((node) => longFunction(file, node) ?? []),
  caught: [
    ...samples(
      'src/book/sample.ts',
      `function f() {\n${lines(69)}}`,
      `const f = () => {\n${lines(69)}};`,
      `class A { f() {\n${lines(69)}} }`,
      `const o = { get f() {\n${lines(69)}} };`,
    ),
    ...samples('src/book/sample.test.ts', `test('a', () => {\n${lines(69)}});`),
  ],
  passes: [
    ...samples('src/book/sample.ts', `function f() {\n${lines(68)}}`, lines(400)),
    ...samples('src/book/sample.test.ts', `describe('a', () => {\n${lines(200)}});`),
  ],
};

function longFunction(file: SourceFile, node: ts.Node): Fault | undefined {
  if (!ts.isFunctionLike(node) || !('body' in node) || node.body === undefined) return undefined;
  if (isTest(file.path) && isGroupOfTests(node)) return undefined;
  const count = lineCount(node.getText());
  return count <= MOST_LINES_OF_A_FUNCTION
    ? undefined
    : faultAt(file, node, `is a function of ${count} lines; ${MOST_LINES_OF_A_FUNCTION} is the most`);
}

/** The function given to `describe` only holds tests together; each of them is measured. */
function isGroupOfTests(node: ts.Node): boolean {
  return ts.isCallExpression(node.parent) && node.parent.expression.getText().startsWith('describe');
}

function isTable(file: SourceFile): boolean {
  return /\btable\b/i.test(openingOf(file.text));
}

function lineCount(text: string): number {
  return text.replace(/\n$/, '').split('\n').length;
}
