import { figure, levelVolts, neededCurrent, neededVolts, plain } from '../../../words/figures.js';

/** A V that a place asks for beside what is given there: `462`. */
export function askedVolts(needed: number, given?: number | null): string {
  return plain(neededVolts(needed, given));
}

/** V of a level or of leads, to 10 V upwards, beside the withstand that it is held against. */
export function levelText(level: number, withstand?: number | null): string {
  return plain(levelVolts(level, withstand));
}

/** A current that is asked for or there, in kA, beside what is given there: three digits, upwards. */
export function askedKiloamperes(amperes: number, given?: number | null): string {
  const limit = given === null || given === undefined ? given : given / 1000;
  return plainFine(neededCurrent(amperes / 1000, limit));
}

/** A current in kA as the part has it. */
export function givenKiloamperes(amperes: number): string {
  return plainFine(amperes / 1000);
}

/** A current that is asked for or there, with its unit: `12.8 A`, `10 kA`. */
export function askedCurrent(amperes: number, given?: number | null): string {
  const of = neededCurrent(amperes, given);
  return of < 1000 ? figure(of, 'A') : `${plainFine(of / 1000)} kA`;
}

/** A rating as the part has it, with its unit. */
export function givenCurrent(amperes: number): string {
  return amperes < 1000 ? figure(amperes, 'A') : `${plainFine(amperes / 1000)} kA`;
}

/** Small figures in kA keep their digits. */
function plainFine(value: number): string {
  return String(Number(value.toPrecision(5)));
}
