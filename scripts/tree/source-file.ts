// A text of the tree with its path, and its syntax when a check asks for it.
import ts from 'typescript';

/** A place where a rule is broken. */
export interface Fault {
  readonly path: string;
  readonly line: number;
  readonly says: string;
}

export interface SourceFile {
  /** From the root of the tree, with `/` on every system. */
  readonly path: string;
  readonly text: string;
  /** Parsed at the first question and kept: a file is asked by many rules. */
  syntax(): ts.SourceFile;
}

export function sourceFile(path: string, text: string): SourceFile {
  let parsed: ts.SourceFile | undefined;
  const kind = path.endsWith('.tsx') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const parse = () => ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
  return {
    path,
    text,
    syntax() {
      parsed ??= parse();
      return parsed;
    },
  };
}

export function faultAt(file: SourceFile, node: ts.Node, says: string): Fault {
  const { line } = file.syntax().getLineAndCharacterOfPosition(node.getStart());
  return { path: file.path, line: line + 1, says };
}

/** Every node under a node and itself, parents before children. */
export function nodesOf(top: ts.Node): readonly ts.Node[] {
  const nodes: ts.Node[] = [];
  const visit = (node: ts.Node): void => {
    nodes.push(node);
    ts.forEachChild(node, visit);
  };
  visit(top);
  return nodes;
}

export function isTypeScript(path: string): boolean {
  return /\.tsx?$/.test(path);
}

export function isTest(path: string): boolean {
  return path.endsWith('.test.ts');
}

/** The rooms below the doors: no time, no chance, no locale, no input and output. */
export function isCore(path: string): boolean {
  return path.startsWith('src/') && !path.startsWith('src/doors/') && isTypeScript(path) && !isTest(path);
}

export function written(fault: Fault): string {
  return `${fault.path}:${fault.line}: ${fault.says}`;
}
