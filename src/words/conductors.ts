import type { Wire } from '../model/wire.js';

/** A conductor as it is named everywhere: the port before it on a shared protector, ` (doubled)` after it. */
export function conductorText({ port, name, doubled }: Wire): string {
  return `${port === null ? '' : `${port} `}${name}${doubled ? ' (doubled)' : ''}`;
}
