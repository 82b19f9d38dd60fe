import type { Wire } from '../../model/wire.js';
import { crewPort } from '../../words/crew-devices.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';

const SIGNS: Readonly<Record<string, string>> = { positive: '+', negative: '−' };

/** A conductor in a few characters: `L1`, `+`, `AC input L1`. */
export function crewWire({ port, name }: Pick<Wire, 'port' | 'name'>, words: CrewPackWords): string {
  const sign = SIGNS[name] ?? name;
  return port === null ? sign : `${crewPort(port, words)} ${sign}`;
}
