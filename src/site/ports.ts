import type { AcSystem, AcPortUse, PortClass, PortName } from '../model/words.js';
import type { Fact } from '../model/fact.js';
import type { PlacedNote } from '../model/open-item.js';
import type { FoundOfPort, SiteEquipment, SitePort } from '../model/site.js';
import { about } from '../model/message.js';
import { NETWORK_MESSAGES } from '../model/messages/network.js';
import { SITE_MESSAGES } from '../model/messages/site.js';
import type { Link } from './links.js';
import type { LinkEnd } from './ways.js';

/** The link ends of one equipment, for asking which ports are in use. */
interface EndsInUse {
  readonly acIn: readonly Link[];
  readonly acOut: readonly Link[];
  readonly battery: boolean;
  readonly control: boolean;
  readonly dcIn: readonly Link[];
}

const NO_ENDS: EndsInUse = { acIn: [], acOut: [], battery: false, control: false, dcIn: [] };

/**
 * Gives each equipment its ports: those of its kind, and those that the list states or connects.
 * @param equipments in natural order; their `ports` are filled
 * @param links the directed connections
 * @returns what had to be assumed about DC inputs
 */
export function fillPorts(
  equipments: readonly SiteEquipment[],
  links: readonly Link[],
): readonly PlacedNote[] {
  const notes: PlacedNote[] = [];
  const ends = endsInUse(links);
  for (const equipment of equipments) {
    const used = ends.get(equipment.tag) ?? NO_ENDS;
    const { kind, facts } = equipment;
    switch (kind) {
      case 'service':
        add(equipment, 'service', 'service', acSystem(facts.ac_in));
        break;
      case 'panel':
      case 'load':
        add(equipment, 'feeder', 'feeder', acSystem(facts.ac_in));
        break;
      case 'array':
      case 'combiner':
      case 'wind-turbine':
      case 'hydro-turbine':
        add(equipment, 'output', 'output', undefined);
        break;
      case 'generator':
      case 'ac-module-branch':
        add(equipment, 'output', 'output', acSystem(facts.ac_out));
        break;
      case 'charge-controller':
        addInputs(equipment, used.dcIn, notes);
        if (used.battery) add(equipment, 'battery', 'battery', undefined);
        break;
      case 'grid-tie-inverter':
        addInputs(equipment, used.dcIn, notes);
        if (used.battery) add(equipment, 'battery', 'battery', undefined);
        addAc(equipment, 'ac-out', facts.ac_out, true);
        break;
      case 'inverter-charger':
        addInputs(equipment, used.dcIn, notes);
        if (used.battery) add(equipment, 'battery', 'battery', undefined);
        addAc(equipment, 'ac-in', facts.ac_in, used.acIn.length > 0);
        if (facts.ac_in_2) addAc(equipment, 'ac-in-2', facts.ac_in_2, true);
        addAc(equipment, 'ac-out', facts.ac_out, used.acOut.length > 0 || !stated(facts.ac_in));
        break;
      case 'battery':
        add(equipment, 'battery', 'battery', undefined);
        break;
      case 'dc-load':
      case 'dc-panel':
      case 'diversion-load':
        add(equipment, 'dc-in', 'dc-bus', undefined);
        break;
      case 'transformer':
        add(equipment, 'ac-in', 'ac-in', acSystem(facts.ac_in));
        add(equipment, 'ac-out', 'ac-out', acSystem(facts.ac_out));
        break;
      case 'ac-battery':
        addAc(equipment, 'ac-out', facts.ac_out, true);
        break;
      case 'pump-drive':
        addDrive(equipment, used, notes);
        break;
      case 'control-circuit':
      case 'signal-line':
      case 'other':
      case 'transfer-switch':
      case 'disconnect':
        add(equipment, 'terminals', 'terminals', undefined);
        break;
    }
    if (used.control && !equipment.ports.some((p) => p.cls === 'terminals')) {
      add(equipment, 'terminals', 'terminals', undefined);
    }
  }
  return notes;
}

/** A pump drive is fed by an array, by an AC supply, or by both; its output carries switched pulses. */
function addDrive(equipment: SiteEquipment, used: EndsInUse, notes: PlacedNote[]): void {
  const { facts, tag, row } = equipment;
  const hasAc = used.acIn.length > 0 || stated(facts.ac_in) || row.unreadable.has('ac_in');
  const hasDc = used.dcIn.length > 0 || facts.max_dc_voltage !== undefined || facts.dc_inputs !== undefined;
  if (hasDc || !hasAc) addInputs(equipment, used.dcIn, notes);
  if (!hasDc && !hasAc) notes.push(about(NETWORK_MESSAGES.driveSupply, { tag }, tag, 'connects_to'));
  if (hasAc) addAc(equipment, 'ac-in', facts.ac_in, used.acIn.length > 0);
  addAc(equipment, 'ac-out', facts.ac_out, true);
}

function endsInUse(links: readonly Link[]): Map<string, EndsInUse> {
  const ends = new Map<
    string,
    { acIn: Link[]; acOut: Link[]; battery: boolean; control: boolean; dcIn: Link[] }
  >();
  const of = (
    tag: string,
  ): { acIn: Link[]; acOut: Link[]; battery: boolean; control: boolean; dcIn: Link[] } => {
    let found = ends.get(tag);
    if (!found) {
      found = { acIn: [], acOut: [], battery: false, control: false, dcIn: [] };
      ends.set(tag, found);
    }
    return found;
  };
  const note = ({ tag }: SiteEquipment, end: LinkEnd, link: Link): void => {
    if (end === 'ac-in') of(tag).acIn.push(link);
    else if (end === 'ac-out') of(tag).acOut.push(link);
    else if (end === 'battery') of(tag).battery = true;
    else if (end === 'terminals') of(tag).control = true;
    else if (end === 'dc-in') of(tag).dcIn.push(link);
  };
  for (const link of links) {
    note(link.up, link.upEnd, link);
    note(link.down, link.downEnd, link);
  }
  return ends;
}

function stated(fact: Fact<AcPortUse> | undefined): boolean {
  return fact !== undefined && fact.value !== 'unused';
}

function acSystem(fact: Fact<AcPortUse> | undefined): AcSystem | undefined {
  return fact === undefined || fact.value === 'unused' ? undefined : fact.value;
}

function nothingFound(): FoundOfPort {
  return {
    sources: undefined,
    batteries: undefined,
    grounding: undefined,
    pole: undefined,
    supplies: undefined,
    converters: undefined,
    circuit: undefined,
    busAbove: undefined,
    busBelow: undefined,
    faultCurrent: undefined,
  };
}

function add(
  equipment: SiteEquipment,
  name: PortName,
  cls: PortClass,
  system: AcSystem | undefined,
  more: { input?: number; unused?: SitePort['unused'] } = {},
): void {
  equipment.ports.push({
    equipment,
    name,
    cls,
    input: more.input ?? 0,
    use: 'fed',
    system,
    systemBy: system === undefined ? undefined : 'stated',
    clashes: [],
    unused: more.unused ?? '',
    sources: [],
    oneOfSources: false,
    feeders: [],
    runs: [],
    found: nothingFound(),
  });
}

/** An AC port of an inverter: `expected` where something connects to it or the port must be there. */
function addAc(
  equipment: SiteEquipment,
  name: 'ac-in' | 'ac-in-2' | 'ac-out',
  fact: Fact<AcPortUse> | undefined,
  expected: boolean,
): void {
  const field = name === 'ac-in' ? 'ac_in' : name === 'ac-out' ? 'ac_out' : 'ac_in_2';
  const unreadable = equipment.row.unreadable.has(field);
  const unused: SitePort['unused'] =
    fact?.value === 'unused' ? 'stated' : fact || expected || unreadable ? '' : 'nothing-named';
  add(equipment, name, name, acSystem(fact), { unused });
}

/** The DC inputs: `dc_inputs`, else 1 for a charge controller, else the highest that a connection names. */
function addInputs(equipment: SiteEquipment, links: readonly Link[], notes: PlacedNote[]): void {
  const { facts } = equipment;
  let highest = 0;
  let highestLink: Link | undefined;
  for (const link of links) {
    for (const input of link.inputs) {
      if (input > highest) {
        highest = input;
        highestLink = link;
      }
    }
  }
  const stated = facts.dc_inputs?.value;
  let count = stated ?? highest;
  if (stated === undefined) count = defaultInputs(equipment, links, highest, notes);
  else if (highest > stated && highestLink) {
    const to = highestLink.row.facts.connects_to?.value.whole ?? '';
    const p = { tag: highestLink.row.tag, to, inputs: stated };
    notes.push(about(SITE_MESSAGES.inputNumberTooHigh, p, highestLink.row.tag, 'connects_to'));
    count = highest;
  }
  for (let input = 1; input <= count; input += 1) {
    add(equipment, `dc-in-${input}`, 'dc-in', undefined, { input });
  }
}

/** How many inputs a converter has that states no number; every default is printed. */
function defaultInputs(
  equipment: SiteEquipment,
  links: readonly Link[],
  highest: number,
  notes: PlacedNote[],
): number {
  const { tag, kind, facts, row } = equipment;
  const isSaid = row.unreadable.has('dc_inputs');
  if (highest > 0) {
    if (!isSaid) notes.push(about(SITE_MESSAGES.dcInputsNamed, { tag, inputs: highest }, tag, 'dc_inputs'));
    return highest;
  }
  // A drive has one DC link.
  if (kind === 'pump-drive') return 1;
  if (kind === 'charge-controller') {
    const settled = row.settled?.dc_inputs;
    if (settled) return settled.value;
    if (!isSaid) notes.push(about(SITE_MESSAGES.dcInputsDefault, { tag }, tag, 'dc_inputs'));
    return 1;
  }
  if (kind === 'inverter-charger' && links.length === 0 && facts.max_dc_voltage === undefined) return 0;
  if (!isSaid) notes.push(about(SITE_MESSAGES.dcInputsMissing, { tag }, tag, 'dc_inputs'));
  return 1;
}
