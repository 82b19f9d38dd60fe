import type { PlannedProtector } from '../model/plan.js';
import { figure } from './figures.js';
import { say } from './reasons/say.js';

type Device = PlannedProtector['overcurrent'][number];

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

const current = (amperes: number): string =>
  amperes >= 1000 ? figure(amperes / 1000, 'kA') : figure(amperes, 'A');

/** What a device must be, in the order in which it is bought: `breaker, 2 poles, at most 20 A, for at least 240 V, interrupting 10 kA`. */
export function deviceText(device: Device): string {
  const name = NAMES[device.device];
  if (device.device === 'none') return name;
  const { poles, volts, interrupting } = device;
  const asked = [
    polesText(device),
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
export function deviceAndWhy(device: Device): string {
  return `${deviceText(device)}: ${say(device.because)}`;
}

/** The device as a wiring note has it: why it is so only where there is none to fit, or none is known. */
export function deviceToFit(device: Device): string {
  return device.device === 'none' || device.device === 'unknown' ? deviceAndWhy(device) : deviceText(device);
}

/**
 * The devices of a housing, one a port; the port stands before each where there are several.
 * @param tell how one of them is told
 */
export function devicesText(
  { overcurrent }: Pick<PlannedProtector, 'overcurrent'>,
  tell: (device: Device) => string = deviceText,
): string[] {
  return overcurrent.map((device) =>
    overcurrent.length > 1 ? `${device.port}: ${tell(device)}` : tell(device),
  );
}

/** `line 10 AWG Cu, ground 10 AWG Cu`, `10 AWG Cu` where both are one; `` where none is known. */
export function smallestLeadsText({ figures }: Pick<PlannedProtector, 'figures'>): string {
  const line = figures?.smallestLead ?? null;
  const ground = figures?.smallestGroundLead ?? null;
  if (line === null || ground === null) return '';
  return line === ground ? line : `line ${line}, ground ${ground}`;
}
