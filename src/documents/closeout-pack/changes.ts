import { itemKey } from '../../model/open-item.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { crewPort } from '../../words/crew-devices.js';
import { figure } from '../../words/figures.js';
import type { CrewPackWords } from '../../words/languages/crew-pack-words.js';
import { crewWire } from '../parts/crew-wire.js';
import { codeName } from './cover-view.js';

/** More changes than this are counted, not listed: the cover is one page. */
const MOST_LINES = 8;

/** A housing is the same one when it sits at the same ports, whatever its tag. */
function identity(protector: PlannedProtector): string {
  return JSON.stringify([protector.ports, protector.housing.number]);
}

type What = keyof CrewPackWords['changes']['what'];

/** What is compared of a housing, as data and as it is printed. */
const COMPARED: readonly {
  readonly what: What;
  readonly data: (p: PlannedProtector) => unknown;
  readonly text: (p: PlannedProtector, words: CrewPackWords) => string;
}[] = [
  { what: 'tag', data: (p) => p.tag, text: (p) => p.tag },
  { what: 'part', data: (p) => [p.existing, p.part], text: partText },
  { what: 'place', data: (p) => p.place, text: (p, { notStated }) => (p.place === '' ? notStated : p.place) },
  { what: 'strength', data: (p) => p.strength, text: (p, { changes }) => changes.strengths[p.strength] },
  {
    what: 'mcov',
    data: (p) => p.required.mcov,
    text: (p, { changes }) => (p.required.mcov === null ? changes.notKnown : figure(p.required.mcov, 'V')),
  },
  {
    what: 'conductors',
    data: (p) => p.channels.map((c) => c.wire),
    text: (p, words) =>
      p.channels
        .map(({ wire }) => `${crewWire(wire, words)}${wire.doubled ? ` (${words.changes.doubled})` : ''}`)
        .join(', '),
  },
];

function partText({ existing, part }: PlannedProtector, { changes }: CrewPackWords): string {
  return existing === null ? (part ?? changes.noPart) : changes.existing(existing);
}

/** `CC-1 DC input 1; INV-1 AC input`. */
function portsText({ ports }: PlannedProtector, words: CrewPackWords): string {
  return ports.map(({ equipment, port }) => `${equipment} ${crewPort(port, words)}`).join('; ');
}

function protectorChanges(before: PlannedProtector, now: PlannedProtector, words: CrewPackWords): string[] {
  const { changes } = words;
  return COMPARED.filter(({ data }) => JSON.stringify(data(before)) !== JSON.stringify(data(now))).map(
    ({ what, text }) => changes.was(now.tag, changes.what[what], text(before, words), text(now, words)),
  );
}

/**
 * What is different from the last pack, in sentences; empty where nothing is.
 * @param before the plan of the last pack
 * @param now the plan of this one
 * @param words of the crew's language
 */
export function changeTexts(before: Plan, now: Plan, words: CrewPackWords): string[] {
  const { changes: told, notStated } = words;
  const old = new Map(before.protectors.map((p) => [identity(p), p]));
  const fresh = new Map(now.protectors.map((p) => [identity(p), p]));
  const gone = [...old]
    .filter(([key]) => !fresh.has(key))
    .map(([, p]) => told.gone(p.tag, portsText(p, words)));
  const added = [...fresh]
    .filter(([key]) => !old.has(key))
    .map(([, p]) => told.fresh(p.tag, portsText(p, words)));
  const changed = [...fresh].flatMap(([key, p]) => {
    const was = old.get(key);
    return was === undefined ? [] : protectorChanges(was, p, words);
  });
  const oldItems = new Set(before.openItems.map(itemKey));
  const freshItems = new Set(now.openItems.map(itemKey));
  const settled = [...oldItems].filter((key) => !freshItems.has(key)).length;
  const raised = [...freshItems].filter((key) => !oldItems.has(key)).length;
  const lines = [
    ...(before.basis === now.basis
      ? []
      : [told.basis(codeName(before.basis, words), codeName(now.basis, words))]),
    ...(before.revision === now.revision
      ? []
      : [told.revision(before.revision || notStated, now.revision || notStated)]),
    ...(before.submittable === now.submittable ? [] : [now.submittable ? told.completed : told.drafted]),
    ...gone,
    ...added,
    ...changed,
    ...(settled === 0 ? [] : [told.settled(settled)]),
    ...(raised === 0 ? [] : [told.raised(raised)]),
  ];
  const rest = lines.length - MOST_LINES;
  return rest > 0 ? [...lines.slice(0, MOST_LINES), told.more(rest)] : lines;
}
