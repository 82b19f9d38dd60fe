import type { PlannedProtector } from '../../../model/plan.js';
import { askedCurrent, askedVolts, givenCurrent } from './paper-figures.js';
import { operand } from './operand.js';

const sign = (isMet: boolean): string => (isMet ? '≥' : '<');

const known = (value: number | null | undefined): value is number => value !== null && value !== undefined;

/** True where the nominal discharge current that is asked for is the trade's, since no clause of the edition has a figure. */
function isAskedByPractice({ calculations }: PlannedProtector): boolean {
  return calculations.some(({ steps }) => {
    const last = steps.at(-1);
    return last?.code.startsWith('nominal-current/') === true && last.sure === 'common practice';
  });
}

/** `In 20 kA ≥ 10 kA`, with `(common practice)` where no clause asks for that; `` where either isn't known. */
export function dischargeHeld(protector: PlannedProtector): string {
  const { figures, required } = protector;
  const has = figures?.in;
  if (!known(has) || required.in === null) return '';
  const by = isAskedByPractice(protector) ? ' (common practice)' : '';
  return `In ${givenCurrent(has)} ${sign(has >= required.in)} ${askedCurrent(required.in, has)}${by}`;
}

/** `MCOV 150 V ≥ 138 V`, the figure asked rounded up. */
export function voltageHeld({ figures, required }: PlannedProtector, name: string): string {
  const has = figures?.mcov;
  if (!known(has) || required.mcov === null) return '';
  return `${name} ${String(has)} V ${sign(has >= required.mcov)} ${askedVolts(required.mcov, has)} V`;
}

/** `25 kA ≥ 10 kA`; where the current isn't known or not all of it, up to what the part holds. */
export function shortCircuitHeld({ figures, required, ports }: PlannedProtector): string {
  if (ports.every(({ port }) => port === 'terminals')) return '';
  const has = figures?.sccr;
  const { sccr: there, sccrAtLeast, backfeedUnknown } = required;
  if (!known(has)) return there === null ? '' : `rating not known, ${askedCurrent(there)} there`;
  if (there === null) {
    const some = sccrAtLeast === null ? '' : ` (at least ${askedCurrent(sccrAtLeast, has)})`;
    return `${givenCurrent(has)}, fault current to be filled in${some}`;
  }
  const open = backfeedUnknown.length === 0 ? '' : ' and what the converter sends back';
  return `${givenCurrent(has)} ${sign(has >= there)} ${askedCurrent(there, has)}${open}`;
}

/**
 * `VPR 600 V + leads 200 V ≤ 80 % of 2500 V (assumed)`: level and leads against a share of the withstand.
 * @param leads the lead voltage as the line has it; absent: to the volt, or finer where the line would tell something else with it
 */
export function levelHeld({ figures }: PlannedProtector, share: number, leads?: string): string {
  if (!known(figures?.up) || !known(figures.leadVoltage) || !known(figures.impulseWithstand)) return '';
  const { up, leadVoltage, impulseWithstand, withstandAssumed, upBasis } = figures;
  const holds = (volts: number): boolean => up + volts <= share * impulseWithstand;
  const isMet = holds(leadVoltage);
  const part = share === 1 ? '' : `${String(share * 100)} % of `;
  return `${upBasis ?? 'level'} ${String(up)} V + leads ${leads ?? operand(leadVoltage, (volts) => holds(volts) === isMet)} V ${isMet ? '≤' : '>'} ${part}${String(impulseWithstand)} V${withstandAssumed ? ' (assumed)' : ''}`;
}

/** `10 AWG (least 12 AWG Cu)`, with whose figure that is where it is thinner than a device asks for; of leads that differ, which is the other, in the word of the basis. */
export function leadsHeld(
  { figures, wiring }: PlannedProtector,
  other: 'ground' | 'earth' = 'ground',
): string {
  const line = figures?.smallestLead ?? null;
  const ground = figures?.smallestGroundLead ?? null;
  const least =
    line === null ? '' : line === ground || ground === null ? line : `${line}, ${other} ${ground}`;
  const gauge = metric(wiring.leadGauge);
  if (gauge === '') return metric(least);
  const by = figures?.leadsRestOn?.on === 'instructions' ? ' by instructions' : '';
  return least === '' ? gauge : `${gauge} (least ${metric(least)}${by})`;
}

/** A gauge as the catalogue has it, with its square millimetres as they are written. */
export function metric(gauge: string): string {
  return gauge.replaceAll(/\bmm2\b/g, 'mm²');
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
