import type { Wire } from '../model/wire.js';

/**
 * A conductor as forms name it: `positive`, `ac-in L1`, `L1 (doubled)`. By its data, in the words of `plan.json`: however papers come to
 * call it, a form that was given out still means the same.
 */
export function wireCell({ port, name, doubled }: Wire): string {
  return `${port === null ? '' : `${port} `}${name}${doubled ? ' (doubled)' : ''}`;
}
