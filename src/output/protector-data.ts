import { isObject } from '../words/english-beside.js';
import { BY_INSTRUCTIONS } from '../words/protectors.js';

type Json = Readonly<Record<string, unknown>>;

/** The objects of a list, each mapped; what is no list stays as it is, for the schema to refuse. */
export function eachOf(list: unknown, map: (one: Json) => Json): unknown {
  return Array.isArray(list) ? list.map((one: unknown) => (isObject(one) ? map(one) : one)) : list;
}

/** What the catalogue states of a part, as `plan.json` has it. */
export function statedOf(text: unknown): unknown {
  return text === BY_INSTRUCTIONS || text === '' ? null : text;
}

/**
 * The data of a protector of a `plan.json` of this version: the texts beside its conductors, system and grounding left out.
 * @param protector as parsed, its reasons data already
 */
export function protectorData({ systemCode, groundingCode, wiring, ...rest }: Json): Json {
  return {
    ...rest,
    system: systemCode,
    grounding: groundingCode,
    wiring: isObject(wiring) ? wiringData(wiring) : wiring,
  };
}

function wiringData(wiring: Json): Json {
  return {
    ...wiring,
    overcurrent: statedOf(wiring['overcurrent']),
    torque: statedOf(wiring['torque']),
    wireRange: statedOf(wiring['wireRange']),
  };
}
