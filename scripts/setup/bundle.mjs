// Makes the program: src/ and its packages bundled into dist/, so that a start reads a few files and not hundreds.
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative, sep } from 'node:path';
import { SetupError, say } from './say.mjs';

const ENTRY = 'src/doors/cli/main.ts';
/** Runs as a thread of its own, so it is a file of its own. */
const WORKER = 'src/doors/workers/table-worker.ts';
const PROGRAM = 'waterwright.js';
const STAMP = 'dist/.stamp';
/** Chunks of earlier bundles stay this long: a program that is running may still load one of them. */
const KEEP_OLD_CHUNKS_MS = 24 * 3_600_000;

/**
 * @param {string} root
 * @returns {boolean} whether dist/ was made from what src/ holds now
 */
export function bundleIsCurrent(root) {
  if (!existsSync(join(root, 'dist', PROGRAM)) || !existsSync(join(root, STAMP))) return false;
  const readAtMs = Date.now();
  const digest = sourceDigest(root);
  if (readFileSync(join(root, STAMP), 'utf8') !== digest) return false;
  try {
    stamp(root, digest, readAtMs);
  } catch {
    // A clone on a read-only medium runs as it is.
  }
  return true;
}

/**
 * Writes down what the bundle was made of, and when that was read: the launcher compares the age of sources with
 * this file, so its time is the time before they were read.
 * @param {string} root
 * @param {string} digest
 * @param {number} readAtMs
 */
function stamp(root, digest, readAtMs) {
  writeFileSync(join(root, STAMP), digest);
  utimesSync(join(root, STAMP), readAtMs / 1000, readAtMs / 1000);
}

/**
 * @param {string} root
 * @returns {Promise<void>}
 */
export async function makeBundle(root) {
  if (!existsSync(join(root, ENTRY))) throw new SetupError(`The source is not whole: ${ENTRY} is missing.`);
  const startedMs = Date.now();
  const digest = sourceDigest(root);
  const files = await bundle(root, digest);
  for (const { path, bytes } of files) place(path, bytes);
  sweep(join(root, 'dist'), new Set(files.map((file) => file.path)));
  stamp(root, digest, startedMs);
  say(`Set up: the program is bundled (${Date.now() - startedMs} ms).`);
}

/**
 * @param {string} root
 * @param {string} digest tells the program which sources it is made of
 * @returns {Promise<readonly { path: string, bytes: Uint8Array }[]>} the program itself last
 */
async function bundle(root, digest) {
  const { build } = createRequire(join(root, 'package.json'))('esbuild');
  try {
    const result = await build({
      absWorkingDir: root,
      entryPoints: { waterwright: ENTRY, 'table-worker': WORKER },
      outdir: 'dist',
      bundle: true,
      splitting: true,
      format: 'esm',
      platform: 'node',
      target: 'node26',
      // The compiler's own setting: an import stays an import, here as in the tests.
      tsconfigRaw: { compilerOptions: { verbatimModuleSyntax: true } },
      chunkNames: 'chunks/[name]-[hash]',
      // Names stay, so that a stack trace can be read; only the bytes between them go.
      minifySyntax: true,
      minifyWhitespace: true,
      define: { WATERWRIGHT_BUILD: JSON.stringify(digest) },
      charset: 'utf8',
      legalComments: 'eof',
      logLevel: 'silent',
      write: false,
      // Packages in CommonJS ask for Node's own modules by require, which a module of the new kind has not.
      banner: {
        js: "import { createRequire as createRequireHere } from 'node:module'; const require = createRequireHere(import.meta.url);",
      },
    });
    /** @type {{ path: string, contents: Uint8Array }[]} */
    const outputs = result.outputFiles;
    const files = outputs.map(({ path, contents }) => ({ path, bytes: contents }));
    return files.sort((a, b) => Number(a.path.endsWith(PROGRAM)) - Number(b.path.endsWith(PROGRAM)));
  } catch (error) {
    throw new SetupError(`The program could not be bundled.\n\n${faultsOf(error)}`);
  }
}

/**
 * Puts a file in place in one step: who starts the program meanwhile sees the old file or the new one, never half.
 * @param {string} path
 * @param {Uint8Array} bytes
 */
function place(path, bytes) {
  mkdirSync(dirname(path), { recursive: true });
  const fresh = `${path}.${process.pid}`;
  writeFileSync(fresh, bytes);
  renameSync(fresh, path);
}

/**
 * @param {string} dist
 * @param {ReadonlySet<string>} kept
 */
function sweep(dist, kept) {
  rmSync(join(dist, '.cache'), { recursive: true, force: true });
  const chunks = join(dist, 'chunks');
  if (!existsSync(chunks)) return;
  for (const name of readdirSync(chunks)) {
    const path = join(chunks, name);
    if (!kept.has(path) && Date.now() - statSync(path).mtimeMs > KEEP_OLD_CHUNKS_MS) rmSync(path);
  }
}

/**
 * The digest of everything that the bundle is made from.
 * @param {string} root
 * @returns {string}
 */
export function sourceDigest(root) {
  const hash = createHash('sha256');
  const files = sourcesUnder(join(root, 'src')).map((path) => relative(root, path).split(sep).join('/'));
  for (const file of [...files.sort(), 'scripts/setup/bundle.mjs', 'package-lock.json', 'package.json']) {
    hash
      .update(`${file}\0`)
      .update(readFileSync(join(root, file)))
      .update('\0');
  }
  return hash.digest('hex');
}

/**
 * @param {string} folder
 * @returns {string[]}
 */
function sourcesUnder(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourcesUnder(path);
    return entry.name.endsWith('.test.ts') ? [] : [path];
  });
}

/**
 * @param {unknown} error
 * @returns {string}
 */
function faultsOf(error) {
  const faults =
    /** @type {{ errors?: { text: string, location: { file: string, line: number } | null }[] }} */ (error);
  if (!Array.isArray(faults.errors)) return String(error);
  return faults.errors
    .map(({ text, location }) => (location ? `${location.file}:${location.line}: ${text}` : text))
    .join('\n');
}
