// The page of the HTTP interface: what is said by hand, and the table of addresses from the description that the server gives.
import type * as z from 'zod';

interface Described {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
}

interface Operation {
  readonly summary: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly in: string;
    readonly description?: string;
  }[];
  readonly requestBody?: {
    readonly content: Readonly<
      Record<string, { readonly schema: z.core.JSONSchema.JSONSchema; readonly example: unknown }>
    >;
  };
  readonly responses: Readonly<Record<string, { readonly description: string }>>;
}

const HEAD = `# The HTTP interface

The table of addresses is made by a test from the description that the server itself gives at \`/api/openapi.json\` (OpenAPI 3.1); \`npm run golden\` writes it anew.

\`waterwright serve\` serves one book to this machine only: to the page in a browser, and to programs. Every address calls the function that the command of the same name calls, so both say the same to the last digit.

## Being let in
- **A page** gets the address that \`serve\` prints. Its launch token is good for one page: the page trades it, \`POST /api/session {"token": …}\`, for a cookie that no script can read, and takes it out of the address bar. For another page run \`waterwright serve\` again.
- **A program** of the same user reads the file \`BOOK.server\` beside the book, which nobody else can read: \`address\`, and \`key\` for the header \`Authorization: Bearer KEY\`. Both are new with each start.

\`\`\`
KEY=$(node -p 'JSON.parse(fs.readFileSync("practice.waterwright.server")).key')
curl -H "Authorization: Bearer $KEY" http://127.0.0.1:7480/api/today?at=D13
curl -H "Authorization: Bearer $KEY" -H "Content-Type: application/json" \\
  -d '{"request": {"what": "drink", "amount": "8"}}' http://127.0.0.1:7480/api/log
\`\`\`

## What stands between
| guard | against | what comes |
|---|---|---|
| bound to 127.0.0.1 | other machines | no connection |
| list of our own names for \`Host\` | a name elsewhere that was pointed at this machine | 421 |
| \`Origin\` and \`Sec-Fetch-Site\` | pages of other origins, also on other ports of this machine | 403 |
| cookie or key, compared in constant time | whoever was not let in | 401 |
| \`Content-Type: application/json\` on whatever changes something | forms of other pages | 415 |
| caps on header lines, bodies, connections, listeners, waiting requests; short patience | too much, too slowly | 413, 431, 503, closed |
| a Content-Security-Policy without inline script or style | words that are markup | they stay text |

No answer allows another origin anything. Nothing is fetched from anywhere. Who was let in, who was refused and what failed stands in \`$XDG_STATE_HOME/waterwright/server.log\`, a JSON object a line, without tokens. Not defended: whoever may act as you on this machine, or as its administrator; and a cookie is sent to whatever else you open at 127.0.0.1, whichever port it is on.

## One writer
While a book is served, the server holds its lock: nothing else reads or writes the file. Commands on the same book find the server by \`BOOK.server\` and go through it, whole: \`book check\` and \`book backup\` too. An entry is acknowledged when the disk has it. Ctrl-C answers what is in hand, then ends. If the server is killed, the lock goes with it, and the next command works on the file itself.

## Answers
\`{"schema": …, "version": 1, "data": …}\`, the objects of \`--json\`. What was not done is \`{"schema": "error", "version": 1, "data": [finding, …]}\`, the findings of the command line in words.

| status | meaning |
|---|---|
| 200 | here it is; or it was only tried (\`dryRun\`) |
| 201 | kept |
| 400 | the request does not fit its description, or a time in it cannot be read |
| 401, 403, 421 | not let in; another origin; another name |
| 404 | no such address, or a name that is not in the book; the nearest are given |
| 405 | the address takes another method |
| 409 | a rule refuses it; or somebody has to say yes first: then every finding has the severity \`know\`, and the same request with \`sure: true\` (of \`/api/log\` inside \`with\`) is kept |
| 413, 415 | too large; not JSON |
| 422 | what was to be entered cannot be read; nothing was kept |
| 423 | another process holds the book |
| 429 | more than 20 codes in a minute; \`Retry-After\` says when again |
| 500, 503 | a fault of the disk or of the program; too many at once |

\`second\` is \`{"office", "code"}\`: the second person of an act, and the own code where there is one ([second-person.md](second-person.md)). A code is looked at last of all, and no answer, finding or log has it.

Every reading address takes \`at=TIME\` (as known at it) or \`as-of=TIME\` (the state at it by all that is known now).

## Word of changes
\`GET /api/changes\` is a line of server-sent events. First comes \`here\` with \`{"entries", "digest"}\`; then \`changed\` with the same after anything is kept by anybody. A browser that lost the line comes back with \`Last-Event-ID\`: if the book has moved on meanwhile, the first event is \`changed\`. A comment every 15 seconds says that the line is still there.

## Addresses
`;

const FOOT = `
Beside these: \`GET /api/health\`, \`GET /api/openapi.json\`, \`GET /api/changes\`, \`POST /api/session\`, \`POST /api/session/end\` (this page is done: its cookie counts no more). Addresses under \`/api/book-port/\` are for programs of the same user alone: they carry entries as they are kept, in which stands who drank.
`;

export function httpPage(document: Described): string {
  const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ path, method: method.toUpperCase(), operation })),
  );
  const isForPrograms = ({ path }: { readonly path: string }): boolean => path.startsWith('/api/book-port/');
  const rows = (own: boolean) => operations.filter((each) => isForPrograms(each) === own).map(rowOf);
  const title = '| address | does | takes | data |\n|---|---|---|---|';
  return `${HEAD}${[title, ...rows(false)].join('\n')}\n\n### For programs of the same user\n${[title, ...rows(true)].join('\n')}\n${FOOT}`;
}

function rowOf({
  path,
  method,
  operation,
}: {
  readonly path: string;
  readonly method: string;
  readonly operation: Operation;
}): string {
  const { summary, parameters, requestBody, responses } = operation;
  const query = parameters.filter((each) => each.in === 'query').map(({ name }) => name);
  const body = Object.keys(requestBody?.content['application/json']?.schema.properties ?? {});
  const takes = [...query, ...body].map((name) => `\`${name}\``).join(', ');
  const data = responses['200']?.description ?? '';
  return `| \`${method} ${path}\` | ${summary} | ${takes} | \`${data}\` |`;
}
