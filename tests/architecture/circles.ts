/** Groups of things that need each other in a circle (Tarjan's strongly connected components). */

/** Every group of two or more, each sorted; no group when nothing goes round. */
export function circlesIn(needs: ReadonlyMap<string, ReadonlySet<string>>): string[][] {
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (node: string): void => {
    order.set(node, order.size);
    lowest.set(node, order.size - 1);
    open.push(node);
    for (const next of needs.get(node) ?? []) {
      if (!order.has(next)) visit(next);
      if (open.includes(next)) lowest.set(node, Math.min(lowest.get(node) ?? 0, lowest.get(next) ?? 0));
    }
    if (lowest.get(node) !== order.get(node)) return;
    const group = open.splice(open.indexOf(node));
    if (group.length > 1) found.push(group.sort());
  };
  for (const node of needs.keys()) if (!order.has(node)) visit(node);
  return found;
}
