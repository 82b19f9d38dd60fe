/** The highest of some figures of one unit; undefined where there is none, or one isn't known. */
export function highest(figures: readonly (number | undefined)[]): number | undefined {
  let most: number | undefined;
  for (const one of figures) {
    if (one === undefined) return undefined;
    most = Math.max(most ?? one, one);
  }
  return most;
}
