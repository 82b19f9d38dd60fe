import type { PlannedProtector } from '../model/plan.js';
import { channelText } from './conductors.js';
import { figure, list } from './figures.js';
import { say } from './reasons/say.js';

type Device = PlannedProtector['overcurrent'][number];
/** What is told of a housing beside the device. */
type Of = Pick<PlannedProtector, 'channels' | 'wiring'>;

const NAMES: Readonly<Record<Device['device'], string>> = {
  breaker: 'breaker',
  fuse: 'fuses',
  either: 'breaker or fuses',
  none: 'none of its own',
  unknown: 'not known',
};

const BY_SUPPLY = 'none of its own behind a class 2 supply; else as the part says';

/** True where the supply of a control circuit decides which device there is. */
function isBySupply({ because }: Device): boolean {
  return because.code === 'overcurrent/by-supply-of-control';
}

function nameOf(device: Device): string {
  return isBySupply(device) ? BY_SUPPLY : NAMES[device.device];
}

/** `15 to 30 A`, `at most 30 A`; `` where no size is known. */
function sizeText({ amps, leastAmps }: Device): string {
  if (amps === null) return leastAmps === null ? '' : `at least ${figure(leastAmps, 'A')}`;
  return leastAmps === null
    ? `at most ${figure(amps, 'A')}`
    : `${figure(leastAmps, 'A')} to ${figure(amps, 'A')}`;
}

/** Where the plan has no largest size, the words of the catalogue: `size by the part’s instructions (the catalogue: a breaker of 20 A)`. */
function sizeOrWords(device: Device, { wiring: { overcurrent: words } }: Of): string {
  const size = sizeText(device);
  if (device.amps !== null) return size;
  const told = words === null ? '' : `(the catalogue: ${words})`;
  const by = device.device === 'unknown' ? told : `size by the part’s instructions ${told}`.trim();
  return [size, by].filter((one) => one !== '').join(', ');
}

function polesText({ poles }: Device): string {
  if (poles === null) return '';
  return poles === 1 ? '1 pole' : `${String(poles)} poles`;
}

/** Which conductors have a pole, where not all of the housing have: `in positive; none in negative`, `in L1`; else ``. */
function inWhich({ port, conductors, noneIn }: Device, { channels }: Of): string {
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
export function deviceText(device: Device, of: Of): string {
  const name = nameOf(device);
  if (device.device === 'none') return name;
  const { poles, volts, interrupting } = device;
  const asked = [
    polesText(device),
    inWhich(device, of),
    sizeOrWords(device, of),
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

/** The device at one port with why it is so. */
export function deviceAndWhy(device: Device, of: Of): string {
  return `${deviceText(device, of)}: ${say(device.because)}`;
}

/**
 * The devices of a housing, one a port; the port stands before each where there are several.
 * @param tell how one of them is told
 */
export function devicesText(
  protector: Of & Pick<PlannedProtector, 'overcurrent'>,
  tell: (device: Device, of: Of) => string = deviceText,
): string[] {
  return protector.overcurrent.map((device) =>
    protector.overcurrent.length > 1 ? `${device.port}: ${tell(device, protector)}` : tell(device, protector),
  );
}

/** `line 10 AWG Cu, ground 10 AWG Cu`, `10 AWG Cu` where both are one, with what else they rest on; `` where none is known. */
export function smallestLeadsText({ figures }: Pick<PlannedProtector, 'figures'>): string {
  const line = figures?.smallestLead ?? null;
  const ground = figures?.smallestGroundLead ?? null;
  if (line === null || ground === null) return '';
  const both = line === ground ? line : `line ${line}, ground ${ground}`;
  return `${both}${restText(figures?.leadsRestOn ?? null)}`;
}

function restText(rest: NonNullable<PlannedProtector['figures']>['leadsRestOn']): string {
  if (rest === null) return '';
  switch (rest.on) {
    case 'device':
      return rest.amps === null
        ? ' at least, until the device is known'
        : ` at least: whether they bear the ${figure(rest.amps, 'A')} ahead isn’t worked out`;
    case 'instructions':
      return ' by the part’s instructions (240.21(B)(1)(1)b exception)';
    case 'supply':
      return ` behind a class 2 supply${rest.amps === null ? '' : ` or at most ${figure(rest.amps, 'A')}`}`;
  }
}
