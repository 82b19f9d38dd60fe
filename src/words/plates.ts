/** The words of plates that the NEC asks for; those of 408.3(F) are its own. Values from memory. */
export const PLATES = {
  word: 'CAUTION',
  /** NEC 408.3(F)(1); the high leg is phase B (408.3(E)). */
  highLeg: (volts: number): string => `B phase has ${volts} volts to ground`,
  /** NEC 408.3(F)(2). */
  ungrounded: (volts: number): string => `Ungrounded system operating ${volts} volts between conductors`,
  /** NEC 110.24(A) asks for the figure and the date, and fixes no words. */
  faultCurrent: (amps: number): string => `Available fault current: ${amps.toLocaleString('en-US')} A`,
  date: 'Date of calculation',
} as const;
