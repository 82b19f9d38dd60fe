/** A lead by its gauge, as the trade and the tables name it (`14 AWG`, `6 mm2`), and its metal. */
export interface Lead {
  readonly gauge: string;
  readonly metal: 'copper' | 'aluminium';
}
