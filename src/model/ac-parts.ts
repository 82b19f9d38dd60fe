import type { AcSystem } from './words.js';

/**
 * Which systems a system holds beside itself: what can be taken from it without a transformer. A part has the grounding and the
 * conductors of the whole.
 */
const PARTS: { readonly [S in AcSystem]?: readonly AcSystem[] } = {
  '120/240': ['120', '240'],
  '120/208': ['120', '208'],
  '208Y/120': ['120', '208', '120/208'],
  '240/120 high-leg': ['120', '240', '120/240', '240 delta'],
  '240 delta': ['240'],
  '480Y/277': ['277', '480', '480 delta'],
  '480 delta': ['480'],
  '600Y/347': ['347'],
  '400Y/230': ['230'],
};

/**
 * True where what is of one system can feed what is of another: the same, or a part of it.
 * @param whole the system of what feeds
 * @param part the system of what is fed
 * Source: the voltages between the conductors of each system (ANSI C84.1-2020, IEC 60038:2009).
 */
export function holds(whole: AcSystem, part: AcSystem): boolean {
  return whole === part || (PARTS[whole]?.includes(part) ?? false);
}

/** What several equal sources make together: how many of which. */
const STACKS: { readonly [S in AcSystem]?: readonly (readonly [count: number, of: AcSystem])[] } = {
  '120/240': [
    [2, '120'],
    [4, '120'],
  ],
  '208Y/120': [
    [2, '120/208'],
    [3, '120'],
    [6, '120'],
  ],
  '480Y/277': [[3, '277']],
};

/**
 * The systems that equal single-phase sources make when they run in step, each on conductors of its own.
 * @param of the system of each source
 * @param count how many there are
 */
export function stackedSystems(of: AcSystem, count: number): readonly AcSystem[] {
  const made: AcSystem[] = [];
  for (const [system, ways] of Object.entries(STACKS) as [
    AcSystem,
    readonly (readonly [number, AcSystem])[],
  ][]) {
    if (ways.some(([n, each]) => n === count && each === of)) made.push(system);
  }
  return made;
}
