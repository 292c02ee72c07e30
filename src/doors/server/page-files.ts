// The files of the page: read once into a fixed map, so that no address leads to another file.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';

export interface PageFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly type: string;
  readonly tag: string;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
};

/** By path as a browser asks for it; empty where no page was made. Files of other kinds are not given out. */
export function readPageFiles(folder: string): ReadonlyMap<string, PageFile> {
  const names = listed(folder);
  return new Map(
    names.flatMap((name) => {
      const type = TYPES[extname(name)];
      if (type === undefined) return [];
      const bytes = new Uint8Array(readFileSync(join(folder, name)));
      const tag = `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`;
      return [[`/${name.replaceAll('\\', '/')}`, { bytes, type, tag }]];
    }),
  );
}

function listed(folder: string): readonly string[] {
  try {
    return readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1));
  } catch {
    return [];
  }
}

/** Said where no page was made: the interface is there all the same. */
export const NO_PAGE: PageFile = {
  bytes: new TextEncoder().encode(`<!doctype html>
<html lang="en">
<meta charset="utf-8">
<title>Waterwright</title>
<h1>Waterwright</h1>
<p>The page was not made in this copy of the program. The interface for programs is at <code>/api</code>;
its description is <a href="/api/openapi.json">/api/openapi.json</a>.</p>
</html>
`),
  type: 'text/html; charset=utf-8',
  tag: '"no-page"',
};
