import type { PlannedProtector } from '../../model/plan.js';
import { figure, neededCurrent, neededVolts } from '../../words/figures.js';
import type { CrewNoteWords } from '../../words/languages/crew-note-words.js';
import { unparted } from '../../words/unparted.js';

type Device = PlannedProtector['overcurrent'][number];
type Words = CrewNoteWords['device'];

/** V; a least rating, with the kind of current where it is direct. */
function ratedVolts({ volts, dc, straight }: Device, all: CrewNoteWords): string[] {
  if (volts === null) return [];
  const kind = dc ? ` ${all.systems.dc}` : '';
  const text = all.device.volts(unparted(`${String(neededVolts(volts))} V${kind}`));
  return [straight ? `${text}, ${all.device.straight}` : text];
}

/** A device as the picture has it. */
export interface NoteDevice {
  /** Figures apart from each other, a line or two each; the first says what it is. */
  readonly lines: readonly string[];
  /** False: the circuit's own, or none. */
  readonly isFitted: boolean;
}

const amperes = (value: number): string => unparted(figure(value, 'A'));

function sizeOf({ amps, leastAmps }: Device, words: Words): string {
  if (amps !== null) return words.size(leastAmps === null ? null : amperes(leastAmps), amperes(amps));
  return leastAmps === null ? words.sizeByInstructions : words.atLeast(amperes(leastAmps));
}

function interrupting({ interrupting: least }: Device, words: Words): string {
  if (least === null) return words.interrupts('______\u00a0kA');
  const needed = neededCurrent(least);
  const current = needed < 1000 ? figure(needed, 'A') : figure(needed / 1000, 'kA');
  return words.interrupts(unparted(`≥ ${current}`));
}

/** What is bought and fitted, figure by figure: the current that it interrupts is the one that the schedule names. */
function fitted(device: Device, all: CrewNoteWords): string[] {
  const { device: kind, poles, dc } = device;
  const words = all.device;
  const name = kind === 'breaker' || kind === 'fuse' || kind === 'either' ? words.names[kind] : words.unknown;
  return [
    poles === null ? name : `${name}, ${words.poles(poles)}`,
    sizeOf(device, words),
    ...ratedVolts(device, all),
    // Of a DC device whose current nobody knows a blank would stand for good: the schedule asks for none either.
    ...(poles === null || (dc && device.interrupting === null) ? [] : [interrupting(device, words)]),
  ];
}

/** The overcurrent device of a housing at one port, in the crew's language. */
export function noteDevice(
  device: Device,
  { figures, wiring, required }: PlannedProtector,
  all: CrewNoteWords,
): NoteDevice {
  const words = all.device;
  const { amps, leastAmps } = device;
  const own = (...lines: string[]): NoteDevice => ({ lines, isFitted: false });
  switch (device.because.code) {
    case 'overcurrent/not-needed':
      return own(words.notNeeded);
    case 'overcurrent/ahead-of-disconnect':
      return own(words.listedOnly);
    case 'overcurrent/grounded-only':
      return own(words.none);
    case 'overcurrent/circuit-will-do':
      return own(
        words.circuitsOwn,
        ...(amps === null ? [] : [sizeOf({ ...device, leastAmps: null }, words)]),
      );
    case 'overcurrent/array-below':
      return own(words.none, ...(amps === null ? [] : [words.circuitAtMost(amperes(amps))]));
    case 'overcurrent/by-supply-of-control': {
      const rest = figures?.leadsRestOn ?? null;
      const sizes = [amps, rest?.on === 'supply' ? rest.amps : null].filter((one) => one !== null);
      return own(
        words.class2,
        ...(sizes.length === 0 ? [] : [words.elseAtMost(amperes(Math.min(...sizes)))]),
      );
    }
    case 'overcurrent/by-maker-of-turbine':
      return {
        lines: [
          words.byTurbine,
          ...(amps === null && leastAmps === null ? [] : [sizeOf(device, words)]),
          ...ratedVolts({ ...device, volts: required.mcov, dc: required.current === 'dc' }, all),
        ],
        isFitted: true,
      };
    case 'overcurrent/no-part':
      return own(words.unknown);
    default:
      // A plan that an earlier shuntbook wrote has the catalogue's words alone.
      return device.device === 'none'
        ? own(words.none)
        : device.device === 'unknown' && amps === null
          ? own(wiring.overcurrent ?? words.unknown)
          : { lines: fitted(device, all), isFitted: true };
  }
}
