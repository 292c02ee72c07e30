// A count and its noun on one line.

export const nbsp = '\u00A0';

export function times(count: number, one: string, many: string): string {
  return `${count}${nbsp}${count === 1 ? one : many}`;
}
