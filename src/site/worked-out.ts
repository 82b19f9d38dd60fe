/** Where what belongs to a node is kept: on the node, so that it goes with it. */
export interface Known<K, V> {
  of(node: K): V | undefined;
  keep(node: K, value: V): void;
}

/**
 * What belongs to a node of a network, worked out after that of each node that it depends on; each once, and in a loop, since a
 * chain may be as long as its list.
 * @param start the node that is asked about
 * @param known what was worked out before, and where what is worked out is kept
 * @param before the nodes that a node depends on
 * @param make what belongs to a node whose dependencies are known
 * @returns that of `start`; in a circle a node is made without those of which it is itself a dependency
 */
export function workedOut<K extends object, V extends object>(
  start: K,
  known: Known<K, V>,
  before: (node: K) => Iterable<K>,
  make: (node: K) => V,
): V {
  const begun = new Set<K>();
  const open: K[] = [start];
  for (let node = open.at(-1); node; node = open.at(-1)) {
    if (known.of(node)) {
      open.pop();
      continue;
    }
    if (begun.has(node)) {
      known.keep(node, make(node));
      continue;
    }
    begun.add(node);
    for (const one of before(node)) if (!known.of(one) && !begun.has(one)) open.push(one);
  }
  return known.of(start) ?? make(start);
}
