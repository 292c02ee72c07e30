// Finds circles among files that import one another, by walking each path once (Tarjan's strong components).

/** The circles of a graph, each as its members in order of name; a file that imports itself is a circle of one. */
export function circlesOf(graph: ReadonlyMap<string, readonly string[]>): readonly (readonly string[])[] {
  const order = new Map<string, number>();
  const low = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];

  function visit(file: string): number {
    let lowest = order.size;
    order.set(file, lowest);
    open.push(file);
    for (const next of graph.get(file) ?? []) {
      if (!order.has(next)) lowest = Math.min(lowest, visit(next));
      else if (open.includes(next)) lowest = Math.min(lowest, order.get(next) ?? lowest);
    }
    low.set(file, lowest);
    if (lowest === order.get(file)) close(file);
    return lowest;
  }

  function close(file: string): void {
    const members = open.splice(open.indexOf(file));
    if (members.length > 1 || graph.get(file)?.includes(file)) circles.push(members.sort());
  }

  for (const file of graph.keys()) if (!order.has(file)) visit(file);
  return circles;
}
