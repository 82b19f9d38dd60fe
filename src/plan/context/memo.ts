/** The most results that are kept for one object: a batch repeats few of them, a hostile list many. */
const MOST = 500;

/** Hands out the kept result of an object and a key, or makes it. */
export type Memo<T> = (object: object, key: string, make: () => T) => T;

/**
 * Keeps what is made of an object and a key, so that a batch that asks the same a thousand times makes it once. What is
 * kept goes with the object, and is dropped as a whole when it grows beyond what a real batch asks for.
 * @returns a function that hands out the kept result, or makes it
 */
export function memo<T>(): Memo<T> {
  const byObject = new WeakMap<object, Map<string, T>>();
  return (object, key, make) => {
    let results = byObject.get(object);
    if (!results) {
      results = new Map();
      byObject.set(object, results);
    }
    const before = results.get(key);
    if (before !== undefined) return before;
    if (results.size >= MOST) results.clear();
    const made = make();
    results.set(key, made);
    return made;
  };
}
