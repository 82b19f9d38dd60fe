/** Of a control circuit: its supply and what it may start, then lock, tag and prove dead. */
const OF_CONTROL: ReadonlySet<number> = new Set([1, 9, 10]);

/**
 * Which of the numbered steps of its part of the site one housing needs: all of them, since over the cables of the list, through
 * inverters too, every source there can feed it, and a step left out may open a battery under charge or unload a turning turbine. In
 * the enclosure of a control circuit no power stands.
 * @param steps numbers of the steps that the part has
 * @param isControlEnclosure true at a control circuit's own end
 * Source: common practice, no source.
 */
export function boxSteps(steps: readonly number[], isControlEnclosure: boolean): readonly number[] {
  return isControlEnclosure ? steps.filter((number) => OF_CONTROL.has(number)) : steps;
}
