// Asks a running server of the same machine, as a program of the same user: one JSON question, one JSON answer.
import { Agent, type IncomingMessage, request } from 'node:http';
import { type ServerNote, StoreProblem } from '../disk/index.ts';
import { serverFinding } from './refusal.ts';

/** The server did not answer, or not as one does. */
export class ServerProblem extends StoreProblem {
  override readonly name: string = 'ServerProblem';
}

/** A check of a long book takes its time. */
const PATIENCE_MS = 600_000;

interface Question {
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly body?: unknown;
}

export class Asker {
  readonly #note: ServerNote;
  /** One line for all questions of a command. */
  readonly #agent = new Agent({ keepAlive: true, maxSockets: 1 });

  constructor(note: ServerNote) {
    this.#note = note;
  }

  /** @throws ServerProblem when there is no answer, or not one to this question */
  async ask(question: Question): Promise<unknown> {
    const { address } = this.#note;
    const { status, text } = await this.#send(question).catch((error: NodeJS.ErrnoException) => {
      const isWrite = question.path.endsWith('/append');
      const data = { address, says: error.code ?? error.name, mayBeKept: isWrite };
      throw new ServerProblem(serverFinding('server-silent', data));
    });
    const data = dataOf(text);
    if (status === 200 || status === 201) return data;
    throw new ServerProblem(serverFinding('server-refused', { address, status, says: codeOf(data) }));
  }

  #send({ method, path, body }: Question): Promise<{ status: number; text: string }> {
    const { address, key } = this.#note;
    const text = body === undefined ? undefined : JSON.stringify(body);
    return new Promise((done, fail) => {
      const asked = request(
        new URL(path, address),
        {
          method,
          agent: this.#agent,
          timeout: PATIENCE_MS,
          headers: {
            Authorization: `Bearer ${key}`,
            ...(text !== undefined && {
              'Content-Type': 'application/json',
              'Content-Length': Buffer.byteLength(text),
            }),
          },
        },
        (answer) => {
          wholeOf(answer).then((whole) => done({ status: answer.statusCode ?? 0, text: whole }), fail);
        },
      );
      asked.on('timeout', () => asked.destroy(Object.assign(new Error('no answer'), { code: 'ETIMEDOUT' })));
      asked.on('error', fail);
      asked.end(text);
    });
  }

  close(): void {
    this.#agent.destroy();
  }
}

async function wholeOf(answer: IncomingMessage): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of answer) pieces.push(piece as Buffer);
  return Buffer.concat(pieces).toString('utf8');
}

function dataOf(text: string): unknown {
  try {
    return (JSON.parse(text) as { data?: unknown }).data ?? null;
  } catch {
    return null;
  }
}

function codeOf(data: unknown): string {
  const [first] = Array.isArray(data) ? (data as { code?: unknown }[]) : [];
  return typeof first?.code === 'string' ? first.code : 'no finding';
}
