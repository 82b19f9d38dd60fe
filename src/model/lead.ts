/** A lead by its gauge, as the trade and the tables name it (`14 AWG`, `6 mm2`), and its metal. */
export interface Lead {
  readonly gauge: string;
  readonly metal: 'copper' | 'aluminium';
}

const SYMBOLS: Readonly<Record<Lead['metal'], string>> = { copper: 'Cu', aluminium: 'Al' };

/** A lead by the name that the contract and the trade have for it: `14 AWG Cu`, `6 mm2 Cu`. */
export function leadName({ gauge, metal }: Lead): string {
  return `${gauge} ${SYMBOLS[metal]}`;
}
