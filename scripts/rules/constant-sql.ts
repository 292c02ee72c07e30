// Statements to a database are constant texts: a value travels beside them as a parameter and never within.
import ts from 'typescript';
import { type Fault, faultAt, isTest, isTypeScript, nodesOf, type SourceFile } from '../tree/source-file.ts';
import { type Rule, samples } from './rule.ts';

const OPENS_LIKE_SQL =
  /^\s*(select\s|insert\s+(or\s+\w+\s+)?into\s|update\s+\w+\s+set\s|delete\s+from\s|create\s+(table|index|trigger|unique|view)\s|drop\s|alter\s+table\s|pragma\s|vacuum\b|attach\s|begin\b\s*(immediate|exclusive|;|$)|with\s+\w+\s+as\s)/i;

export const constantSql: Rule = {
  name: 'constant statements',
  why: 'a statement put together while running can be made to say something else',
  looksAt: (path) => path.startsWith('src/') && isTypeScript(path) && !isTest(path),
  faults: (file) => nodesOf(file.syntax()).flatMap((node) => faultOf(file, node) ?? []),
  caught: samples(
    'src/doors/disk/sample.ts',
    'db.prepare(`select * from entry where id = ${id}`);',
    `db.exec('delete from entry where id = ' + id);`,
    'const sql = `pragma synchronous = ${level}`;',
    'db.prepare(statementFor(kind));',
    'function run(sql: string) { db.prepare(sql); }',
    `let sql = 'select 1'; db.prepare(sql);`,
    'const sql = `insert into ${table} values (1)`; db.exec(sql);',
    'const sql = `SELECT body FROM ${table}`;',
  ),
  passes: samples(
    'src/doors/disk/sample.ts',
    `db.prepare('select body from entry where id = ?').get(id);`,
    `const READ = 'select body from entry'; db.prepare(READ);`,
    'const COLUMNS = `id, body`; const READ = `select ${COLUMNS} from entry`; db.prepare(READ);',
    `const SQL = { read: 'select 1', write: 'insert into a values (?)' }; db.prepare(SQL.read);`,
    `import { READ } from './statements.ts'; db.prepare(READ);`,
    'const said = `Update the figure ${name}`; pattern.exec(text);',
    'const said = `Select a store: ${name}`;',
  ),
};

function faultOf(file: SourceFile, node: ts.Node): Fault | undefined {
  if (ts.isCallExpression(node) && isPrepare(node.expression)) {
    const statement = node.arguments[0];
    return statement === undefined || isConstant(statement, file.syntax())
      ? undefined
      : faultAt(file, node, 'prepares a statement that is not a constant text');
  }
  const isPutTogether = ts.isTemplateExpression(node) || isPlus(node);
  return isPutTogether && opensLikeSql(openingText(node)) && !isConstant(node, file.syntax())
    ? faultAt(file, node, 'puts a statement together; pass the value as a parameter')
    : undefined;
}

/** Statements are written in one case throughout; a sentence for people that begins with such a word is not. */
function opensLikeSql(text: string): boolean {
  const [word = ''] = /\w+/.exec(text) ?? [];
  const isOneCase = word === word.toLowerCase() || word === word.toUpperCase();
  return isOneCase && OPENS_LIKE_SQL.test(text);
}

function isPrepare(called: ts.Expression): boolean {
  return ts.isPropertyAccessExpression(called) && called.name.text === 'prepare';
}

function isPlus(node: ts.Node): node is ts.BinaryExpression {
  return ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken;
}

function openingText(node: ts.Node): string {
  if (ts.isTemplateExpression(node)) return node.head.text;
  if (isPlus(node)) return openingText(node.left);
  return ts.isStringLiteralLike(node) ? node.text : '';
}

/** A literal, or made of literals and of constants of the file; an imported name in capitals is a constant elsewhere. */
function isConstant(node: ts.Expression, file: ts.SourceFile): boolean {
  if (ts.isStringLiteralLike(node) || ts.isNumericLiteral(node)) return true;
  if (ts.isTemplateExpression(node))
    return node.templateSpans.every((span) => isConstant(span.expression, file));
  if (isPlus(node)) return isConstant(node.left, file) && isConstant(node.right, file);
  if (ts.isIdentifier(node)) {
    const value = constantOf(node.text, file);
    return value === undefined ? isImportedConstant(node.text, file) : isConstant(value, file);
  }
  return ts.isPropertyAccessExpression(node) && isConstantMember(node, file);
}

function isConstantMember(node: ts.PropertyAccessExpression, file: ts.SourceFile): boolean {
  if (!ts.isIdentifier(node.expression)) return false;
  const owner = constantOf(node.expression.text, file);
  if (owner === undefined) return isImportedConstant(node.expression.text, file);
  const values = ts.isAsExpression(owner) ? owner.expression : owner;
  return (
    ts.isObjectLiteralExpression(values) &&
    values.properties.every((each) => ts.isPropertyAssignment(each) && isConstant(each.initializer, file))
  );
}

/** What a name stands for where it is a `const` at the top of the file. */
function constantOf(name: string, file: ts.SourceFile): ts.Expression | undefined {
  return file.statements
    .filter((statement) => ts.isVariableStatement(statement))
    .filter((statement) => (statement.declarationList.flags & ts.NodeFlags.Const) !== 0)
    .flatMap((statement) => [...statement.declarationList.declarations])
    .find((each) => ts.isIdentifier(each.name) && each.name.text === name)?.initializer;
}

function isImportedConstant(name: string, file: ts.SourceFile): boolean {
  return (
    /^[A-Z][A-Z0-9_]*$/.test(name) &&
    file.statements.some((each) => ts.isImportDeclaration(each) && each.getText().includes(name))
  );
}
