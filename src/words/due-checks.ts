import type { DueCheck } from '../model/register.js';

const KINDS: Readonly<Record<Exclude<DueCheck['kind'], ''>, string>> = {
  volts: 'Read the volts',
  light: 'Look at the light',
  flag: 'Look at the flag',
};

/** What is to be done: `Look at the light of P-3 while: night`. */
export function checkTitle({ what, kind, state, protector }: DueCheck): string {
  if (what === 'look' || kind === '') return `Yearly look at ${protector}`;
  return `${KINDS[kind]} of ${protector}${state === '' || state === 'always' ? '' : ` while: ${state}`}`;
}

/**
 * What a calendar says of a check to whoever goes there: what to look for, and how far to go.
 * @param check of one protector
 * @returns one line a fact
 */
export function checkDetails(check: DueCheck): string[] {
  const { place, part, serials, conductors, expected, kind } = check;
  const lines = [
    place === '' ? '' : `Where: ${place}`,
    part === '' ? '' : `Part: ${part}`,
    serials.length === 0 ? '' : `Serial: ${serials.join('; ')}`,
    conductors.length === 0 ? '' : `Of: ${conductors.join('; ')}`,
    expected.length === 0 ? '' : `Expected: ${expected.join('; ')}`,
    kind === 'volts' ? VOLTS : LOOK,
    DEFERS,
  ];
  return lines.filter((line) => line !== '');
}

const LOOK =
  'CAUTION: look at lights and flags from outside, with every cover closed. A light that is not as expected: call a licensed electrician.';
const VOLTS =
  'DANGER: shock and arc flash. Volts are read by qualified persons alone, by the note of the protector in the closeout pack.';
const DEFERS = 'Local code, the authority having jurisdiction and licensed practice go before this calendar.';
