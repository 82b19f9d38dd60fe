/** The most results that are kept: a batch repeats few of them, a hostile list many. */
const MOST = 500;

/**
 * A pure function that keeps what it made, so that a batch that asks the same a thousand times makes it once. What is kept is
 * dropped as a whole when it grows beyond what a real batch asks for.
 * @param keyOf every part of the input that decides the result, as text; two inputs that differ in none of them have one result
 * @param make the result of an input: of nothing else, and nobody changes it
 * @returns a function that hands out the kept result, or makes it; it throws what `make` throws, and keeps nothing then
 */
export function keeping<I, T>(keyOf: (input: I) => string, make: (input: I) => T): (input: I) => T {
  const kept = new Map<string, { readonly made: T }>();
  return (input) => {
    const key = keyOf(input);
    const before = kept.get(key);
    if (before) return before.made;
    const made = make(input);
    if (kept.size >= MOST) kept.clear();
    kept.set(key, { made });
    return made;
  };
}
