import type { PlannedChannel } from '../model/plan.js';
import type { Wire } from '../model/wire.js';

/** A conductor as it is named everywhere: the port before it on a shared protector, ` (doubled)` after it. */
export function conductorText({ port, name, doubled }: Wire): string {
  return `${port === null ? '' : `${port} `}${name}${doubled ? ' (doubled)' : ''}`;
}

/** The conductor of a channel as people at the box call it: `negative, -48 V`; `positive, return (+)`; `L2, high leg`. */
export function channelText({
  wire,
  called,
  pole,
}: Pick<PlannedChannel, 'wire' | 'called' | 'pole'>): string {
  const own = [wire.name, ...(pole === null ? [] : [poleText(pole)]), ...(called === '' ? [] : [called])];
  return `${wire.port === null ? '' : `${wire.port} `}${own.join(', ')}${wire.doubled ? ' (doubled)' : ''}`;
}

/** With a blank that doesn't break, so that the sign, the figure and its unit stay together. */
function poleText({ use, volts }: NonNullable<PlannedChannel['pole']>): string {
  if (use === 'return') return 'return (+)';
  return volts === null ? 'line (-)' : `-${String(volts)}\u00a0V`;
}
