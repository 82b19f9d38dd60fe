import { reason } from '../model/reason.js';
import { CONDUCTORS, type Conductor, type ProtectedGrounding } from '../model/words.js';
import type { Wire } from '../model/wire.js';
import { isObject } from '../words/english-beside.js';
import { guardsControl } from '../words/protectors.js';
import { eachOf, statedOf } from './protector-data.js';

type Json = Readonly<Record<string, unknown>>;

// A plan of version 1 holds texts alone. Here, and nowhere else, they are taken apart.

const CONDUCTOR = new RegExp(`^(?:(\\S+) )?(${CONDUCTORS.join('|')})( \\(doubled\\))?$`);

/**
 * The conductor that a text names: `ac-in L1`, `L1 (doubled)`.
 * @returns undefined where it names none
 */
export function wireOf(text: string): Wire | undefined {
  const [, port, name, doubled] = CONDUCTOR.exec(text) ?? [];
  return name === undefined
    ? undefined
    : { port: port ?? null, name: name as Conductor, doubled: doubled !== undefined };
}

/** A sentence as a reason: all that is known of it is its text. */
function asWritten(text: unknown): unknown {
  return typeof text === 'string' ? reason('earlier/as-written', { text }) : text;
}

const allAsWritten = (texts: unknown): unknown => (Array.isArray(texts) ? texts.map(asWritten) : texts);

function wired({ conductor, ...rest }: Json): Json {
  return { ...rest, wire: typeof conductor === 'string' ? wireOf(conductor) : undefined };
}

/**
 * The data of a protector of a `plan.json` of version 1.
 * @param protector as parsed
 */
export function earlierProtector(protector: Json): Json {
  const { system, wiring, protects, position } = protector;
  return {
    ...protector,
    protects: asWritten(protects),
    position: asWritten(position),
    system: system === 'not stated' || system === '' ? null : system,
    grounding: groundingOf(protector),
    channels: eachOf(protector['channels'], (channel) => ({
      ...wired(channel),
      indicator: eachOf(channel['indicator'], (one) => ({ ...one, because: asWritten(one['because']) })),
    })),
    wiring: isObject(wiring) ? earlierWiring(wiring) : wiring,
  };
}

function earlierWiring(wiring: Json): Json {
  return {
    ...wiring,
    groundTo: asWritten(wiring['groundTo']),
    smallestLead: asWritten(wiring['smallestLead']),
    notes: allAsWritten(wiring['notes']),
    overcurrent: statedOf(wiring['overcurrent']),
    torque: statedOf(wiring['torque']),
    wireRange: statedOf(wiring['wireRange']),
    unprotected: eachOf(wiring['unprotected'], (one) => ({
      ...wired(one),
      because: asWritten(one['because']),
    })),
  };
}

const POLE = / grounded$/;

function groundingOf(protector: Json): unknown {
  const { grounding, ports } = protector;
  if (typeof grounding !== 'string') return grounding;
  if (grounding === 'grounding not known') return 'not-known';
  if (grounding !== '') return grounding.replace(POLE, '');
  const ofControl = Array.isArray(ports) && guardsControl({ ports: ports as { port: string }[] });
  return ofControl ? controlGrounding(protector['channels']) : null;
}

/** The wires of a control circuit: that plan told their grounding by their lights alone. */
function controlGrounding(channels: unknown): ProtectedGrounding {
  const lights: readonly {
    readonly wire: Wire | undefined;
    readonly cause: unknown;
    readonly because: unknown;
  }[] = (Array.isArray(channels) ? channels : []).filter(isObject).flatMap(({ conductor, indicator }) =>
    (Array.isArray(indicator) ? indicator : []).filter(isObject).map(({ cause, because }) => ({
      wire: typeof conductor === 'string' ? wireOf(conductor) : undefined,
      cause,
      because,
    })),
  );
  const grounded = lights.find(({ cause }) => cause === 'grounded-conductor')?.wire?.name;
  if (grounded === 'negative' || grounded === 'positive') return grounded;
  if (grounded === 'N') return 'neutral';
  const floating = lights.filter(({ cause }) => cause === 'floating').map(({ because }) => String(because));
  const known = floating.length > 0 && floating.every((text) => text.startsWith('neither wire is tied'));
  return known ? 'floating' : 'not-known';
}
