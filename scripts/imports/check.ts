// Holds every import of the tree against the table of rooms, and finds circles.
import { posix } from 'node:path';
import { type Fault, faultAt, isTest, isTypeScript, type SourceFile } from '../tree/source-file.ts';
import { circlesOf } from './circles.ts';
import { type Import, importsOf } from './imports-of.ts';
import { ROOMS, type Room } from './table.ts';

export interface ImportReport {
  readonly files: number;
  readonly imports: number;
  readonly faults: readonly Fault[];
}

const OUTSIDE_SRC = /^(tests|bench|scripts)\//;

export function checkImports(tree: readonly SourceFile[]): ImportReport {
  const paths = new Set(tree.map((file) => file.path));
  const files = tree.filter(
    (file) => isTypeScript(file.path) && /^(src|tests|bench|scripts)\//.test(file.path),
  );
  const ofFile = new Map(files.map((file) => [file, importsOf(file)]));
  const faults = files.flatMap((file) => [
    ...homeless(file),
    ...(ofFile.get(file) ?? []).flatMap((each) => faultsOf(file, each, paths)),
  ]);
  const graph = new Map(
    files.map((file) => [
      file.path,
      (ofFile.get(file) ?? []).flatMap(({ from }) => target(file.path, from) ?? []),
    ]),
  );
  const imports = [...ofFile.values()].reduce((sum, each) => sum + each.length, 0);
  return { files: files.length, imports, faults: [...nothingSeen(files), ...faults, ...inCircles(graph)] };
}

/** A check that looked at nothing has not passed. */
function nothingSeen(files: readonly SourceFile[]): readonly Fault[] {
  if (files.some((file) => file.path.startsWith('src/'))) return [];
  return [{ path: 'src', line: 1, says: 'no file was looked at; the check has to see the sources' }];
}

function homeless(file: SourceFile): readonly Fault[] {
  if (!file.path.startsWith('src/') || roomOf(file.path) !== undefined) return [];
  return [{ path: file.path, line: 1, says: 'stands in no room; move it into one of the table' }];
}

function faultsOf(file: SourceFile, each: Import, paths: ReadonlySet<string>): readonly Fault[] {
  const says = [shape(file.path, each), ...destination(file, each, paths)].filter(
    (text) => text !== undefined,
  );
  return says.map((text) => faultAt(file, each.node, text));
}

function shape(from: string, each: Import): string | undefined {
  if (each.from === '' && !mayLookFor(from))
    return 'imports a name that is worked out while running; write the name';
  return each.everything ? `re-exports everything of ${each.from}; list the names` : undefined;
}

/** The runner of the benches looks for them; the program and the tests know what they import. */
function mayLookFor(from: string): boolean {
  return from === 'bench/run.ts';
}

function destination(
  file: SourceFile,
  each: Import,
  paths: ReadonlySet<string>,
): readonly (string | undefined)[] {
  if (each.from === '') return [];
  const path = target(file.path, each.from);
  if (path === undefined) return [outsider(file.path, each.from)];
  if (!/\.(tsx?|css|mjs|json)$/.test(path)) return [`imports ${each.from}; write the file with its ending`];
  if (!paths.has(path)) return [`imports ${each.from}, which is not there`];
  return [path.startsWith('src/') ? acrossRooms(file.path, each, path) : outOfSrc(file.path, path)];
}

function acrossRooms(from: string, each: Import, path: string): string | undefined {
  const here = roomOf(from);
  const there = roomOf(path);
  if (there === undefined) return undefined;
  const isDoor = path === `src/${there.room}/index.ts`;
  if (here === there)
    return isDoor && !isTest(from) ? `imports the door of its own room; import the file` : undefined;
  if (!isDoor) return `reaches into ${there.room}; import src/${there.room}/index.ts`;
  if (here === undefined || here.rooms.includes(there.room)) return undefined;
  if (here.types?.includes(there.room)) {
    return each.typeOnly || isTest(from) ? undefined : `${here.room} may import only types of ${there.room}`;
  }
  return `${here.room} may not import ${there.room}`;
}

/** What a file of src/ may take from beside src/: a test its samples, a door the name and version of the program. */
function outOfSrc(from: string, path: string): string | undefined {
  if (!from.startsWith('src/')) return undefined;
  if (isTest(from) && path.startsWith('tests/')) return undefined;
  if (from.startsWith('src/doors/') && path === 'package.json') return undefined;
  return `imports ${path}, which is not in src/`;
}

function outsider(from: string, name: string): string | undefined {
  const room = roomOf(from);
  if (room === undefined || isTest(from)) return undefined;
  if (name.startsWith('node:')) return room.node ? undefined : `${room.room} may not import ${name}`;
  const pack = name.split('/', name.startsWith('@') ? 2 : 1).join('/');
  const mayImport = room.packages === 'any' || room.packages.includes(pack);
  return mayImport ? undefined : `${room.room} may not import the package ${pack}`;
}

function target(from: string, name: string): string | undefined {
  return name.startsWith('.') ? posix.join(posix.dirname(from), name) : undefined;
}

function roomOf(path: string): Room | undefined {
  return OUTSIDE_SRC.test(path) ? undefined : ROOMS.find(({ room }) => path.startsWith(`src/${room}/`));
}

function inCircles(graph: ReadonlyMap<string, readonly string[]>): readonly Fault[] {
  return circlesOf(graph).map((members) => ({
    path: members[0] ?? '',
    line: 1,
    says: `is in a circle of imports: ${members.join(', ')}`,
  }));
}
