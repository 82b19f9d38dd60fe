import type { PlacedNote } from '../model/message.js';
import type { RowField } from '../model/list.js';
import type { SiteEquipment, SitePort } from '../model/site.js';
import { isNec } from '../model/words.js';
import { AC_SYSTEM_DATA } from '../electrical/ac-systems.js';
import { batteriesOn } from '../site/battery-bus.js';
import { groundingOf } from '../site/grounding.js';
import { ultimateSources } from '../site/inputs.js';
import { unitOf } from '../site/premises.js';
import { about } from '../text/message-kit.js';
import { PLACE_MESSAGES } from '../text/messages/place.js';
import { byNaturalOrder } from '../text/natural-order.js';
import type { Selected } from './select.js';
import { poleGrounding } from './indicate.js';
import type { JobContext } from './survey-facts.js';

/** Rows by name, the most that one line names. */
const NAMED = 12;

/**
 * Every default that decides something, to be confirmed: one line for each field and value, with the rows that it stands in for.
 * @param selected the placements with their parts
 */
export function defaultsUsed(job: JobContext, selected: readonly Selected[]): readonly PlacedNote[] {
  const { site } = job;
  const notes: PlacedNote[] = [];
  const say = (field: RowField, value: string, rows: readonly SiteEquipment[], why: string): void => {
    const first = rows[0];
    if (!first) return;
    const tags = [...new Set(rows.map((r) => r.tag))];
    const more = tags.length > NAMED ? ` and ${tags.length - NAMED} more` : '';
    const p = { field, value, rows: tags.slice(0, NAMED).join(', ') + more, why };
    notes.push(about(PLACE_MESSAGES.defaultsUsed, p, first.tag, field));
  };
  const sayJob = (
    field: 'occupancy' | 'earthing' | 'lightning_protection' | 'flash_density' | 'surroundings',
    value: string,
    why: string,
  ): void => {
    notes.push(about(PLACE_MESSAGES.defaultsUsed, { field, value, rows: '', why }, '', field));
  };
  if (site.basis.byDefault)
    notes.push(about(PLACE_MESSAGES.basisDefault, { basis: site.basis.value }, '', 'basis'));
  const nec = isNec(site.basis.value);
  const placed = selected.flatMap((s) => s.placement.ports);
  const power = selected.filter((s) => s.requirement.circuit === 'power').flatMap((s) => s.placement.ports);
  const has = (kinds: readonly string[]): boolean => site.equipments.some((e) => kinds.includes(e.kind));
  if (site.occupancy.byDefault && has(['service', 'panel', 'array'])) {
    sayJob('occupancy', site.occupancy.value, 'decides what the code requires and the limit of DC voltage');
  }
  if (site.earthing.byDefault && !nec && power.length > 0)
    sayJob('earthing', site.earthing.value, 'decides the voltage to ground');
  if (!site.list.facts.lightning_protection && placed.length > 0) {
    sayJob('lightning_protection', 'none', 'decides how much current a protector must bear');
  }
  if (!job.exposure.flashDensity && has(['service', 'array'])) {
    sayJob('flash_density', 'not known', 'leaves the exposure of the site uncompared');
  }
  say(
    'quantity',
    '1',
    unique(site.equipments.filter((e) => !e.facts.quantity && !e.row.unreadable.has('quantity'))),
    '',
  );
  say('worth_protecting', 'yes', worthByDefault(selected), 'keeps protection there');
  say(
    'ahead_of_disconnect',
    'no',
    unique(
      power
        .filter((p) => nec && p.cls === 'service' && !p.equipment.facts.ahead_of_disconnect)
        .map((p) => p.equipment),
    ),
    'decides the type',
  );
  say(
    'outdoors',
    'yes',
    unique(
      placed
        .filter((p) => p.equipment.outdoors.byDefault && p.equipment.outdoors.value)
        .map((p) => p.equipment),
    ),
    'decides the enclosure and where a long run counts',
  );
  say(
    'building_occupancy',
    'other',
    site.equipments.filter((e) => e.kind === 'panel' && otherByDefault(job, e)),
    'keeps 215.18 and 225.42 out',
  );
  say('module_technology', 'crystalline', tableUsed(selected), 'decides the table of the cold voltage');
  sayGroundings(job, selected, power, say);
  say(
    'n_pe_link',
    'yes',
    unique(
      power
        .filter((p) => p.cls === 'service' && !p.equipment.facts.n_pe_link && hasNeutral(p))
        .map((p) => p.equipment),
    ),
    'decides what a spare channel takes',
  );
  say(
    'impulse_withstand',
    'that of its overvoltage category',
    unique(
      selected
        .filter((s) => s.requirement.withstand?.assumed)
        .flatMap((s) => s.placement.ports.map((p) => p.equipment)),
    ),
    'is an assumption',
  );
  return notes;
}

type Say = (field: RowField, value: string, rows: readonly SiteEquipment[], why: string) => void;

function sayGroundings(
  job: JobContext,
  selected: readonly Selected[],
  power: readonly SitePort[],
  say: Say,
): void {
  const byDefault = power.filter((p) => p.system && groundingOf(job.site, p).byDefault);
  for (const value of ['solid', 'none'] as const) {
    const rows = byDefault
      .filter((p) => groundingOf(job.site, p).grounding === value)
      .map((p) => p.equipment);
    say('system_grounding', value, unique(rows), 'decides the voltage to ground and the lights');
  }
  const dc = selected.filter((s) => s.requirement.circuit === 'array' || s.requirement.circuit === 'battery');
  const poles = new Map<string, SiteEquipment[]>();
  for (const one of dc) {
    for (const wiring of one.wirings) {
      for (const { equipment, value } of dcGroundingByDefault(wiring.port)) {
        const rows = poles.get(value) ?? [];
        rows.push(equipment);
        poles.set(value, rows);
      }
    }
  }
  for (const [value, rows] of poles) say('dc_grounding', value, unique(rows), 'decides which light is dark');
  const control = selected.filter(
    (s) => s.requirement.circuit === 'control' && !s.placement.subject.facts.dc_grounding,
  );
  say(
    'dc_grounding',
    'not known',
    unique(control.map((s) => s.placement.subject)),
    'leaves its lights to be recorded at commissioning',
  );
}

/** The sources and batteries behind a DC port that state no grounding, each with the default that stands in. */
function dcGroundingByDefault(port: SitePort): readonly { equipment: SiteEquipment; value: string }[] {
  const rows = port.cls === 'battery' ? batteriesOn(port) : ultimateSources(port);
  return rows
    .filter((e) => !e.facts.dc_grounding)
    .map((equipment) => ({ equipment, value: poleGrounding(port, equipment) }));
}

function unique(rows: readonly SiteEquipment[]): readonly SiteEquipment[] {
  return [...new Set(rows)].sort((a, b) => byNaturalOrder(a.tag, b.tag));
}

/** Rows whose protectors rest on common practice alone, and that don't say whether they are worth it. */
function worthByDefault(selected: readonly Selected[]): readonly SiteEquipment[] {
  const rows = selected
    .filter((s) => s.placement.strength !== 'required')
    .flatMap((s) => s.placement.ports.map((p) => p.equipment));
  return unique(rows.filter((e) => e.kind !== 'service' && e.worthProtecting.byDefault));
}

function otherByDefault(job: JobContext, equipment: SiteEquipment): boolean {
  if (job.site.basis.value !== 'nec-2023') return false;
  const unit = unitOf(job.site, equipment);
  return unit.otherBuilding && unit.occupancy.byDefault;
}

/** Arrays whose cold voltage rests on the table for crystalline modules, and that state no technology. */
function tableUsed(selected: readonly Selected[]): readonly SiteEquipment[] {
  const arrays = selected.flatMap((s) =>
    s.placement.ports.flatMap((p) => (s.requirement.circuit === 'array' ? ultimateSources(p) : [])),
  );
  return unique(
    arrays.filter(
      (a) =>
        a.kind === 'array' &&
        !a.facts.module_technology &&
        !a.facts.voc_coefficient &&
        !a.facts.open_circuit_voltage &&
        a.facts.voc_stc !== undefined,
    ),
  );
}

function hasNeutral(port: SitePort): boolean {
  return port.system !== undefined && AC_SYSTEM_DATA[port.system].hasNeutral;
}
