import { z } from 'zod';
import { reasonKey, type Reason } from '../../model/reason.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { PlannedBand, Probes } from '../../model/planned-measuring.js';
import { conductorText } from '../../words/conductors.js';
import { say } from '../../words/reasons/say.js';
import { notKnown, plainNumber } from '../parts/figures.js';

export const ReadingRowSchema = z.object({
  /** `L1, L2 to ground`. */
  between: z.string(),
  /** `110 to 127 V AC`. */
  band: z.string(),
  reads: z.string(),
});

/** What a wiring note says of measuring. */
interface MeasuringView {
  /** Why nothing is opened or measured here; empty: it may be. */
  readonly doNotOpen: string;
  /** What is on and what is off while the readings are taken. */
  readonly measuredState: string;
  readonly readings: z.infer<typeof ReadingRowSchema>[];
  readonly watch: string[];
  readonly meter: string;
  readonly clothing: string;
}

/** The readings of a housing band by band; beneath them once each how a ground fault shows and when a reading is due again. */
export function measuringView({ wiring: { measuring } }: PlannedProtector): MeasuringView {
  const { state, meter, clothing } = measuring;
  const isClosed = state?.code === 'measure-state/do-not-open';
  const bands = isClosed ? [] : measuring.bands;
  return {
    doNotOpen: isClosed ? say(state) : '',
    measuredState: state === null || isClosed ? 'what feeds this place on' : say(state),
    readings: bands.map((band) => ({
      between: betweenText(band.between),
      band: bandText(band),
      reads: say(band.reads),
    })),
    watch: saidOnce(bands.flatMap(({ fault, due }) => [fault, due])),
    meter: isClosed ? '' : meter === null ? notKnown('no meter is named') : say(meter.says),
    clothing: clothing === null ? '' : say(clothing.says),
  };
}

/** What readings outside their figures may mean, and how a ground fault shows, once each for the whole job. */
export function outsideTexts({ protectors }: Plan): string[] {
  const bands = protectors.flatMap(({ wiring }) => wiring.measuring.bands);
  return saidOnce(bands.flatMap(({ below, above, fault }) => [below, above, fault]));
}

function saidOnce(reasons: readonly (Reason | null)[]): string[] {
  const found = new Map<string, string>();
  for (const one of reasons) if (one !== null) found.set(reasonKey(one), say(one));
  return [...found.values()];
}

/** Signs stand with the conductors where they differ. */
function betweenText(between: readonly Probes[]): string {
  const isMixed = new Set(between.map(({ sign }) => sign)).size > 1;
  const each = between.map(({ wire, to, sign }) => {
    const one = to === null ? conductorText(wire) : `${conductorText(wire)} to ${conductorText(to)}`;
    return isMixed ? `${one} (${signText(sign)})` : one;
  });
  return `${each.join(', ')}${between.every(({ to }) => to === null) ? ' to ground' : ''}`;
}

const signText = (sign: Probes['sign']): string => (sign === null ? '' : sign === '-' ? '−' : '+');

/** The figures between which a sound system stands, with their sign where it tells something. */
function bandText({ between, low, high, current }: PlannedBand): string {
  if (high === null) return notKnown('ask before you connect');
  const of = current === null ? ' V' : ` V ${current.toUpperCase()}`;
  const signs = new Set(between.map(({ sign }) => sign));
  const [sign = null] = signs;
  const signed = (volts: number): string =>
    `${signs.size > 1 || volts === 0 ? '' : signText(sign)}${plainNumber(volts)}`;
  return low === null ? `at most ${signed(high)}${of}` : `${signed(low)} to ${signed(high)}${of}`;
}
