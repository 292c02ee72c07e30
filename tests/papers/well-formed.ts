// Reads a page as XML would: what stands open, and every element and attribute that is in it.

export interface Markup {
  /** What is wrong with it, empty where nothing is. */
  readonly faults: readonly string[];
  readonly elements: ReadonlySet<string>;
  readonly attributes: ReadonlySet<string>;
}

const TAG = /<(\/?)([A-Za-z][A-Za-z0-9]*)((?:\s+[A-Za-z][A-Za-z0-9:-]*="[^"<]*")*)\s*(\/?)>/y;

export function markupOf(page: string): Markup {
  const faults: string[] = [];
  const open: string[] = [];
  const elements = new Set<string>();
  const attributes = new Set<string>();
  // What a style sheet has between its tags is no markup, and may not end it early.
  const text = page.replace(/^<!DOCTYPE html>\n/, '').replace(/<style>[^<]*<\/style>/, '<style></style>');
  for (let at = text.indexOf('<'); at >= 0; at = text.indexOf('<', at + 1)) {
    TAG.lastIndex = at;
    const found = TAG.exec(text);
    if (found === null) {
      faults.push(`no tag: ${text.slice(at, at + 40)}`);
      continue;
    }
    const [, isEnd, name = '', said = '', isEmpty] = found;
    elements.add(name);
    for (const [, key = ''] of said.matchAll(/\s([A-Za-z0-9:-]+)="/g)) attributes.add(key);
    if (isEnd === '/') {
      if (open.pop() !== name) faults.push(`</${name}> ends something else`);
    } else if (isEmpty !== '/') open.push(name);
  }
  if (open.length > 0) faults.push(`left open: ${open.join(', ')}`);
  for (const [entity] of text.matchAll(/&[^;\s]{0,12};?/g))
    if (!/^&(?:amp|lt|gt|quot);$/.test(entity)) faults.push(`no entity: ${entity}`);
  return { faults, elements, attributes };
}
