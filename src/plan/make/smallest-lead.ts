import { computed, taken } from '../../electrical/working.js';
import type { Part, WireSize } from '../../model/catalogue.js';
import { isNec, type Basis } from '../../model/editions.js';
import type { Origin } from '../../model/fact.js';
import type { PlannedProtector } from '../../model/plan.js';
import { hundredths } from '../../model/rounding.js';
import { leadName } from '../../model/lead.js';
import { amperes } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import { subject, type Step } from '../../model/step.js';
import { deviceAheadOf } from '../../rules/lead-ampacity.js';
import { leadDuty, overcurrentWay, type OvercurrentPlace } from '../../rules/lead-duty.js';
import { smallestLeads } from '../../rules/lead-size.js';
import { LEAD_SIZE_RULE } from '../../rules/rulebook.js';
import { isDeviceUnknown, leadsToPlan, type LeadFloor, type MetalLeads } from '../../rules/smallest-lead.js';
import { calculation, type Calculated } from '../context/calculation.js';
import type { Selected } from '../choose/select.js';
import { leadAreaOf } from '../choose/planned-lead.js';
import { memo } from '../context/memo.js';

/** Those that the terminals take; where they take none, what would be asked of them. */
function told(leads: readonly MetalLeads[]): readonly MetalLeads[] {
  const fitting = leads.filter((one) => one.fits);
  return fitting.length > 0 ? fitting : leads.filter((one) => one.beyond === undefined);
}

/**
 * The smallest leads by name, several metals joined: `14 AWG Cu; 12 AWG Al`.
 * @param lead which of the two
 * @returns null where none is known
 */
export function smallestLeadText(leads: readonly MetalLeads[], lead: 'line' | 'ground'): string | null {
  const names = told(leads).map((one) => leadName({ gauge: one[lead].name, metal: one.metal }));
  return names.length === 0 ? null : names.join('; ');
}

/**
 * On what the smallest leads rest beside the code and the terminals of the part, where somebody has to know it: a device that
 * isn’t known yet, the part’s instructions, or the supply of a control circuit.
 * @returns null where nothing of the kind decides
 */
export function leadsRestOn(
  { leads, overcurrent, part }: Pick<Selected, 'leads' | 'overcurrent' | 'part'>,
  basis: Basis,
): NonNullable<PlannedProtector['figures']>['leadsRestOn'] {
  const printed = told(leads);
  if (!part || printed.length === 0) return null;
  const places = overcurrent.map(({ place }) => place);
  if (!isNec(basis)) return byClassAlone(places, part);
  if (isDeviceUnknown({ basis, places, part })) return { on: 'device', amps: null, plannedBear: false };
  const spared: number[] = [];
  for (const one of printed) if (one.spared !== undefined) spared.push(one.spared);
  if (spared.length > 0) {
    const amps = Math.max(...spared);
    const smallest = leadsToPlan(leads);
    const bears = deviceAheadOf(leadAreaOf(part, smallest), smallest?.metal ?? 'copper');
    const isOfDevices = places.every((place) => leadDuty(place, part).of === 'device');
    const plannedBear = isOfDevices && bears !== undefined && amps <= bears;
    return { on: 'instructions', amps: hundredths(amps), plannedBear };
  }
  if (part.leadByInstructions === true || places.every((p) => overcurrentWay(p, part) !== 'control'))
    return null;
  const most = printed.flatMap(
    ({ metal, line, ground }) => deviceAheadOf(Math.min(line.area, ground.area), metal) ?? [],
  );
  return { on: 'supply', amps: most.length === 0 ? null : Math.min(...most), plannedBear: false };
}

/** Under `iec` the least goes by class and terminals: no table at hand holds it against what is ahead of the leads. */
function byClassAlone(places: readonly OvercurrentPlace[], part: Part): ReturnType<typeof leadsRestOn> {
  if (part.leadByInstructions === true) return null;
  let amps: number | undefined;
  for (const place of places) {
    const duty = leadDuty(place, part);
    if (duty.of === 'nothing') continue;
    if (duty.amperes === undefined) return { on: 'device', amps: null, plannedBear: false };
    amps = Math.max(amps ?? 0, duty.amperes);
  }
  return amps === undefined ? null : { on: 'device', amps: hundredths(amps), plannedBear: false };
}

const calculations = memo<readonly Calculated[]>();

/** How the smallest leads came about: one a metal. */
export function smallestLeadCalculations(
  leads: readonly MetalLeads[],
  part: Part,
  basis: Basis,
): readonly Calculated[] {
  return calculations(leads, `${basis}|${part.file}|${part.line}`, () =>
    told(leads).map((one) =>
      calculation(LEAD_SIZE_RULE.id, reason('calculation/smallest-lead', { metal: one.metal }), {
        value: one.line.area,
        unit: 'mm²',
        steps: stepsOf(one, part, basis),
      }),
    ),
  );
}

function stepsOf(one: MetalLeads, part: Part, basis: Basis): readonly Step[] {
  const { source } = smallestLeads(basis, part.iecClass);
  const origin: Origin = { from: 'catalogue', file: part.file, line: part.line, column: '' };
  const steps = one.floors.map((floor) => floorStep(floor, { source, origin }));
  const uses = [...new Set(steps.map((step) => step.symbol))];
  if (one.spared !== undefined) {
    const ahead = reason('source/lead-by-instructions');
    steps.push(taken('Iahead', subject('lead/by-instructions'), one.spared, 'A', 'stated', ahead));
  }
  const result = (symbol: string, of: 'lead/line' | 'lead/ground' | 'lead/either', size: WireSize): Step =>
    computed(symbol, subject(of, { gauge: leadName({ gauge: size.name, metal: one.metal }) }), {
      value: size.area,
      unit: 'mm²',
      sure: 'computed',
      uses,
      source,
    });
  if (one.line === one.ground) return [...steps, result('Slead', 'lead/either', one.line)];
  return [...steps, result('Sground', 'lead/ground', one.ground), result('Sline', 'lead/line', one.line)];
}

function floorStep(
  { by, lead, size, amperes: amps }: LeadFloor,
  {
    source,
    origin,
  }: { readonly source: ReturnType<typeof smallestLeads>['source']; readonly origin: Origin },
): Step {
  switch (by) {
    case 'code':
      return taken(
        'Scode',
        subject('lead/code', { lead: lead ?? 'both' }),
        size.area,
        'mm²',
        lead === undefined ? 'published' : 'memory',
        source,
      );
    case 'terminals':
      return taken('Sterm', subject('lead/terminals'), size.area, 'mm²', 'stated', origin);
    case 'device':
      return taken(
        'Sdev',
        subject('lead/behind-device', { device: amperes(amps), gauge: size.name }),
        size.area,
        'mm²',
        'memory',
        reason('source/small-conductors'),
      );
    case 'current':
      return taken(
        'Scur',
        subject('lead/for-current', { current: amperes(amps), gauge: size.name }),
        size.area,
        'mm²',
        'memory',
        reason('source/ampacity'),
      );
  }
}
