import type { PlannedProtector } from '../model/plan.js';
import { channelText } from './conductors.js';
import { figure, list } from './figures.js';
import { say } from './reasons/say.js';

type Device = PlannedProtector['overcurrent'][number];
type Channels = PlannedProtector['channels'];

const NAMES: Readonly<Record<Device['device'], string>> = {
  breaker: 'breaker',
  fuse: 'fuses',
  either: 'breaker or fuses',
  none: 'none of its own',
  unknown: 'not known',
};

/** `15 to 30 A`, `at most 30 A`; `` where no size is known. */
function sizeText({ amps, leastAmps }: Device): string {
  if (amps === null) return leastAmps === null ? '' : `at least ${figure(leastAmps, 'A')}`;
  return leastAmps === null
    ? `at most ${figure(amps, 'A')}`
    : `${figure(leastAmps, 'A')} to ${figure(amps, 'A')}`;
}

function polesText({ poles }: Device): string {
  if (poles === null) return '';
  return poles === 1 ? '1 pole' : `${String(poles)} poles`;
}

/** Which conductors have a pole, where not all of the housing have: `in positive; none in negative`, `in L1`; else ``. */
function inWhich({ port, conductors, noneIn }: Device, channels: Channels): string {
  const there = channels.filter(({ wire }) => wire.port === null || wire.port === port);
  if (conductors.length === 0 || there.every(({ wire }) => conductors.includes(wire.name))) return '';
  const named = (name: (typeof conductors)[number]): string => {
    const channel = there.find(({ wire }) => wire.name === name);
    return channel ? channelText({ ...channel, wire: { port: null, name, doubled: false } }) : name;
  };
  const none = noneIn.length === 0 ? '' : `; none in ${list(noneIn.map(named))}`;
  return `in ${list(conductors.map(named))}${none}`;
}

const current = (amperes: number): string =>
  amperes >= 1000 ? figure(amperes / 1000, 'kA') : figure(amperes, 'A');

/** What a device must be, in the order in which it is bought: `breaker, 2 poles, in L1 and L2, at most 20 A, for at least 240 V, interrupting 10 kA`. */
export function deviceText(device: Device, channels: Channels): string {
  const name = NAMES[device.device];
  if (device.device === 'none') return name;
  const { poles, volts, interrupting } = device;
  const asked = [
    polesText(device),
    inWhich(device, channels),
    sizeText(device) === '' && device.device !== 'unknown'
      ? 'size by the part’s instructions'
      : sizeText(device),
    volts === null
      ? ''
      : `at least ${figure(volts, 'V')}${device.dc ? ' DC' : ''}${device.straight ? ' (straight rating, no slash)' : ''}`,
    interrupting !== null
      ? `interrupting at least ${current(interrupting)}`
      : poles === null
        ? ''
        : 'interrupting rating: ______',
  ].filter((one) => one !== '');
  return [name, ...asked].join(', ');
}

/** The device in a few words, for a drawing: `breaker, 2 poles, at most 20 A`. */
export function deviceInShort(device: Device): string {
  if (device.device === 'none') return NAMES.none;
  const asked = [polesText(device), sizeText(device)];
  return [NAMES[device.device], ...asked.filter((one) => one !== '')].join(', ');
}

/** The device at one port with why it is so. */
export function deviceAndWhy(device: Device, channels: Channels): string {
  return `${deviceText(device, channels)}: ${say(device.because)}`;
}

/** The device as a wiring note has it: why it is so only where there is none to fit, or none is known. */
export function deviceToFit(device: Device, channels: Channels): string {
  const hasWhy = device.device === 'none' || device.device === 'unknown';
  return (hasWhy ? deviceAndWhy : deviceText)(device, channels);
}

/**
 * The devices of a housing, one a port; the port stands before each where there are several.
 * @param tell how one of them is told
 */
export function devicesText(
  { overcurrent, channels }: Pick<PlannedProtector, 'overcurrent' | 'channels'>,
  tell: (device: Device, channels: Channels) => string = deviceText,
): string[] {
  return overcurrent.map((device) =>
    overcurrent.length > 1 ? `${device.port}: ${tell(device, channels)}` : tell(device, channels),
  );
}

/** `line 10 AWG Cu, ground 10 AWG Cu`, `10 AWG Cu` where both are one; `` where none is known. */
export function smallestLeadsText({ figures }: Pick<PlannedProtector, 'figures'>): string {
  const line = figures?.smallestLead ?? null;
  const ground = figures?.smallestGroundLead ?? null;
  if (line === null || ground === null) return '';
  return line === ground ? line : `line ${line}, ground ${ground}`;
}
