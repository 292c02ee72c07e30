// A key that stands twice in one object of a JSON text: JSON keeps the last one silently, and none of the two is known to be right.

const token = /"(?:[^"\\]|\\.)*"|[{}[\]:,]/g;

/**
 * The first key that an object of the text has twice, or null.
 * @param text JSON that has been parsed without a fault
 */
export function repeatedKey(text: string): string | null {
  const open: (Set<string> | null)[] = [];
  let last = '';
  for (const [sign] of text.matchAll(token)) {
    if (sign === '{') open.push(new Set());
    else if (sign === '[') open.push(null);
    else if (sign === '}' || sign === ']') open.pop();
    else if (sign === ':') {
      const key = JSON.parse(last) as string;
      const keys = open.at(-1);
      if (keys?.has(key)) return key;
      keys?.add(key);
    }
    last = sign;
  }
  return null;
}
