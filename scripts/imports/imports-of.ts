// Every import of a file: by statement, by re-export, by call and within a type.
import ts from 'typescript';
import { nodesOf, type SourceFile } from '../tree/source-file.ts';

export interface Import {
  readonly from: string;
  readonly node: ts.Node;
  readonly typeOnly: boolean;
  /** `export * from …`: it hides what a room gives away. */
  readonly everything: boolean;
}

export function importsOf(file: SourceFile): readonly Import[] {
  return nodesOf(file.syntax()).flatMap((node) => importAt(node) ?? []);
}

function importAt(node: ts.Node): Import | undefined {
  if (ts.isImportDeclaration(node)) {
    const typeOnly = node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword;
    return named(node, node.moduleSpecifier, { typeOnly });
  }
  if (ts.isExportDeclaration(node) && node.moduleSpecifier !== undefined) {
    const everything = node.exportClause === undefined;
    return named(node, node.moduleSpecifier, { typeOnly: node.isTypeOnly, everything });
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
    return named(node, node.argument.literal, { typeOnly: true });
  }
  if (ts.isCallExpression(node) && isImportCall(node)) return named(node, node.arguments[0], {});
  return undefined;
}

function isImportCall(node: ts.CallExpression): boolean {
  const called = node.expression;
  return (
    called.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(called) && called.text === 'require')
  );
}

/** A name that is worked out while running cannot be held against the table; it is reported as ''. */
function named(
  node: ts.Node,
  name: ts.Node | undefined,
  how: { typeOnly?: boolean; everything?: boolean },
): Import {
  const from = name !== undefined && ts.isStringLiteralLike(name) ? name.text : '';
  return { from, node, typeOnly: how.typeOnly ?? false, everything: how.everything ?? false };
}
