import { createRequire } from 'node:module';
import type * as MathJs from 'mathjs';

/** Right sides of differential equations, solved from a start over a span. */
type SolveODE = (
  rates: (t: number, y: number[]) => number[],
  span: readonly [number, number],
  start: readonly number[],
  options: Readonly<Record<string, number | string>>,
) => { readonly t: number[]; readonly y: number[][] };

/**
 * The general-purpose library that the tests compare with: its one-file build, which loads in a tenth of the time.
 * The type declarations leave `solveODE` out.
 */
export const mathematics = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as typeof MathJs & {
  readonly solveODE: SolveODE;
};
