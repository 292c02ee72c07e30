// Table of every limit of the server: bytes, times and counts.

export const LIMITS = {
  /** The first port that is tried, and how many behind it. */
  firstPort: 7480,
  portTries: 20,
  /** All header lines of a request together. */
  headerBytes: 16_384,
  headerCount: 64,
  /** A request whose header lines, or whose whole, has not come by then is closed. */
  headersMs: 10_000,
  requestMs: 30_000,
  keepAliveMs: 5_000,
  connections: 256,
  /** A body of a request, and the one that may carry a file of 20 MB in base64. */
  bodyBytes: 1_000_000,
  fileBodyBytes: 28_000_000,
  /** Requests that wait for their turn at the book. */
  waiting: 64,
  /** Pages that listen for changes at once, and how often they hear that the line is still there. */
  listeners: 32,
  heartbeatMs: 15_000,
  /** Pages that are let in at once, and addresses that were given out and not used yet. */
  sessions: 64,
  launches: 8,
  /** Findings in one answer about a request that does not fit. */
  findings: 20,
} as const;

/** How long the server waits for what, which tests make shorter. */
export interface Patience {
  readonly headersMs: number;
  readonly requestMs: number;
  readonly heartbeatMs: number;
}
