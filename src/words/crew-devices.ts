import type { PlannedProtector } from '../model/plan.js';
import { figure, neededCurrent, neededVolts, plain } from './figures.js';
import type { CrewPackWords } from './languages/crew-pack-words.js';

type Device = PlannedProtector['overcurrent'][number];

const DC_INPUT = /^dc-in-(\d+)$/;

/** A port of an equipment as a crew calls it: `DC input 1`, `acometida`. */
export function crewPort(port: string, { ports }: CrewPackWords): string {
  const input = DC_INPUT.exec(port)?.[1];
  if (input !== undefined) return `${ports['dc-input']} ${input}`;
  const known: Readonly<Record<string, string>> = ports;
  return known[port] ?? port;
}

const current = (amperes: number): string =>
  amperes < 1000 ? figure(amperes, 'A') : figure(amperes / 1000, 'kA');

/** `15–20 A`, `≤ 20 A`; `` where no size is known. */
function sizeText({ amps, leastAmps }: Device): string {
  if (amps === null) return leastAmps === null ? '' : `≥ ${plain(leastAmps)} A`;
  return leastAmps === null ? `≤ ${plain(amps)} A` : `${plain(leastAmps)}–${plain(amps)} A`;
}

/** What a device has to bear whose kind somebody else decides: the highest voltage that lasts there. */
function voltsText(
  { mcov, current: kind }: PlannedProtector['required'],
  words: CrewPackWords['device'],
): string {
  if (mcov === null || kind === null) return '';
  return `${figure(neededVolts(mcov), 'V')} ${kind === 'dc' ? words.direct : words.alternating}`;
}

/** A device that is to be fetched; one of a control circuit is by others. */
function deviceText(
  of: Device,
  { figures, required }: Pick<PlannedProtector, 'figures' | 'required'>,
  { device: words }: CrewPackWords,
): string {
  switch (of.because.code) {
    case 'overcurrent/not-needed':
    case 'overcurrent/ahead-of-disconnect':
    case 'overcurrent/grounded-only':
      return words.none;
    case 'overcurrent/circuit-will-do':
      return words.circuits;
    case 'overcurrent/by-maker-of-turbine':
      return words.byTurbine(sizeText(of), voltsText(required, words));
    case 'overcurrent/array-below':
      return words.circuitAtMost(figure(of.amps ?? 0, 'A'));
    case 'overcurrent/by-supply-of-control': {
      const rests = figures?.leadsRestOn ?? null;
      const sizes = [of.amps, rests?.on === 'supply' ? rests.amps : null].filter((one) => one !== null);
      return words.supply(sizes.length === 0 ? null : figure(Math.min(...sizes), 'A'));
    }
    default:
  }
  if (of.device === 'none') return words.none;
  const size = sizeText(of);
  const volts =
    of.volts === null
      ? ''
      : [
          figure(Math.ceil(of.volts - 1e-6), 'V'),
          of.dc ? words.direct : '',
          of.straight ? words.straight : '',
        ]
          .filter((one) => one !== '')
          .join(' ');
  return [
    of.device === 'unknown' ? '' : words.names[of.device],
    of.poles === null ? '' : words.poles(of.poles),
    size === '' ? words.fillIn : size,
    volts,
    of.interrupting === null ? '' : words.interrupts(current(neededCurrent(of.interrupting))),
  ]
    .filter((one) => one !== '')
    .join(', ');
}

/**
 * The overcurrent devices of a housing in the crew's language, each once: with their ports where they differ, `one at each port` where
 * several are alike.
 */
export function crewDevices(
  protector: Pick<PlannedProtector, 'overcurrent' | 'figures' | 'required'>,
  words: CrewPackWords,
): string[] {
  const { overcurrent } = protector;
  const texts = overcurrent.map((device) => deviceText(device, protector, words));
  const [first] = texts;
  if (first === undefined || texts.length === 1) return texts;
  if (texts.every((one) => one === first)) return [`${first}; ${words.device.eachPort}`];
  return overcurrent.map(({ port }, index) => `${crewPort(port, words)}: ${texts[index] ?? ''}`);
}
