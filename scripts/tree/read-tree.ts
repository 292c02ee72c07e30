// Reads the texts of the tree: what git would commit, or every file where there is no git.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type SourceFile, sourceFile } from './source-file.ts';

const NOT_OURS = new Set(['.git', 'node_modules', 'dist', '.cache']);
const BYTES_OF_NO_TEXT = /\.(png|jpg|woff2?|wasm|pdf|sqlite|water)$/;

export function readTree(root: string): readonly SourceFile[] {
  return listed(root)
    .filter((path) => !BYTES_OF_NO_TEXT.test(path) && isFile(join(root, path)))
    .map((path) => sourceFile(path, readFileSync(join(root, path), 'utf8')));
}

function listed(root: string): readonly string[] {
  if (existsSync(join(root, '.git'))) {
    const args = ['ls-files', '-z', '--cached', '--others', '--exclude-standard'];
    const git = spawnSync('git', args, { cwd: root, encoding: 'utf8', maxBuffer: 1e8 });
    if (git.status === 0) return [...new Set(git.stdout.split('\0').filter((path) => path !== ''))].sort();
  }
  return [...walked(root, '')].sort();
}

function walked(root: string, folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (!entry.isDirectory()) return [path];
    return NOT_OURS.has(entry.name) ? [] : walked(root, path);
  });
}

function isFile(path: string): boolean {
  return existsSync(path) && statSync(path).isFile();
}
