import { isNec } from '../model/editions.js';
import type { Plan, PlannedChannel, PlannedProtector } from '../model/plan.js';
import { portInWords } from './port-words.js';

/** Where in or at its equipment a protector sits, in a few words; a code without an entry isn't told on a sheet. */
const POSITIONS: Readonly<Record<string, string>> = {
  'position/ahead-of-main': 'ahead of main',
  'position/service': 'behind main, nearest to the feed',
  'position/first-device': 'at first device',
  'position/load': 'where the feeder enters',
  'position/feeder': 'load side, nearest to the feed',
  'position/tower-base': 'base of tower',
  'position/cable-leaves': 'where the cable leaves',
  'position/control-cable': 'where the cable enters',
  'position/battery-bus': 'behind battery disconnect',
  'position/terminals': 'at the terminals',
};

/** Where the protector sits, in a few words. */
export function positionInShort({ position }: Pick<PlannedProtector, 'position'>): string {
  return POSITIONS[position.code] ?? '';
}

/** Where a ground lead lands, in a few words. */
const GROUNDS: Readonly<Record<string, string>> = {
  'ground-lead/bonded-bar': 'bonded bar of the service',
  'ground-lead/electrode-bar': 'bar of the grounding electrode conductor',
  'ground-lead/equipment-ground-bar': 'equipment-ground bar',
  'ground-lead/equipment-ground-terminal': 'equipment-ground bar or terminal',
  'ground-lead/main-earthing-terminal': 'main earthing terminal',
  'ground-lead/protective-earth-bar': 'protective earth bar',
  'ground-lead/protective-earth-terminal': 'protective earth bar or terminal',
};

/** Where the ground lead lands, in a few words; `` where the plan has none. */
export function groundInShort({ wiring }: Pick<PlannedProtector, 'wiring'>): string {
  return GROUNDS[wiring.groundTo.code] ?? '';
}

/** A conductor at its channel: `L1`, `+`, `L2 high leg`, `AC input L1`, `L1 (doubled)`, `-48 V`. */
function channelInShort({ wire, called, pole }: PlannedChannel): string {
  const sign = wire.name === 'positive' ? '+' : wire.name === 'negative' ? '−' : wire.name;
  const volts = pole?.volts ?? null;
  const plant =
    pole === null ? '' : pole.use === 'return' ? ' return' : volts === null ? ' line' : ` ${String(volts)} V`;
  const name = called !== '' && called !== 'L+' && called !== 'L-' ? ` ${called}` : '';
  return `${wire.port === null ? '' : `${portInWords(wire.port)} `}${sign}${plant}${name}${wire.doubled ? ' (doubled)' : ''}`;
}

/** The conductors that a housing has channels for: `L1, L2`, `+, −`; of a 3+1 part with what they go to. */
export function channelsInShort({ channels }: Pick<PlannedProtector, 'channels'>): string {
  const toNeutral = channels.filter(({ to }) => to === 'N');
  if (toNeutral.length === 0) return channels.map(channelInShort).join(', ');
  const rest = channels.filter(({ to }) => to !== 'N');
  return `${toNeutral.map(channelInShort).join(', ')} to N, ${rest.map(channelInShort).join(', ')} to PE`;
}

/** True of a conductor that is grounded by what the plan says of its system: N, the corner-grounded phase (L2), a grounded pole. */
function isGrounded({ wire }: PlannedChannel, grounding: PlannedProtector['grounding']): boolean {
  switch (grounding) {
    case 'solid':
    case 'neutral':
      return wire.name === 'N';
    case 'corner':
      return wire.name === 'N' || wire.name === 'L2';
    case 'negative':
    case 'positive':
      return wire.name === grounding;
    default:
      return false;
  }
}

/** The ungrounded conductors that a housing has channels for; of a 3+1 part all, with what they go to. */
export function ungroundedInShort(protector: Pick<PlannedProtector, 'channels' | 'grounding'>): string {
  const { channels, grounding } = protector;
  if (channels.some(({ to }) => to === 'N')) return channelsInShort(protector);
  return channelsInShort({ channels: channels.filter((channel) => !isGrounded(channel, grounding)) });
}

const SYSTEMS: Readonly<Record<string, string>> = { dc: 'DC', 'three-phase': '3-phase', ac: 'AC' };
const GROUNDINGS: Readonly<Record<string, string>> = {
  solid: 'solidly grounded',
  none: 'ungrounded',
  corner: 'corner-grounded',
  impedance: 'impedance-grounded',
  negative: 'negative grounded',
  positive: 'positive grounded',
  floating: 'floating',
  neutral: 'N grounded',
  'not-known': '',
};
const EARTHINGS: Readonly<Record<string, string>> = {
  none: 'unearthed',
  corner: 'corner-earthed',
  impedance: 'impedance-earthed',
  negative: 'negative earthed',
  positive: 'positive earthed',
  floating: 'unearthed',
  neutral: 'N earthed',
  'not-known': '',
};

/**
 * The system at a protector with its grounding: `120/240 V, solidly grounded`, `DC, floating`; in the words of the basis:
 * `400/230 V, TT`.
 */
export function systemInShort(
  { system, grounding }: Pick<PlannedProtector, 'system' | 'grounding'>,
  { basis, earthing }: Pick<Plan, 'basis' | 'earthing'>,
): string {
  const name =
    system === null
      ? 'not known'
      : (SYSTEMS[system] ?? acInShort(isNec(basis) ? system : system.replace('Y/', '/')));
  const isPublic = grounding === 'solid' && !isNec(basis);
  const known = isPublic ? earthing : (isNec(basis) ? GROUNDINGS : EARTHINGS)[grounding ?? 'not-known'];
  const how = known ?? '';
  return how === '' ? name : `${name}, ${how}`;
}

/** `120/240 V`, `240/120 V high-leg`, `480 V delta`. */
function acInShort(system: string): string {
  const [volts = system, ...rest] = system.split(' ');
  return [`${volts} V`, ...rest].join(' ');
}
