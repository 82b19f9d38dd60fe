import type { Plan, PlannedChannel, PlannedProtector } from '../../model/plan.js';
import type { CrewNoteWords, NotePort } from '../../words/languages/crew-note-words.js';
import { unparted } from '../../words/unparted.js';
import { tagList } from '../../words/tag-list.js';
import { turbineInputs } from '../parts/contents/turbine-inputs.js';
import { equipmentOf } from '../parts/site-index.js';
import type { Picture } from './note-kinds.js';

const INPUT = /^dc-in-(\d+)$/;

function isPort(port: string, words: CrewNoteWords): port is NotePort {
  return Object.hasOwn(words.ports, port);
}

function inputKind(plan: Plan, equipment: string, port: string): 'dc-input' | 'turbine-input' {
  return turbineInputs(plan)(equipment, port) ? 'turbine-input' : 'dc-input';
}

/** A port in the crew's words: `DC input 1`. */
export function portName(port: string, words: CrewNoteWords): string {
  const input = INPUT.exec(port)?.[1];
  if (input !== undefined) return `${words.ports['dc-input']}\u00a0${input}`;
  return isPort(port, words) ? words.ports[port] : port;
}

/** A port of an equipment: `turbine input 1` where a turbine's alternating current arrives. */
function portOf(
  plan: Plan,
  { equipment, port }: PlannedProtector['ports'][number],
  words: CrewNoteWords,
): string {
  const input = INPUT.exec(port)?.[1];
  return input === undefined
    ? portName(port, words)
    : `${words.ports[inputKind(plan, equipment, port)]}\u00a0${input}`;
}

/** What a place is, and at which port: `charge controller, DC input 1`; of several without the number, or the kind, in which they differ. */
export function circuitName(plan: Plan, places: readonly Picture[], words: CrewNoteWords): string {
  const all = places.map(([{ ports }]) => ports);
  const names = all.map((ports) => ports.map((one) => portOf(plan, one, words)).join(' + '));
  const plain = all[0]
    ?.map(({ equipment, port }) =>
      INPUT.test(port)
        ? words.ports[inputKind(plan, equipment, port)]
        : portOf(plan, { equipment, port }, words),
    )
    .join(' + ');
  const name = new Set(names).size === 1 ? names[0] : plain;
  const kinds = new Set(all.flatMap((ports) => ports.map(({ equipment }) => kindOf(plan, equipment, words))));
  const [kind = '', ...others] = kinds;
  return others.length > 0 || isOnePhrase(kind, name ?? '', words) ? (name ?? '') : `${kind}, ${name ?? ''}`;
}

function kindOf(plan: Plan, tag: string, words: CrewNoteWords): string {
  return words.kinds[equipmentOf(plan, tag)?.kind ?? 'other'];
}

/** True where the kind says what the port would say again. */
function isOnePhrase(kind: string, port: string, { kinds, ports }: CrewNoteWords): boolean {
  return kind === port || (kind === kinds.service && port === ports.service);
}

/** What a row of several places alike adds to what the picture says of all: tag, and port where they differ in it. */
export function placeTag(
  plan: Plan,
  places: readonly Picture[],
  { ports }: PlannedProtector,
  words: CrewNoteWords,
): string {
  const isSame = new Set(places.map(([one]) => JSON.stringify(one.ports.map(({ port }) => port)))).size === 1;
  const tags = [...new Set(ports.map(({ equipment }) => equipment))].join(', ');
  return isSame ? tags : `${tags}, ${ports.map((one) => portOf(plan, one, words)).join(' + ')}`;
}

function calledIn(called: string, words: CrewNoteWords): string {
  if (called === '' || called === 'L+' || called === 'L-') return called;
  return called === 'high leg' || called === 'grounded phase' ? words.called[called] : called;
}

/** A conductor without its port: `L2, high leg`, `−48 V`, `positive (+)`. */
export function wireName({ wire, called, pole }: PlannedChannel, words: CrewNoteWords): string {
  const name = words.conductors[wire.name];
  const more = calledIn(called, words);
  const volts = pole?.volts ?? null;
  const use =
    pole === null
      ? ''
      : pole.use === 'return'
        ? words.returnPole
        : volts === null
          ? words.linePole
          : unparted(`−${String(volts)} V`);
  // A plant's poles go by use and voltage.
  const base = use === '' ? name : use;
  return [base, more, ...(wire.doubled ? [words.second] : [])].filter((one) => one !== '').join(', ');
}

/** The conductor of a channel with its port, on a housing of several. */
export function channelName(channel: PlannedChannel, words: CrewNoteWords): string {
  const { port } = channel.wire;
  const name = wireName(channel, words);
  return port === null ? name : `${portName(port, words)} ${name}`;
}

/** `120/240 V, solidly grounded`; `DC, floating`. */
export function systemName({ system, grounding }: PlannedProtector, words: CrewNoteWords): string {
  const { systems, groundings } = words;
  const how = grounding === null ? '' : groundings[grounding];
  return [systemAlone(system, systems), how].filter((one) => one !== '').join(', ');
}

function systemAlone(system: PlannedProtector['system'], words: CrewNoteWords['systems']): string {
  if (system === null) return words.unknown;
  if (system === 'three-phase' || system === 'ac' || system === 'dc') return words[system];
  const [volts = '', kind] = system.split(' ');
  const more = kind === 'delta' || kind === 'high-leg' ? ` ${words[kind]}` : '';
  return `${unparted(`${volts} V`)}${more}`;
}

/** The part of a housing, or that there is none. */
export function partName({ existing, part }: PlannedProtector, { header }: CrewNoteWords): string {
  if (existing !== null) return header.existing(existing);
  return part ?? header.noPart;
}

/** What a housing protects: `charge controller CC-1, DC input 1`. */
export function protectsName(plan: Plan, { ports }: PlannedProtector, words: CrewNoteWords): string {
  const tags = [...new Set(ports.map(({ equipment }) => equipment))];
  return tags
    .map((tag) => {
      const kind = kindOf(plan, tag, words);
      const own = ports.filter(({ equipment }) => equipment === tag);
      const names = own.map((one) => portOf(plan, one, words)).join(` ${words.and} `);
      return isOnePhrase(kind, names, words) ? `${kind} ${tag}` : `${kind} ${tag}, ${names}`;
    })
    .join('; ');
}

/** Where it is: `Plant room`, `Roof, outdoors`. */
export function placeName({ place, outdoors }: PlannedProtector, { table }: CrewNoteWords): string {
  const named = place === '' ? table.noPlace : place;
  return outdoors ? `${named}, ${table.outdoors}` : named;
}

/** Tags as a page names them, in the crew's language: `P-5 to P-30`. */
export function tagsName(tags: readonly string[], words: CrewNoteWords): string {
  return tagList(tags).replaceAll(' to ', ` ${words.to} `);
}
