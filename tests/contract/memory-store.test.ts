// The store in memory against the contract of the port.
import { MemoryStore } from '../../src/book/index.ts';
import { describeBookPort } from './book-port.ts';

describeBookPort('memory', (info) =>
  Promise.resolve({ port: new MemoryStore(info), close: () => Promise.resolve() }),
);
