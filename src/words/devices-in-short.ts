import type { PlannedProtector } from '../model/plan.js';
import { plain } from './figures.js';
import { portInWords } from './port-words.js';

type Device = PlannedProtector['overcurrent'][number];

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
      ? `none (≤ ${plain(device.amps ?? 0)} A allowed)`
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

/** The devices of a housing, each once; with their ports where they differ, `at each port` where several are alike. */
export function devicesInFew(devices: readonly Device[]): string[] {
  const texts = devices.map(deviceInFew);
  const [first] = texts;
  if (first === undefined || texts.length === 1) return texts;
  if (texts.every((one) => one === first)) return [`${first}; one at each port`];
  return devices.map((one, index) => `${portInWords(one.port)}: ${texts[index] ?? ''}`);
}
