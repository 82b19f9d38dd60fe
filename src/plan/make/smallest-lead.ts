import { computed, taken } from '../../electrical/working.js';
import type { Part, WireSize } from '../../model/catalogue.js';
import type { Basis } from '../../model/editions.js';
import type { Origin } from '../../model/fact.js';
import { leadName } from '../../model/lead.js';
import { amperes } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import { subject, type Step } from '../../model/step.js';
import { smallestLeads } from '../../rules/lead-size.js';
import { LEAD_SIZE_RULE } from '../../rules/rulebook.js';
import type { LeadFloor, MetalLeads } from '../../rules/smallest-lead.js';
import { calculation, type Calculated } from '../context/calculation.js';
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
