import type { PlannedProtector } from '../model/plan.js';
import type { Wire } from '../model/wire.js';
import { conductorText } from './conductors.js';
import { BY_INSTRUCTIONS, groundingName, guardsControl, systemText } from './protectors.js';

type Json = Readonly<Record<string, unknown>>;

/** The same object with some of its entries replaced by others, in their place. */
function replaced<T extends object>(of: T, by: { readonly [K in keyof T]?: (value: T[K]) => Json }): Json {
  return Object.fromEntries(
    Object.entries(of).flatMap(([key, value]) => {
      const replace = (by as Readonly<Record<string, ((value: unknown) => Json) | undefined>>)[key];
      return replace ? Object.entries(replace(value)) : [[key, value]];
    }),
  );
}

const wire = (of: Wire): Json => ({ conductor: conductorText(of), wire: of });

/**
 * A protector as `plan.json` and `why --json` have it: beside the data the text of its conductors, its system and its grounding
 * (of a control circuit none, as only its wires have one), and words for what the catalogue leaves to the instructions.
 * @returns an object whose reasons are still data
 */
export function protectorInEnglish(protector: PlannedProtector): Json {
  const ofControl = guardsControl(protector);
  return replaced(protector, {
    system: (system) => ({ system: systemText(system), systemCode: system }),
    grounding: (grounding) => ({
      grounding: ofControl ? '' : groundingName(grounding),
      groundingCode: grounding,
    }),
    channels: (channels) => ({ channels: channels.map((channel) => replaced(channel, { wire })) }),
    wiring: (wiring) => ({ wiring: wiringInEnglish(wiring) }),
  });
}

function wiringInEnglish(wiring: PlannedProtector['wiring']): Json {
  return replaced(wiring, {
    measuring: (measuring) => ({
      measuring: {
        ...measuring,
        bands: measuring.bands.map(({ between, ...band }) => ({
          between: between.map(({ wire: one, to, sign }) => ({
            ...wire(one),
            against: to === null ? 'ground' : conductorText(to),
            to,
            sign,
          })),
          ...band,
        })),
      },
    }),
    overcurrent: (overcurrent) => ({ overcurrent: overcurrent ?? BY_INSTRUCTIONS }),
    torque: (torque) => ({ torque: torque ?? BY_INSTRUCTIONS }),
    wireRange: (wireRange) => ({ wireRange: wireRange ?? BY_INSTRUCTIONS }),
    unprotected: (unprotected) => ({ unprotected: unprotected.map((one) => replaced(one, { wire })) }),
  });
}
