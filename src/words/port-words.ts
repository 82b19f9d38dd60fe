import { tagList } from './tag-list.js';

/** Ports as the trade names them; DC inputs have their number beside. */
const WORDS: Readonly<Record<string, string>> = {
  service: 'service',
  feeder: 'feeder',
  'dc-in': 'DC supply',
  battery: 'battery bus',
  'ac-in': 'AC input',
  'ac-in-2': 'AC input 2',
  'ac-out': 'AC output',
  output: 'output',
  terminals: 'control circuit',
};

const DC_INPUT = /^dc-in-(\d+)$/;

/** A port of an equipment in trade words: `DC input 1`, `AC output`, `service`. */
export function portInWords(port: string): string {
  const input = DC_INPUT.exec(port)?.[1];
  return input === undefined ? (WORDS[port] ?? port) : `DC input ${input}`;
}

/** Several ports of one equipment, in natural order: `DC inputs 1, 2`, `DC inputs 1 to 26`, `AC input and AC output`. */
export function portsInWords(ports: readonly string[]): string {
  const inputs = ports.map((port) => DC_INPUT.exec(port)?.[1]);
  const numbers = inputs.filter((one) => one !== undefined);
  if (ports.length > 1 && numbers.length === ports.length) return `DC inputs ${tagList(numbers)}`;
  return ports.map(portInWords).join(' and ');
}
