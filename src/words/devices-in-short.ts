import type { PlannedProtector } from '../model/plan.js';
import { figure, neededCurrent, plain } from './figures.js';
import { portInWords } from './port-words.js';

type Device = PlannedProtector['overcurrent'][number];
type LeadsRestOn = NonNullable<PlannedProtector['figures']>['leadsRestOn'];

const NAMES: Readonly<Record<Device['device'], string>> = {
  breaker: 'breaker',
  fuse: 'fuses',
  either: 'breaker or fuses',
  none: 'none',
  unknown: '',
};

/** Why there is none of its own, or whose it is; a code without an entry isn't told. */
const WHY: Readonly<Record<string, string>> = {
  'overcurrent/not-needed': 'none: part needs none',
  'overcurrent/ahead-of-disconnect': 'none but what the part is listed with',
  'overcurrent/circuit-will-do': 'the circuit’s own',
  'overcurrent/grounded-only': 'none: grounded conductor',
  'overcurrent/array-below': 'none',
  'overcurrent/by-supply-of-control': 'class 2 supply, or by others',
};

/** `15-20 A`, `≤ 20 A`; `` where no size is known. */
function sizeText({ amps, leastAmps }: Device): string {
  if (amps === null) return leastAmps === null ? '' : `≥ ${plain(leastAmps)} A`;
  return leastAmps === null ? `≤ ${plain(amps)} A` : `${plain(leastAmps)}–${plain(amps)} A`;
}

/**
 * An overcurrent device as a schedule has it: `2-pole breaker, 15–20 A, 240 V`. What is to be filled in is left out: a blank
 * stands beside it.
 */
export function deviceInFew(device: Device): string {
  const why = WHY[device.because.code];
  if (why !== undefined) {
    return device.because.code === 'overcurrent/array-below'
      ? `none of its own (circuit ≤ ${plain(device.amps ?? 0)} A)`
      : why;
  }
  const { poles, volts, dc, straight } = device;
  const name = [poles === null ? '' : `${String(poles)}-pole`, NAMES[device.device]]
    .filter((one) => one !== '')
    .join(' ');
  const rating =
    volts === null
      ? ''
      : `${plain(Math.ceil(volts - 1e-6))} V${dc ? ' DC' : ''}${straight ? ' straight' : ''}`;
  return [name, sizeText(device), rating].filter((one) => one !== '').join(', ');
}

/** `≥ 22 kA`: what a device must interrupt, rounded up; `` where there is none, or the current isn't known. */
function interruptingText({ because, interrupting }: Device): string {
  if (WHY[because.code] !== undefined || interrupting === null) return '';
  const amperes = neededCurrent(interrupting);
  return `≥ ${amperes < 1000 ? figure(amperes, 'A') : figure(amperes / 1000, 'kA')}`;
}

/**
 * A device behind the supply of a control circuit, or one as large as both its leads and the part bear (240.4(D)): never the
 * larger of the two.
 */
function controlText({ amps }: Device, leadsRestOn: LeadsRestOn): string {
  const sizes = [amps, leadsRestOn?.on === 'supply' ? leadsRestOn.amps : null].filter((one) => one !== null);
  return sizes.length === 0
    ? 'class 2 supply, or by others'
    : `class 2 supply, else device ≤ ${plain(Math.min(...sizes))} A by others`;
}

function inSchedule(device: Device, leadsRestOn: LeadsRestOn): string {
  if (device.because.code === 'overcurrent/by-supply-of-control') return controlText(device, leadsRestOn);
  return [deviceInFew(device), interruptingText(device)].filter((one) => one !== '').join(', ');
}

/**
 * The devices of a housing, each once, with what they must interrupt; with their ports where they differ, `at each port` where
 * several are alike.
 */
export function devicesInFew({
  overcurrent: devices,
  figures,
}: Pick<PlannedProtector, 'overcurrent' | 'figures'>): string[] {
  const texts = devices.map((device) => inSchedule(device, figures?.leadsRestOn ?? null));
  const [first] = texts;
  if (first === undefined || texts.length === 1) return texts;
  if (texts.every((one) => one === first)) return [`${first}; one at each port`];
  return devices.map((one, index) => `${portInWords(one.port)}: ${texts[index] ?? ''}`);
}
