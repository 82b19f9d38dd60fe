import type { PlacedNote } from '../../model/open-item.js';
import { metres } from '../../model/quantity.js';
import { reason } from '../../model/reason.js';
import type { Given, PlacementDecision, RunFacts } from '../../model/rule.js';
import type { Strength } from '../../model/words.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { RUN_IN_DOUBT, type AnyPlacementRule, type PlacementFacts } from '../placement-facts.js';
import { mayLeaveBuilding, placesAsked } from '../unknown-place.js';
import { practice, sources, type Cited } from '../sources.js';

const FACTS = [
  'basis',
  'tag',
  'kind',
  'drive',
  'runs',
  'runInDoubt',
  'longRunLimit',
  'criticalLength',
  'serviceRequired',
] as const;
type Facts = Given<PlacementFacts, typeof FACTS>;

const MODULE_BRANCH: PlacementDecision = {
  outcome: 'not-placed',
  because: reason('long-run/module-branch'),
};
const LENGTH_UNKNOWN: PlacementDecision = {
  outcome: 'not-placed',
  because: reason('long-run/length-unknown'),
  open: true,
};
const NO_RUN: PlacementDecision = { outcome: 'not-placed', because: reason('long-run/no-run') };
const INDOORS: PlacementDecision = { outcome: 'not-placed', because: reason('long-run/indoors') };

const CITED_UNDER_NEC: readonly Cited[] = [
  practice('More than 100 ft of wire: both ends, unless nothing at that end is worth protecting.'),
];

export const longRun = {
  id: 'place/long-run',
  title: 'At both ends of a long run outdoors or between buildings',
  why: 'A long cable out of doors picks up surges, and a protector at one end doesn’t help the other.',
  sources: sources({
    'nec-2017': CITED_UNDER_NEC,
    'nec-2020': CITED_UNDER_NEC,
    'nec-2023': CITED_UNDER_NEC,
    iec: ['ten-metre-distance', 'pv-dc-both-ends'],
  }),
  strength: {
    'nec-2017': ['recommended'],
    'nec-2020': ['recommended'],
    'nec-2023': ['recommended'],
    iec: ['required', 'recommended'],
  },
  looksAt: {
    kinds: [
      'service',
      'panel',
      'load',
      'array',
      'combiner',
      'charge-controller',
      'grid-tie-inverter',
      'ac-module-branch',
      'inverter-charger',
      'battery',
      'wind-turbine',
      'hydro-turbine',
      'generator',
      'transformer',
      'dc-load',
      'dc-panel',
      'diversion-load',
      'ac-battery',
      'pump-drive',
    ],
    ports: ['service', 'feeder', 'dc-in', 'dc-bus', 'battery', 'ac-in', 'ac-in-2', 'ac-out', 'output'],
  },
  facts: FACTS,
  decide(f: Facts): PlacementDecision {
    // The branch itself always has one under place/grid-tie-ac; a long run asks at its other end.
    if (f.kind === 'ac-module-branch') return MODULE_BRANCH;
    if (f.drive !== '') return onDriveOutput(f);
    const runs = f.runs.filter((r) => r.carries !== 'control');
    const leaving = runs.filter((r) => r.outdoors || r.betweenBuildings || mayLeaveBuilding(r));
    const notes: PlacedNote[] = [];
    for (const run of leaving) {
      const isLong = run.length === undefined || run.length > f.longRunLimit;
      if (!run.outdoors && isLong) notes.push(...placesAsked(run.unplaced));
      // While it isn't known whether the run leaves the building, its length decides nothing yet.
      const leaves = run.outdoors || run.betweenBuildings;
      if (leaves && run.length === undefined && !run.lengthNotAsked) {
        const p = { row: run.unknownRow, ...ends(f.tag, run) };
        notes.push(about(PLACE_MESSAGES.runLength, p, run.unknownRow, 'run_length'));
      }
    }
    const long = leaving.filter((r) => r.length !== undefined && r.length > f.longRunLimit);
    const first = long[0];
    if (first?.length === undefined) {
      if (leaving.some((r) => r.length === undefined)) return { ...LENGTH_UNKNOWN, notes };
      return f.runInDoubt ? RUN_IN_DOUBT : whyNot(f, runs, leaving);
    }
    for (const run of long) {
      if (!run.outdoors && run.betweenByDefault) {
        const { from, to } = ends(f.tag, run);
        notes.push(about(PLACE_MESSAGES.buildingDefault, { tag: from, other: to }, to, 'building'));
      }
    }
    return {
      outcome: 'placed',
      strength: strengthOf(f, long),
      because: reason('long-run/longer-than-limit', {
        upstream: first.upstream,
        other: first.otherTag,
        length: metres(first.length),
        limit: metres(f.longRunLimit),
        outdoors: first.outdoors,
        basis: f.basis,
      }),
      notes,
    };
  },
} satisfies AnyPlacementRule;

/** Switched pulses take no protector for a sine wave, at neither end: what the cable may have is the drive maker's word. */
function onDriveOutput({ kind, tag, drive }: Facts): PlacementDecision {
  const because = reason('drive/switched-pulses', { drive });
  const notes = kind === 'pump-drive' ? [about(PLACE_MESSAGES.driveOutput, { tag }, tag, '')] : [];
  return { outcome: 'not-placed', because, notes };
}

/** Both ends ask for the missing length; named in one order, so that it is one item. */
function ends(tag: string, run: RunFacts): { from: string; to: string } {
  return run.upstream ? { from: tag, to: run.otherTag } : { from: run.otherTag, to: tag };
}

function whyNot(f: Facts, runs: readonly RunFacts[], leaving: readonly RunFacts[]): PlacementDecision {
  if (runs.length === 0) return NO_RUN;
  if (leaving.length === 0) return INDOORS;
  const { basis } = f;
  const limit = metres(f.longRunLimit);
  return { outcome: 'not-placed', because: reason('long-run/not-longer', { limit, basis }) };
}

/** IEC: the run of an array whose inputs must be protected is required to be at both ends. */
function strengthOf(f: Facts, long: readonly RunFacts[]): Strength {
  if (f.basis !== 'iec') return 'recommended';
  const required = long.some(
    (r) =>
      r.fromArray &&
      (f.serviceRequired ||
        (f.criticalLength !== undefined &&
          r.arraysLength !== undefined &&
          r.arraysLength >= f.criticalLength)),
  );
  return required ? 'required' : 'recommended';
}
