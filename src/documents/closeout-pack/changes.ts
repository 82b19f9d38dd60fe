import { conductorText } from '../../words/conductors.js';
import { itemKey } from '../../model/open-item.js';
import type { Plan, PlannedProtector } from '../../model/plan.js';
import { volts } from '../parts/figures.js';
import { partText, portsText } from '../parts/schedule.js';

/** More changes than this are counted, not listed: the cover is one page. */
const MOST_LINES = 24;

/** A housing is the same one when it sits at the same ports, whatever its tag. */
function identity(protector: PlannedProtector): string {
  return JSON.stringify([protector.ports, protector.housing.number]);
}

/** What is compared of a housing, as data and as it is printed. */
const COMPARED: readonly {
  readonly what: string;
  readonly data: (p: PlannedProtector) => unknown;
  readonly text: (p: PlannedProtector) => string;
}[] = [
  { what: 'tag', data: (p) => p.tag, text: (p) => p.tag },
  { what: 'part', data: (p) => [p.existing, p.part], text: partText },
  { what: 'place', data: (p) => p.place, text: (p) => p.place },
  { what: 'strength', data: (p) => p.strength, text: (p) => p.strength },
  { what: 'MCOV needed', data: (p) => p.required.mcov, text: (p) => volts(p.required.mcov, 'open') },
  {
    what: 'conductors',
    data: (p) => p.channels.map((c) => c.wire),
    text: (p) => p.channels.map((c) => conductorText(c.wire)).join(', '),
  },
];

function protectorChanges(before: PlannedProtector, now: PlannedProtector): string[] {
  return COMPARED.filter(({ data }) => JSON.stringify(data(before)) !== JSON.stringify(data(now))).map(
    ({ what, text }) => `${now.tag}: ${what} was ${text(before)}, is ${text(now)}.`,
  );
}

/**
 * What is different from the last pack, in sentences; empty where nothing is.
 * @param before the plan of the last pack
 * @param now the plan of this one
 */
export function changeTexts(before: Plan, now: Plan): string[] {
  const old = new Map(before.protectors.map((p) => [identity(p), p]));
  const fresh = new Map(now.protectors.map((p) => [identity(p), p]));
  const gone = [...old]
    .filter(([key]) => !fresh.has(key))
    .map(([, p]) => `${p.tag} at ${portsText(p.ports)} is gone.`);
  const added = [...fresh]
    .filter(([key]) => !old.has(key))
    .map(([, p]) => `${p.tag} at ${portsText(p.ports)} is new.`);
  const changed = [...fresh].flatMap(([key, p]) => {
    const was = old.get(key);
    return was === undefined ? [] : protectorChanges(was, p);
  });
  const oldItems = new Set(before.openItems.map(itemKey));
  const freshItems = new Set(now.openItems.map(itemKey));
  const settled = [...oldItems].filter((key) => !freshItems.has(key)).length;
  const raised = [...freshItems].filter((key) => !oldItems.has(key)).length;
  const lines = [
    ...(before.basis === now.basis ? [] : [`The basis was ${before.basis}, is ${now.basis}.`]),
    ...(before.revision === now.revision
      ? []
      : [`The revision was ${before.revision || 'not stated'}, is ${now.revision || 'not stated'}.`]),
    ...(before.submittable === now.submittable
      ? []
      : [
          now.submittable ? 'The pack was a draft and is complete.' : 'The pack was complete and is a draft.',
        ]),
    ...gone,
    ...added,
    ...changed,
    ...(settled === 0 ? [] : [`Items settled: ${settled}.`]),
    ...(raised === 0 ? [] : [`Items raised: ${raised}.`]),
  ];
  const rest = lines.length - MOST_LINES;
  return rest > 0 ? [...lines.slice(0, MOST_LINES), `And ${rest} more.`] : lines;
}
