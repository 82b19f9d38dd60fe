import type { PlacedNote } from '../../model/message.js';
import type { Given, PlacementDecision, RunFacts } from '../../model/rule.js';
import type { Strength } from '../../model/words.js';
import { about } from '../../model/message.js';
import { PLACE_MESSAGES } from '../../model/messages/place.js';
import { length } from '../../words/figures.js';
import { RUN_IN_DOUBT, type AnyPlacementRule, type PlacementFacts } from '../placement-facts.js';
import { NEC, practice, sources } from '../sources.js';

const FACTS = [
  'basis',
  'tag',
  'kind',
  'runs',
  'runInDoubt',
  'longRunLimit',
  'criticalLength',
  'serviceRequired',
] as const;
type Facts = Given<PlacementFacts, typeof FACTS>;

export const longRun = {
  id: 'place/long-run',
  title: 'At both ends of a long run outdoors or between buildings',
  why: 'A long cable out of doors picks up surges, and a protector at one end doesn’t help the other.',
  sources: sources(
    {
      of: NEC,
      also: practice('More than 100 ft of wire: both ends, unless nothing at that end is worth protecting.'),
    },
    { of: ['iec'], cite: ['ten-metre-distance', 'pv-dc-both-ends'] },
  ),
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
    ],
    ports: ['service', 'feeder', 'dc-in', 'battery', 'ac-in', 'ac-in-2', 'ac-out', 'output'],
  },
  facts: FACTS,
  decide(f: Facts): PlacementDecision {
    // The branch itself always has one under place/grid-tie-ac; a long run asks at its other end.
    if (f.kind === 'ac-module-branch') {
      return {
        outcome: 'not-placed',
        because: 'a long run of a trunk of AC modules asks at its other end only',
      };
    }
    const runs = f.runs.filter((r) => r.carries !== 'control');
    const leaving = runs.filter((r) => r.outdoors || r.betweenBuildings);
    const notes: PlacedNote[] = [];
    for (const run of leaving) {
      if (run.length === undefined && !run.lengthNotAsked) {
        const p = { row: run.unknownRow, ...ends(f.tag, run) };
        notes.push(about(PLACE_MESSAGES.runLength, p, run.unknownRow, 'run_length'));
      }
    }
    const long = leaving.filter((r) => r.length !== undefined && r.length > f.longRunLimit);
    const first = long[0];
    if (first?.length === undefined) {
      const isUnstated = leaving.some((r) => r.length === undefined);
      const open = isUnstated || f.runInDoubt;
      const because = isUnstated ? UNSTATED : open ? RUN_IN_DOUBT : whyNot(f, runs, leaving);
      return { outcome: 'not-placed', because, open, notes };
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
      because: `the run ${first.upstream ? 'to' : 'from'} ${first.otherTag} is ${length(first.length)}, longer than ${length(f.longRunLimit)}, and ${first.outdoors ? 'outdoors' : 'between buildings'}`,
      notes,
    };
  },
} satisfies AnyPlacementRule;

/** Both ends ask for the missing length; named in one order, so that it is one item. */
function ends(tag: string, run: RunFacts): { from: string; to: string } {
  return run.upstream ? { from: tag, to: run.otherTag } : { from: run.otherTag, to: tag };
}

const UNSTATED = 'the length of a run that ends here isn’t stated';

function whyNot(f: Facts, runs: readonly RunFacts[], leaving: readonly RunFacts[]): string {
  if (runs.length === 0) return 'no run on the list ends here';
  if (leaving.length === 0) return 'no run that ends here is outdoors or between buildings';
  return `no run outdoors or between buildings that ends here is longer than ${length(f.longRunLimit)}`;
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
