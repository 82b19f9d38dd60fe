import { createRequire } from 'node:module';
import type { ELK, ELKConstructorArguments, ElkNode } from 'elkjs/lib/elk-api.js';

/** Graphs that are kept with their layout: some tens of KB each; common practice, no source. */
const MOST_KEPT = 200;

let engine: ELK | undefined;
const kept = new Map<string, Promise<ElkNode>>();

/** Loaded as what it is: an `import` of its 1.4 MB reads it once more, for names to import, which takes as long as to run it. */
function start(): ELK {
  type Engine = new (args?: ELKConstructorArguments) => ELK;
  const { default: Elk } = createRequire(import.meta.url)('elkjs/lib/elk.bundled.js') as { default: Engine };
  return new Elk();
}

/**
 * Lays a graph out, which takes as long as all else of a document. The same graph has the same layout each time, so that it is
 * laid out once: documents made again, and sites that are alike but for their names, share it.
 * @param graph sizes in points; without names, else no two sites are alike
 * @returns the graph with places; shared, so never to be changed
 */
export async function laidOut(graph: ElkNode): Promise<ElkNode> {
  const key = JSON.stringify(graph);
  const known = kept.get(key);
  if (known) return known;
  engine ??= start();
  const result = engine.layout(graph);
  kept.set(key, result);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  try {
    return await result;
  } catch (error) {
    kept.delete(key);
    throw error;
  }
}
