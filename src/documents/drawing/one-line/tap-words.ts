import { isNec, type Basis } from '../../../model/editions.js';
import type { PlannedProtector } from '../../../model/plan.js';
import { deviceInFew } from '../../../words/devices-in-short.js';
import { figure, neededVolts } from '../../../words/figures.js';
import { longestLead, type LengthUnit } from '../../../words/lengths.js';
import { isDeviceBlank, isLeadBlank } from '../../parts/blanks.js';
import { BLANK, NO_BREAK, onLines, unbroken, type Line } from './measure.js';
import { tagsInShort } from './tags.js';
import type { Tap } from './tree.js';

/** Width of text at a protector, mm. */
const TAP = 36;

/** The device of the first port as the schedule has it, without its voltage; a blank where it is to be filled in. */
function deviceWords({ overcurrent }: PlannedProtector): string {
  const [device] = overcurrent;
  if (!device) return `device ${BLANK} A`;
  const told = deviceInFew({ ...device, volts: null }).replace(/\(.*\)$/, unbroken);
  if (!isDeviceBlank(device))
    return device.device === 'none' || device.device === 'unknown' ? `device: ${told}` : told;
  return `device ${BLANK}${told === '' ? ' A' : `, ${unbroken(told)}`}`;
}

/** What isn't known of a part is no blank to fill in here: none is chosen, or nobody states it of one that is there already. */
const NOT_STATED = 'not stated';

function typeWords({ part, existing, partDetails }: PlannedProtector): string {
  if (part === null && existing === null) return 'no part chosen';
  const type = partDetails?.type ?? partDetails?.iecClass ?? null;
  return `type ${type === null ? NOT_STATED : type}`;
}

function voltageWords(protector: PlannedProtector, basis: Basis): string {
  const name = isNec(basis) ? 'MCOV' : 'Uc';
  const given = protector.figures?.mcov ?? null;
  if (given !== null) return `${name} ${figure(given, 'V')}`;
  const needed = protector.required.mcov;
  if (needed !== null) return `${name} \u2265 ${figure(neededVolts(needed), 'V')}`;
  return `${name} ${NOT_STATED}`;
}

/** What is told of protectors that hang at one place. */
export function tapLines({ protectors, housings, again }: Tap, basis: Basis, unit: LengthUnit): Line[] {
  const [protector] = protectors;
  if (!protector) return [];
  const tags = tagsInShort(protectors.map((p) => p.tag));
  const tag = `${tags}${NO_BREAK}${protector.existing === null ? '(N)' : '(E)'}`;
  if (again) return onLines(`${tags}, same housing${housings > 1 ? 's' : ''}`, TAP, true);
  const { figures, wiring } = protector;
  const stated = wiring.leadGauge === '' ? (figures?.smallestLead ?? '') : wiring.leadGauge;
  const gauge = isLeadBlank(protector)
    ? `${BLANK} ${isNec(basis) ? 'AWG' : 'mm\u00b2'}`
    : stated.replaceAll('mm2', 'mm\u00b2');
  const longest = longestLead(wiring, unit);
  return [
    ...onLines(tag, TAP, true),
    ...(housings > 1 ? onLines(`${housings} housings, each:`, TAP) : []),
    ...[
      `${unbroken(typeWords(protector))}, ${unbroken(voltageWords(protector, basis))}`,
      deviceWords(protector),
      `lead ${unbroken(`${gauge} \u2264 ${longest}`)}`,
    ].flatMap((text) => onLines(text, TAP)),
  ];
}
