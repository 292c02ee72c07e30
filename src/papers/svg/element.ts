// Pieces of SVG as text: elements with their attributes, and nothing that could be taken for a tag.

/** A number of a coordinate: a hundredth of a pixel is more than anybody sees. */
export function place(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return `${rounded === 0 ? 0 : rounded}`;
}

const entities: ReadonlyMap<string, string> = new Map([
  ['&', '&amp;'],
  ['<', '&lt;'],
  ['>', '&gt;'],
  ['"', '&quot;'],
]);

export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => entities.get(sign) ?? sign);
}

type Attributes = Readonly<Record<string, string | number>>;

/** An element; numbers are coordinates. */
export function element(name: string, attributes: Attributes, inside: readonly string[] = []): string {
  const said = Object.entries(attributes).map(
    ([key, value]) => ` ${key}="${typeof value === 'number' ? place(value) : escaped(value)}"`,
  );
  return inside.length === 0
    ? `<${name}${said.join('')}/>`
    : `<${name}${said.join('')}>${inside.join('')}</${name}>`;
}

export function textElement(text: string, attributes: Attributes): string {
  return element('text', attributes, [escaped(text)]);
}
