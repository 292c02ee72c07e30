// The thread that reads files: it has nothing but the bytes that it is sent.
import { parentPort } from 'node:worker_threads';
import { replyOf, type TableRequest } from './message.ts';
import { parseTable } from './parse-table.ts';

parentPort?.on('message', ({ file, bytes, caps }: TableRequest) => {
  parentPort?.postMessage(replyOf(parseTable(file, bytes, caps)));
});
