import type { Plan, PlannedProtector } from '../../model/plan.js';
import type { Kind } from '../../model/words.js';
import { filled } from '../../words/languages.js';
import type { OwnerStrings, Side } from '../../words/languages/owner-strings.js';
import { equipmentOf, runsTo } from './site-index.js';

type PortOfProtector = PlannedProtector['ports'][number];

/** The side of what a source gives. */
const SIDE_OF_SOURCE: { readonly [K in Kind]?: Side } = {
  array: 'sun',
  combiner: 'sun',
  'ac-module-branch': 'sun',
  'wind-turbine': 'wind',
  'hydro-turbine': 'water',
  generator: 'generator',
  service: 'grid',
};

/** The one side of all that feeds a port; undefined where they differ, or nothing is known to. */
function sideOfFeeders(plan: Plan, { equipment, port }: PortOfProtector): Side | undefined {
  const feeders = runsTo(plan, equipment).filter((run) => run.to.port === port);
  const sides = new Set(
    feeders.map((run) => SIDE_OF_SOURCE[equipmentOf(plan, run.from.equipment)?.kind ?? 'other']),
  );
  return sides.size === 1 ? [...sides][0] : undefined;
}

/** The side by what the lights of a port go by, where no row is named that feeds it. */
function sideOfLights({ channels }: PlannedProtector, { port }: PortOfProtector): Side {
  const own = channels.filter((c) => c.wire.port === null || c.wire.port === port);
  const states = new Set(own.flatMap((c) => c.indicator.map((i) => i.state)));
  if (states.has('sun') || states.has('sun, inverter on')) return 'sun';
  return states.has('utility on') ? 'grid' : 'power';
}

/** From which side power comes to a port of a protector, or whither it goes there. */
function sideOf(plan: Plan, protector: PlannedProtector, at: PortOfProtector): Side {
  const kind = equipmentOf(plan, at.equipment)?.kind ?? 'other';
  switch (at.port) {
    case 'service':
      return 'grid';
    case 'feeder':
    case 'ac-out':
      return 'house';
    case 'battery':
    case 'dc-in':
      return 'battery';
    case 'terminals':
      return 'control';
    case 'output':
      return SIDE_OF_SOURCE[kind] ?? 'power';
    default:
      return sideOfFeeders(plan, at) ?? sideOfLights(protector, at);
  }
}

/** At which port of a protector a conductor lands, by the side in the owner's words. */
export function portSide(
  plan: Plan,
  protector: PlannedProtector,
  port: string,
  strings: OwnerStrings,
): string {
  const at = protector.ports.find((p) => p.port === port);
  return at === undefined ? '' : strings.sides[sideOf(plan, protector, at)];
}

/** The side of a protector and what it is at, in the owner's words; no tag and no port of the list. */
export interface WhereOnSite {
  readonly side: string;
  /** `` where the list says nothing that an owner would know it by. */
  readonly at: string;
}

/** Where in the system a protector sits: its side, told apart from the others of one room, and the equipment in plain words. */
export function whereOnSite(plan: Plan, protector: PlannedProtector, strings: OwnerStrings): WhereOnSite {
  const sides = protector.ports.map((at) => strings.sides[sideOf(plan, protector, at)]);
  const places = protector.ports.map(({ equipment }) => {
    const kind = equipmentOf(plan, equipment)?.kind ?? 'other';
    if (kind === 'service') return strings.gridEntry;
    const thing = strings.things[kind];
    return thing === '' ? '' : filled(strings.at, { thing });
  });
  const joined = (texts: readonly string[]): string =>
    [...new Set(texts)].filter((text) => text !== '').join(` ${strings.tagsAlt} `);
  return { side: joined(sides), at: joined(places) };
}

/** Text with a capital at its beginning. */
function capital(text: string, language: string): string {
  const [first = ''] = text;
  return first.toLocaleUpperCase(language) + text.slice(first.length);
}

/** The building of a place that names one before its room; `` where it names none. */
function buildingOf(place: string): string {
  const at = place.indexOf(' / ');
  return at < 0 ? '' : place.slice(0, at);
}

/**
 * The rooms of a plan's protectors as an owner knows them: the building is named where there are several.
 * @returns the room of each protector, by its tag
 */
export function roomsOf(plan: Plan, strings: OwnerStrings): ReadonlyMap<string, string> {
  const buildings = new Set(plan.protectors.map(({ place }) => buildingOf(place)).filter((b) => b !== ''));
  return new Map(
    plan.protectors.map(({ tag, place, outdoors }) => {
      const building = buildings.size === 1 ? buildingOf(place) : '';
      const room = building === '' ? place.replaceAll(' / ', ', ') : place.slice(building.length + 3);
      const named = room.trim() === '' ? strings.notStated : room;
      const whole = outdoors ? filled(strings.outdoors, { place: named }) : named;
      return [tag, capital(whole, strings.language)];
    }),
  );
}
