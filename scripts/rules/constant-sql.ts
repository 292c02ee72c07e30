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
    'export function run(sql: string) { db.prepare(sql); }',
    'function run(sql: string) { db.prepare(sql); }',
    'function run(sql: string) { db.prepare(sql); } run(statementFor(kind));',
    'function run(sql: string) { db.prepare(sql); again(sql); } function again(sql: string) { run(sql); }',
    `function run(sql: string) { db.prepare(sql); } run('select 1'); rows.map(run);`,
    `function run(sql: string) { db.prepare(sql); } run('select 1'); run(word);`,
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
    `function run(db: Db, sql: string) { db.prepare(sql); } run(db, 'select 1'); run(db, 'select 2');`,
    `function f() { const run = (sql: string) => db.prepare(sql); return run('select 1'); }`,
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
    if (value !== undefined) return isConstant(value, file);
    return isImportedConstant(node.text, file) || isAlwaysGivenConstants(node, file);
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

/** Parameters whose callers are being looked at: one that is handed on in a circle is not known to be constant. */
const asked = new Set<ts.Node>();

/** A parameter of a function that the file keeps to itself and calls with constants only. */
function isAlwaysGivenConstants(node: ts.Identifier, file: ts.SourceFile): boolean {
  const parameter = parameterOf(node);
  if (parameter === undefined || asked.has(parameter)) return false;
  const owner = parameter.parent;
  const name = nameOf(owner);
  if (name === undefined || isExported(owner)) return false;
  const at = owner.parameters.indexOf(parameter);
  const mentions = nodesOf(file).filter(
    (each): each is ts.Identifier => ts.isIdentifier(each) && each.text === name.text && each !== name,
  );
  asked.add(parameter);
  const isConstantly = mentions.length > 0 && mentions.every((each) => isCallWithConstant(each, at, file));
  asked.delete(parameter);
  return isConstantly;
}

function isCallWithConstant(called: ts.Identifier, at: number, file: ts.SourceFile): boolean {
  const call = called.parent;
  if (!ts.isCallExpression(call) || call.expression !== called) return false;
  const given = call.arguments[at];
  return given !== undefined && isConstant(given, file);
}

function parameterOf(node: ts.Identifier): ts.ParameterDeclaration | undefined {
  for (let around: ts.Node = node.parent; !ts.isSourceFile(around); around = around.parent) {
    if (!ts.isFunctionLike(around)) continue;
    const found = around.parameters.find(
      (each) => ts.isIdentifier(each.name) && each.name.text === node.text,
    );
    if (found !== undefined) return found;
  }
  return undefined;
}

function nameOf(owner: ts.SignatureDeclaration): ts.Identifier | undefined {
  if (ts.isFunctionDeclaration(owner)) return owner.name;
  const around = owner.parent;
  return ts.isVariableDeclaration(around) && ts.isIdentifier(around.name) ? around.name : undefined;
}

function isExported(owner: ts.SignatureDeclaration): boolean {
  const declared = ts.isFunctionDeclaration(owner) ? owner : owner.parent.parent.parent;
  return declared.getText().startsWith('export');
}
