import { isNec, type Basis } from '../model/editions.js';
import type { Kind } from '../model/words.js';
import { kindWords } from './kind-words.js';

/** An AC system as a drawing writes it. */
export interface SystemWords {
  /** `120/240 V 1Ø 3W`. */
  readonly system: string;
  /** `L1 L2 N`. */
  readonly conductors: string;
}

const SYSTEMS: Readonly<
  Record<string, readonly [volts: string, phases: 1 | 3, conductors: string, more?: string]>
> = {
  '120': ['120', 1, 'L1 N'],
  '277': ['277', 1, 'L1 N'],
  '347': ['347', 1, 'L1 N'],
  '120/240': ['120/240', 1, 'L1 L2 N'],
  '120/208': ['120/208', 1, 'L1 L2 N'],
  '208Y/120': ['208Y/120', 3, 'L1 L2 L3 N'],
  '240': ['240', 1, 'L1 L2'],
  '208': ['208', 1, 'L1 L2'],
  '480': ['480', 1, 'L1 L2'],
  '240/120 high-leg': ['240/120', 3, 'L1 L2 L3 N', 'high leg'],
  '240 delta': ['240', 3, 'L1 L2 L3', 'delta'],
  '480Y/277': ['480Y/277', 3, 'L1 L2 L3 N'],
  '480 delta': ['480', 3, 'L1 L2 L3', 'delta'],
  '600Y/347': ['600Y/347', 3, 'L1 L2 L3 N'],
  '230': ['230', 1, 'L1 N'],
  '400Y/230': ['400/230', 3, 'L1 L2 L3 N'],
};

/** A system by its phases and wires: `120/240 V 1Ø 3W` with a NEC basis, `400/230 V 3-ph 4W` else; a word that it doesn't know, as it stands. */
export function acSystemWords(system: string, basis: Basis): SystemWords {
  const [volts, phases, conductors, more] = SYSTEMS[system] ?? [system, 0, ''];
  if (phases === 0) return { system, conductors };
  const wires = conductors.split(' ').length;
  const phase = isNec(basis) ? `${phases}Ø` : `${phases}-ph`;
  return { system: `${volts} V ${phase} ${wires}W${more === undefined ? '' : ` ${more}`}`, conductors };
}

const EQUIPMENT: { readonly [K in Kind]?: string } = {
  service: 'utility service',
  array: 'PV array',
  combiner: 'PV combiner',
  'grid-tie-inverter': 'grid-tie inverter',
  'inverter-charger': 'inverter-charger',
};

/** What is called otherwise in the words of the IEC. */
const UNDER_IEC: { readonly [K in Kind]?: string } = {
  service: 'origin of the installation',
  panel: 'distribution board',
};

/** A kind of equipment in the words of the trade: `PV array`, `grid-tie inverter`. */
export function equipmentWords(kind: Kind, basis: Basis): string {
  return (isNec(basis) ? undefined : UNDER_IEC[kind]) ?? EQUIPMENT[kind] ?? kindWords(kind);
}
