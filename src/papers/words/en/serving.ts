// English for a book that is served: what the address is for, and how it ends.

export function serving(of: {
  readonly book: string;
  readonly wanted: number;
  readonly port: number;
}): string {
  const taken = of.port === of.wanted ? '' : `Port ${of.wanted} was taken, this is port ${of.port}. `;
  return `${taken}Serving ${of.book} to this machine only. The address lets one page in; for another, run waterwright serve again. Ctrl-C ends it.`;
}

export const servedAlready = 'This book is served already. The address is a fresh one; it lets one page in.';

export const servingStopped = 'Stopped. What was acknowledged is in the book.';
