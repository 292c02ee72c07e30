// The checks that read the tree without running it: types, form, imports, rules, what is used, and why we depend on what.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkArchitecture } from '../imports/architecture.ts';
import { checkImports } from '../imports/check.ts';
import { ALL_RULES, holdAgainst } from '../rules/all-rules.ts';
import { readTree } from '../tree/read-tree.ts';
import { type SourceFile, written } from '../tree/source-file.ts';
import { checkDependencies } from './dependencies.ts';
import { check, type Part, timed } from './part.ts';
import { ROOT, runTool } from './run-tool.ts';

type Tool = Parameters<typeof runTool>[0];

/** Tools are other processes: two at a time, for two cores; our own checks follow. */
export async function staticParts(): Promise<readonly Part[]> {
  mkdirSync(join(ROOT, '.cache'), { recursive: true });
  const types = (name: string): readonly string[] => [
    '-p',
    `tsconfig.${name}.json`,
    '--incremental',
    '--tsBuildInfoFile',
    `.cache/${name}.tsbuildinfo`,
    '--pretty',
    'false',
  ];
  const [ofCore, others] = await Promise.all([
    inTurn([
      () => toolPart('types of the core', 'tsc', types('core')),
      () => toolPart('form and lint', 'biome', ['ci', '--colors=off', '--error-on-warnings', '.']),
      () => toolPart('unused code', 'knip', ['--no-progress']),
    ]),
    inTurn([
      () => toolPart('types of the rest', 'tsc', types('doors')),
      () => toolPart('types of the page', 'tsc', types('web')),
      () => toolPart('types of what drives the page', 'tsc', types('page')),
    ]),
  ]);
  return [...ofCore, ...others, ...(await ownParts())];
}

async function inTurn<T>(works: readonly (() => Promise<T>)[]): Promise<readonly T[]> {
  const results: T[] = [];
  for (const work of works) results.push(await work());
  return results;
}

async function toolPart(name: string, tool: Tool, words: readonly string[]): Promise<Part> {
  const { result, seconds } = await timed(() => runTool(tool, words));
  return check(name, { ok: result.status === 0, output: result.output }, seconds);
}

async function ownParts(): Promise<readonly Part[]> {
  const { result: tree, seconds } = await timed(() => readTree(ROOT));
  const parts = [
    await importsPart(tree),
    ...(await inTurn(ALL_RULES.map((rule) => () => rulePart(rule, tree)))),
    await dependenciesPart(),
  ];
  return parts.map((part, at) => (at === 0 ? { ...part, seconds: part.seconds + seconds } : part));
}

async function importsPart(tree: readonly SourceFile[]): Promise<Part> {
  const { result, seconds } = await timed(() => checkImports(tree));
  const faults = [
    ...result.faults,
    ...checkArchitecture(readFileSync(join(ROOT, 'ARCHITECTURE.md'), 'utf8')),
  ];
  const looked = `${result.files} files, ${result.imports} imports`;
  return check(
    'import table',
    { ok: faults.length === 0, looked, output: faults.map(written).join('\n') },
    seconds,
  );
}

async function rulePart(rule: (typeof ALL_RULES)[number], tree: readonly SourceFile[]): Promise<Part> {
  const { result, seconds } = await timed(() => holdAgainst(rule, tree));
  const output = [...result.faults.map(written), `Why: ${rule.why}.`].join('\n');
  return check(
    rule.name,
    { ok: result.faults.length === 0, looked: `${result.files} files`, output },
    seconds,
  );
}

async function dependenciesPart(): Promise<Part> {
  const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
  const { result, seconds } = await timed(() =>
    checkDependencies(read('package.json'), read('docs/dependencies.md')),
  );
  const looked = `${result.names.length} packages`;
  return check(
    'reasons of dependencies',
    { ok: result.says.length === 0, looked, output: result.says.join('\n') },
    seconds,
  );
}
