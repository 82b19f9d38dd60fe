import type { PlannedProtector } from '../../../model/plan.js';
import { leadLength } from '../../../words/lengths.js';
import type { Basis } from '../../../model/editions.js';
import { current, levelVolts, neededVolts } from './paper-figures.js';

/** A rating and what is asked of it: `20 kA ≥ 10 kA`. */
function held(has: number, asked: number, tell: (value: number) => string, needed = tell): string {
  return `${tell(has)} ${has >= asked ? '≥' : '<'} ${needed(asked)}`;
}

const known = (value: number | null | undefined): value is number => value !== null && value !== undefined;

/** `In 20 kA ≥ 10 kA`; `` where either isn't known. */
export function dischargeHeld({ figures, required }: PlannedProtector): string {
  if (!known(figures?.in) || required.in === null) return '';
  return `In ${held(figures.in, required.in, current)}`;
}

/** `MCOV 150 V ≥ 138 V`, the figure asked rounded up. */
export function voltageHeld({ figures, required }: PlannedProtector, name: string): string {
  if (!known(figures?.mcov) || required.mcov === null) return '';
  // A rating that lies between the figure and its next volt meets it: then the bare figures are told.
  const isBetween = figures.mcov >= required.mcov && figures.mcov < Number(neededVolts(required.mcov));
  const asked = isBetween ? `${String(required.mcov)} V` : `${neededVolts(required.mcov)} V`;
  return `${name} ${held(
    figures.mcov,
    required.mcov,
    (v) => `${String(v)} V`,
    () => asked,
  )}`;
}

/** `25 kA ≥ 10 kA`; where the current isn't known or not all of it, up to what the part holds. */
export function shortCircuitHeld({ figures, required, ports }: PlannedProtector): string {
  if (ports.every(({ port }) => port === 'terminals')) return '';
  if (!known(figures?.sccr))
    return required.sccr === null ? '' : `rating not known, ${current(required.sccr)} there`;
  if (required.sccr === null) return `${current(figures.sccr)}; fault current to be filled in`;
  const open = required.backfeedUnknown.length > 0;
  return `${held(figures.sccr, required.sccr, current)}${open ? ` and what ${required.backfeedUnknown.join(', ')} sends back` : ''}`;
}

/** `600 V + leads 190 V ≤ 80 % of 2500 V (assumed)`: level and leads against a share of the withstand. */
export function levelHeld({ figures }: PlannedProtector, share: number): string {
  if (!known(figures?.up) || !known(figures.leadVoltage) || !known(figures.impulseWithstand)) return '';
  const { up, leadVoltage, impulseWithstand, withstandAssumed, upBasis } = figures;
  const sign = up + leadVoltage <= share * impulseWithstand ? '≤' : '>';
  const part = share === 1 ? '' : `${String(share * 100)} % of `;
  return `${upBasis ?? 'level'} ${levelVolts(up)} V + leads ${levelVolts(leadVoltage)} V ${sign} ${part}${String(impulseWithstand)} V${withstandAssumed ? ' (assumed)' : ''}`;
}

/** `10 AWG ≥ 12 AWG Cu, line plus ground at most 19.7 in`. */
export function leadsHeld({ figures, wiring }: PlannedProtector, basis: Basis): string {
  const line = figures?.smallestLead ?? null;
  const ground = figures?.smallestGroundLead ?? null;
  const least = line === null ? '' : line === ground || ground === null ? line : `${line}, ground ${ground}`;
  const gauge = wiring.leadGauge;
  const size = gauge === '' ? least : least === '' ? gauge : `${gauge} (least ${least})`;
  const length = `line plus ground at most ${leadLength(wiring.leadLengthLimit, basis)}`;
  return [size, length].filter((one) => one !== '').join(', ');
}

/** A figure of one of a protector's calculations, by the code of its last step; undefined where it has none. */
export function resultOf({ calculations }: PlannedProtector, code: string): number | undefined {
  return calculations.map(({ steps }) => steps.at(-1)).find((last) => last?.code === code)?.value;
}

/** The steps of all calculations of a protector that bear a code. */
export function stepsOf(
  protector: PlannedProtector,
  code: string,
): PlannedProtector['calculations'][number]['steps'] {
  return protector.calculations.flatMap(({ steps }) => steps.filter((one) => one.code === code));
}
