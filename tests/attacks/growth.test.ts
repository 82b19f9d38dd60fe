import { describe, expect, it } from 'vitest';
import type { Site, SiteEquipment, SitePort } from '../../src/model/site.js';
import { defaultSettings } from '../../src/model/settings.js';
import { planJson } from '../../src/output/plan-file.js';
import { sourcesToOpen } from '../../src/plan/make/supplies.js';
import { planJob } from '../../src/plan/plan-job.js';
import { readListText } from '../../src/read/list/lists.js';
import { batteriesOn } from '../../src/site/battery-bus.js';
import { joinedTo } from '../../src/site/dc-joined.js';
import { faultCurrentAt } from '../../src/site/fault-current.js';
import { groundingOf, noGroundings } from '../../src/site/grounding.js';
import { ultimateSources } from '../../src/site/inputs.js';
import { unitOf } from '../../src/site/premises.js';
import { surveySite } from '../../src/site/survey.js';
import type { JobList } from '../../src/model/list.js';

// A job twice as large costs twice as much: counted are bytes of plan.json and looks at the site, never seconds.

const settings = defaultSettings();
const HEADING = 'job,basis,tag,kind,connects_to,ac_in,ac_out,battery_voltage,place,run_length\n';
type Shape = (count: number) => readonly string[];
const many = (count: number, row: (i: number) => string): string[] =>
  Array.from({ length: count }, (_, i) => row(i + 1));

const chain: Shape = (count) =>
  many(count, (i) => `P${i},panel,${i === 1 ? 'S' : `P${i - 1}`},120/240,,,House / hall,20 ft`);
const bus: Shape = (count) =>
  many(count, (i) => `B${i},battery,${i === 1 ? 'CC' : 'B1'},,,48 V,House / hall,5 ft`);
const SHAPES: Readonly<Record<string, Shape>> = {
  'a chain of panels': chain,
  'inverters on one panel': (count) => [
    'P,panel,S,120/240,,,House / hall,20 ft',
    ...many(count / 2, (i) => `I${i},grid-tie-inverter,P,,240,,House / hall,30 ft`),
    ...many(count / 2, (i) => `A${i},array,I${i}/1,,,,House / roof,60 ft`),
  ],
  'loads on one panel': (count) => [
    'P,panel,S,120/240,,,House / hall,20 ft',
    ...many(count, (i) => `L${i},load,P,120/240,,,House / hall,30 ft`),
  ],
  'batteries on one bus': (count) => ['CC,charge-controller,,,,,House / hall,', ...bus(count)],
  'arrays on one input': (count) => [
    'CC,charge-controller,,,,,House / hall,',
    ...many(count, (i) => `A${i},array,CC/1,,,,House / roof,60 ft`),
  ],
  'control circuits at one panel': (count) => [
    'P,panel,S,120/240,,,House / hall,20 ft',
    ...many(count, (i) => `K${i},control-circuit,P,,,,House / hall,30 ft`),
  ],
};

function jobOf(shape: Shape, count: number, basis = 'nec-2023'): JobList {
  const rows = ['S,service,,120/240,,,House / hall,', ...shape(count)].map((row) => `J,${basis},${row}\n`);
  const [job] = readListText('list.csv', `${HEADING}${rows.join('')}`, { settings }).jobs;
  if (!job) throw new Error('no job');
  return job;
}

describe.each(['nec-2023', 'iec'])('plan.json under %s', (basis) => {
  it.each(Object.entries(SHAPES))('grows with the job: %s', (_, shape) => {
    const bytes = (count: number): number =>
      planJson(planJob(jobOf(shape, count, basis), { catalogue: undefined, settings })).length;
    expect(bytes(320) / bytes(160)).toBeLessThan(2.2);
  });
});

/** Counts how often something looks at the ports of an equipment, or at the runs and feeders of a port. */
function counted(site: Site): () => number {
  let looks = 0;
  const watch = (target: SiteEquipment | SitePort, ...keys: readonly string[]): void => {
    for (const key of keys) {
      const value: unknown = Reflect.get(target, key);
      Object.defineProperty(target, key, {
        get: () => {
          looks += 1;
          return value;
        },
      });
    }
  };
  for (const equipment of site.equipments) {
    const { ports } = equipment;
    for (const port of ports) watch(port, 'runs', 'feeders', 'equipment', 'sources');
    watch(equipment, 'ports', 'kind');
  }
  return () => looks;
}

const portsOf = (site: Site): SitePort[] => site.equipments.flatMap((e) => e.ports);

describe('looks at the site grow with the job', () => {
  const questions: readonly (readonly [string, Shape, (site: Site) => void])[] = [
    [
      'what stands in which building',
      chain,
      (site) => {
        for (const equipment of site.equipments) unitOf(site, equipment);
      },
    ],
    [
      'how each port is grounded',
      chain,
      (site) => {
        const known = noGroundings();
        for (const port of portsOf(site)) groundingOf(site, port, known);
      },
    ],
    [
      'what to open at the end of a chain',
      chain,
      (site) => {
        const last = site.equipments.find((e) => e.tag === `P${site.equipments.length - 1}`);
        if (!last) throw new Error('no last panel');
        sourcesToOpen(last.ports, last);
      },
    ],
    [
      'the fault current at each port',
      chain,
      (site) => {
        const bound = (): number => 0;
        for (const port of portsOf(site)) faultCurrentAt(port, bound);
      },
    ],
    [
      'the fault current behind a chain of transfer switches',
      (count) =>
        Array.from({ length: count / 3 }, (_, n) => n + 1).flatMap((i) => [
          `T${i},transfer-switch,${i === 1 ? 'S' : `P${i - 1}`},120/240,,,House / hall,5 ft`,
          `G${i},generator,T${i},,120/240,,House / hall,5 ft`,
          `P${i},panel,T${i},120/240,,,House / hall,5 ft`,
        ]),
      (site) => {
        const bound = (): number => 0;
        for (const port of portsOf(site)) faultCurrentAt(port, bound);
      },
    ],
    [
      'what is joined to each DC circuit',
      SHAPES['arrays on one input'] ?? chain,
      (site) => {
        for (const port of portsOf(site)) joinedTo(port);
      },
    ],
    [
      'which batteries are on the bus of each',
      (count) => ['CC,charge-controller,,,,,House / hall,', ...bus(count)],
      (site) => {
        for (const port of portsOf(site)) if (port.cls === 'battery') batteriesOn(port);
      },
    ],
  ];
  it.each(questions)('%s', (_, shape, ask) => {
    const looks = (count: number): number => {
      const site = surveySite(jobOf(shape, count), settings);
      const sofar = counted(site);
      ask(site);
      return sofar();
    };
    expect(looks(480) / looks(240)).toBeLessThan(2.2);
  });

  it('what feeds an input, found once however often it is asked', () => {
    const site = surveySite(jobOf(SHAPES['arrays on one input'] ?? chain, 200), settings);
    const [input] = portsOf(site).filter((port) => port.cls === 'dc-in');
    if (!input) throw new Error('no input');
    expect(ultimateSources(input)).toHaveLength(200);
    const looks = counted(site);
    ultimateSources(input);
    expect(looks()).toBe(0);
  });
});

it('a chain as long as a job may be is no fault of the program', () => {
  const site = surveySite(jobOf(chain, 4999), settings);
  const last = site.equipments.find((e) => e.tag === 'P4999');
  const [port] = last?.ports ?? [];
  if (!last || !port) throw new Error('no last panel');
  expect(sourcesToOpen([port], last)).toEqual([{ code: 'source/utility', values: { tag: 'S' } }]);
  expect(faultCurrentAt(port, () => 0)).toBeUndefined();
  expect(groundingOf(site, port)).toMatchObject({ grounding: 'solid', byDefault: true });
});

it('names every source of a place, or each kind of very many with what stays live', () => {
  const plan = planJob(jobOf(SHAPES['inverters on one panel'] ?? chain, 240), {
    catalogue: undefined,
    settings,
  });
  const service = plan.protectors.find((p) => p.ports.some((port) => port.equipment === 'S'));
  expect(service?.wiring.sourcesToOpen).toMatchObject([
    { code: 'source/each-of', values: { kind: 'service', count: 1 } },
    { code: 'source/each-of', values: { kind: 'grid-tie-inverter', count: 120 } },
    { code: 'source/named-elsewhere' },
  ]);
});
