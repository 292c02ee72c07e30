// Codes of what can be wrong with a request to the server; they stand here because the words do.

export type ServerFindingCode =
  /** No such address. data: path, nearest */
  | 'address-unknown'
  /** data: method, allowed (a list) */
  | 'method-wrong'
  /** The name that was asked for is not this machine's own. data: host, allowed (a list) */
  | 'host-refused'
  /** A page of another origin asks. data: origin */
  | 'cross-site'
  /** Neither the cookie nor the token, or one that this server did not give. */
  | 'token-needed'
  /** The launch token was used, or is none. */
  | 'launch-token-spent'
  /** data: type (null where none was told) */
  | 'not-json'
  /** data: says */
  | 'body-unreadable'
  /** data: most */
  | 'body-too-large'
  /** data: part (query or body), received, wanted and what goes with it */
  | 'request-field-wrong'
  /** data: part, field, nearest */
  | 'request-field-unknown'
  /** data: first, second */
  | 'request-fields-clash'
  /** A server holds the book and does not answer. data: address, says, mayBeKept */
  | 'server-silent'
  /** It answers with something else than what was asked. data: address, status, says */
  | 'server-refused'
  /** The server is of another build of the program. data: address */
  | 'server-of-other-build'
  /** No port is free. data: first, last */
  | 'no-port-free'
  /** Too many requests wait. */
  | 'server-crowded'
  /** data: says */
  | 'server-failed';
