import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseWireGauge } from '../../src/electrical/wire-gauge.js';
import type { Plan } from '../../src/model/plan.js';
import { catalogueOf, partLine, dataOfCsv } from './plan-of.js';
import { csvOfSite, sites, type MadeSite, type SiteRow } from './sites.js';

// What must hold of overcurrent devices and leads on every site, over generated lists of every kind under every basis (seeded).

const RUNS = { numRuns: 60, seed: 20_260_214 };
type Protector = Plan['protectors'][number];
type Device = Protector['overcurrent'][number];

interface Leads {
  readonly most: string;
  readonly device: string;
  readonly instructions: string;
  readonly range: string;
}
/** Own cases: what the catalogue may say of device and leads. */
const SAYS: readonly Leads[] = [
  { most: '15', device: 'breaker', instructions: 'no', range: '14 to 2 AWG Cu' },
  { most: '30', device: 'fuse', instructions: 'no', range: '12 to 2 AWG Cu| 10 to 2 AWG Al' },
  { most: '60', device: '', instructions: '', range: '14 to 1/0 AWG Cu' },
  { most: '125', device: 'either', instructions: 'yes', range: '10 to 2 AWG Cu' },
  { most: '', device: 'none', instructions: 'no', range: '14 to 2 AWG Cu' },
  { most: '', device: '', instructions: '', range: '' },
  { most: '63', device: 'fuse', instructions: 'no', range: '2.5 to 35 mm2 Cu' },
  // Too narrow for its own device: never chosen, unless the circuit's own device is a small one.
  { most: '60', device: 'breaker', instructions: 'no', range: '14 to 10 AWG Cu' },
];
const LEADS = new Map<string, Leads>();

function lineOf(name: string, facts: string, n: number): string {
  const says = SAYS[n % SAYS.length];
  if (!says) throw new Error('nothing to say');
  LEADS.set(name, says);
  const { most, device, instructions, range } = says;
  return partLine(
    name,
    `${facts}; overcurrent_a=${most}; overcurrent_device=${device}; lead_by_instructions=${instructions}; wire_range=${range}`,
  );
}

const STEPS = [40, 75, 150, 190, 350, 500, 640, 1000];
const CATALOGUE = catalogueOf(
  ...STEPS.flatMap((mcov, i) => [
    lineOf(`D-${mcov}`, `channels=2; mcov_dc=${mcov}; up=${mcov * 3 + 200}`, i),
    lineOf(`D-${mcov}-A`, `channels=1; mcov_dc=${mcov}; up=${mcov * 3 + 210}`, i + 3),
    ...[2, 3, 4].flatMap((n) => [
      lineOf(`A-${mcov}-${n}`, `channels=${n}; mcov_ac=${mcov}; up=${mcov * 3 + 200}`, i + n),
      lineOf(
        `F-${mcov}-${n}`,
        `channels=${n}; mcov_ac=${mcov}; up=${mcov * 3 + 200}; type=1; listed_for=ungrounded|impedance|corner`,
        i + n + 1,
      ),
    ]),
  ]),
  lineOf('T-2', 'channels=2; mcov_ac=275; up=900; connection=3+1', 1),
  lineOf('T-4', 'channels=4; mcov_ac=275; up=900; connection=3+1', 2),
  // Of class T1, chosen where one is asked for: its leads are thicker.
  ...[2, 3, 4].map((n) =>
    lineOf(
      `C-${n}`,
      `channels=${n}; mcov_ac=440; up=1500; listed_for=ungrounded; iec_class=T1; iimp_ka=25`,
      2,
    ),
  ),
);

const RATINGS = ['', '15', '20', '30', '60', '200'];
const BACKFEEDS = ['', '0', '5', '40'];
/** The same site, some of whose rows state the rating of the device there and what a converter sends back. */
function rated({ facts, rows }: MadeSite): MadeSite {
  const more = rows.map((row, i): SiteRow => {
    const rating = RATINGS[(i * 7 + rows.length) % RATINGS.length] ?? '';
    const backfeed = BACKFEEDS[(i + rows.length) % BACKFEEDS.length] ?? '';
    const isSource = /^(service|battery|generator)$/.test(row['kind'] ?? '');
    return {
      ...(isSource ? { fault_current: '5 kA' } : {}),
      ...row,
      ...(isSource && row['fault_current'] === '' ? { fault_current: '5 kA' } : {}),
      ...(rating === '' ? {} : { rating_a: `${rating} A` }),
      ...(backfeed === '' ? {} : { backfeed_a: `${backfeed} A` }),
    };
  });
  return { facts, rows: more };
}

const plans = new Map<string, Plan>();
function plan(site: MadeSite): Plan {
  const csv = csvOfSite(rated(site));
  const known = plans.get(csv) ?? dataOfCsv(csv, { unchecked: true, catalogue: CATALOGUE });
  plans.set(csv, known);
  return known;
}

const each = (say: (p: Protector, made: Plan) => void): void => {
  fc.assert(
    fc.property(sites(), (site) => {
      const made = plan(site);
      for (const p of made.protectors) say(p, made);
    }),
    RUNS,
  );
};

/** A; largest device ahead of a copper lead: NEC 240.4(D), 240.4(B) and Table 310.16 (values from memory above 30 A). */
const BEHIND: Readonly<Record<string, number>> = {
  '14 AWG': 15,
  '12 AWG': 20,
  '10 AWG': 30,
  '8 AWG': 40,
  '6 AWG': 60,
  '4 AWG': 70,
  '3 AWG': 90,
  '2 AWG': 100,
  '1 AWG': 110,
  '1/0 AWG': 125,
};
/** A; the same of aluminium. */
const BEHIND_ALUMINIUM: Readonly<Record<string, number>> = {
  '12 AWG': 15,
  '10 AWG': 25,
  '8 AWG': 35,
  '6 AWG': 40,
  '4 AWG': 60,
  '3 AWG': 70,
  '2 AWG': 80,
};
const area = (gauge: string): number => {
  const found = parseWireGauge(gauge);
  if (!found) throw new Error(`not a gauge: ${gauge}`);
  return found.area;
};
/** A; the largest device that a lead of that cross-section may stand behind; mm2 count as the gauge below them. */
function bears(gauge: string, metal: string): number {
  const table = metal === 'Al' ? BEHIND_ALUMINIUM : BEHIND;
  const within = Object.entries(table).filter(([name]) => area(name) <= area(gauge) * (1 + 1e-9));
  return Math.max(0, ...within.map(([, amperes]) => amperes));
}

/** A; what the leads at one port stand behind, as the plan says it; 0: nothing sizes them. */
function ahead({ device, because, amps }: Device): number {
  if (device !== 'none') return because.code === 'overcurrent/by-supply-of-control' ? 0 : (amps ?? 0);
  return because.code === 'overcurrent/circuit-will-do' ? because.values.rating.value : 0;
}

it('meets devices of every kind on these sites', () => {
  const met = new Map<string, number>();
  each((p) => {
    for (const one of p.overcurrent) {
      const { code } = one.because;
      met.set(code, (met.get(code) ?? 0) + 1);
    }
  });
  expect([...met.keys()]).toEqual(
    expect.arrayContaining([
      'overcurrent/array-below',
      'overcurrent/array-not-known',
      'overcurrent/by-maker-of-turbine',
      'overcurrent/by-supply-of-control',
      'overcurrent/circuit-not-stated',
      'overcurrent/circuit-too-large',
      'overcurrent/circuit-will-do',
      'overcurrent/no-part',
      'overcurrent/not-needed',
      'overcurrent/of-battery-bus',
      'overcurrent/size-not-stated',
    ]),
  );
});

describe('every protector', () => {
  it('has a device, a reason for none, or one that isn’t known with an item, at each port that it serves', () => {
    each((p, made) => {
      expect(p.overcurrent.length).toBeGreaterThan(0);
      const served = new Set(p.channels.map((c) => c.wire.port ?? p.ports[0]?.port));
      if (p.channels.length > 0) expect(new Set(p.overcurrent.map((o) => o.port))).toEqual(served);
      for (const one of p.overcurrent) {
        if (one.device === 'none') {
          expect([one.poles, one.volts, one.interrupting]).toEqual([null, null, null]);
          continue;
        }
        if (one.device === 'unknown') {
          const items = made.openItems.filter((i) =>
            p.part === null
              ? i.severity !== 'confirm' || i.code === 'choose/existing-unknown'
              : /^choose\/overcurrent-(turbine|control)$/.test(i.code),
          );
          expect(items.length).toBeGreaterThan(0);
          continue;
        }
        expect(one.poles).toBeGreaterThan(0);
        expect(one.poles).toBeLessThanOrEqual(p.channels.length);
        expect(one.volts).toBeGreaterThan(0);
        expect(one.dc).toBe(p.required.current === 'dc');
        // Where the catalogue states no size an item says so, once a part.
        if (one.amps === null)
          expect(made.openItems.some((i) => i.code === 'choose/overcurrent-size')).toBe(true);
      }
    });
  });

  it('has no device larger than its part allows, and none for want of one that its part doesn’t allow', () => {
    each((p) => {
      const says = LEADS.get(p.part ?? '');
      if (!says) return;
      for (const one of p.overcurrent) {
        if (one.amps !== null) expect(one.amps).toBe(Number(says.most));
        expect(ahead(one)).toBeLessThanOrEqual(says.most === '' ? 0 : Number(says.most));
      }
    });
  });

  it('never breaks a solidly grounded conductor, and breaks each other one that it takes', () => {
    each((p) => {
      const dc = p.required.current === 'dc';
      for (const one of p.overcurrent) {
        if (one.poles === null) continue;
        const mine = p.channels.filter((c) => (c.wire.port ?? one.port) === one.port);
        const lines = new Set(mine.map((c) => c.wire.name).filter((name) => name !== 'N'));
        const isBus = one.port === 'battery' || p.ports.some((o) => o.port === 'dc-in');
        if (p.grounding === 'corner') lines.delete('L2');
        if (dc && isBus && (p.grounding === 'negative' || p.grounding === 'positive'))
          lines.delete(p.grounding);
        expect([p.tag, one.poles]).toEqual([p.tag, lines.size]);
      }
    });
  });
});

describe('no terminal', () => {
  it('takes two wires (NEC 110.14(A)): a channel a wire, a device a port, and a doubled conductor is told to have a terminal for each', () => {
    let [doubled, shared] = [0, 0];
    each((p) => {
      const numbers = p.channels.map((c) => c.channel);
      expect(new Set(numbers).size).toBe(numbers.length);
      const ports = p.overcurrent.map((o) => o.port);
      expect(new Set(ports).size).toBe(ports.length);
      const noted = (code: string): boolean => p.wiring.notes.some((note) => note.code === code);
      const wires = p.channels.map((c) => `${c.wire.port ?? ''} ${c.wire.name}`);
      const hasTwice = new Set(wires).size < wires.length;
      expect([p.tag, noted('overcurrent-note/one-wire-a-terminal')]).toEqual([p.tag, hasTwice]);
      const own = p.overcurrent.filter((o) => o.device !== 'none');
      expect([p.tag, noted('overcurrent-note/one-for-each-port')]).toEqual([p.tag, own.length > 1]);
      doubled += hasTwice ? 1 : 0;
      shared += own.length > 1 ? 1 : 0;
    });
    expect(doubled).toBeGreaterThan(0);
    expect(shared).toBeGreaterThan(0);
  });
});

describe('no smallest lead', () => {
  it('is thinner than its device, its part or its clause allows, nor thicker than the terminals take', () => {
    const classes = new Map<string, number>();
    each((p, made) => {
      const says = LEADS.get(p.part ?? '');
      if (!says || !p.figures) return;
      const { smallestLead: line, smallestGroundLead: ground } = p.figures;
      const iec = made.basis === 'iec';
      // Of aluminium alone iec has no figure.
      expect(line).not.toBeNull();
      for (const lead of [line, ground]) {
        for (const one of (lead ?? '').split('; ')) {
          const [, gauge = '', metal = ''] = /^(.*) (Cu|Al)$/.exec(one) ?? [];
          // IEC 60364-5-53:2019 534.4.10, values from memory, by class; NEC 242.28.
          const ofClass = p.partDetails?.iecClass === 'T1' ? ['6 mm2', '16 mm2'] : ['2.5 mm2', '6 mm2'];
          const least = iec ? (ofClass[lead === line ? 0 : 1] ?? '') : metal === 'Al' ? '12 AWG' : '14 AWG';
          const met = `${iec ? 'iec' : 'nec'} ${p.partDetails?.iecClass ?? ''}`;
          classes.set(met, (classes.get(met) ?? 0) + 1);
          expect(area(gauge)).toBeGreaterThanOrEqual(area(least) * (1 - 1e-9));
          const range = says.range.split('|').find((r) => r.endsWith(metal));
          if (range !== undefined && says.range !== '') {
            const [from = '', to = '', unit = ''] = /^\s*(\S+) to (\S+) (\S+)/.exec(range)?.slice(1) ?? [];
            expect(area(gauge)).toBeGreaterThanOrEqual(area(`${from} ${unit}`) * (1 - 1e-9));
            expect(area(gauge)).toBeLessThanOrEqual(area(`${to} ${unit}`) * (1 + 1e-9));
          }
          if (iec || says.instructions === 'yes') continue;
          for (const device of p.overcurrent) {
            expect(bears(gauge, metal)).toBeGreaterThanOrEqual(ahead(device));
            // Without a device the leads carry what the arrays send (690.8(B), value from memory).
            const carried = p.calculations.flatMap((c) => c.steps).find((s) => s.symbol === 'Ilead');
            if (carried && device.device === 'none')
              expect(bears(gauge, metal)).toBeGreaterThanOrEqual(carried.value);
          }
        }
      }
    });
    for (const met of ['iec T1', 'iec T2', 'nec T2'])
      expect([met, (classes.get(met) ?? 0) > 0]).toEqual([met, true]);
  });

  it('is thicker than the lead as planned', () => {
    each((p) => {
      if (!p.figures?.smallestLead) return;
      const copper =
        p.figures.smallestLead.split('; ').find((one) => one.endsWith('Cu')) ?? p.figures.smallestLead;
      expect(area(p.wiring.leadGauge)).toBeGreaterThanOrEqual(
        area(copper.replace(/ (Cu|Al).*$/, '')) * (1 - 1e-9),
      );
    });
  });
});

describe('a higher fault current', () => {
  const raised = ({ facts, rows }: MadeSite): MadeSite => ({
    facts,
    rows: rated({ facts, rows }).rows.map((row): SiteRow => {
      const kA = /^(\d+) kA$/.exec(row['fault_current'] ?? '')?.[1];
      return kA === undefined ? row : { ...row, fault_current: `${Number(kA) + 7} kA` };
    }),
  });
  const breaks = (made: Plan): ReadonlyMap<string, number> =>
    new Map(
      made.protectors.flatMap((p) =>
        p.overcurrent.flatMap((one) =>
          one.interrupting === null
            ? []
            : [[`${p.ports.map((o) => o.equipment).join()}:${one.port}`, one.interrupting] as const],
        ),
      ),
    );

  it('never lowers an interrupting rating', () => {
    let compared = 0;
    fc.assert(
      fc.property(sites(), (site) => {
        const before = breaks(plan(site));
        const after = breaks(plan(raised(site)));
        for (const [at, rating] of before) {
          const now = after.get(at);
          compared += 1;
          // Nor is it left out: a part that no longer fits takes its device along, what stands there has to break more.
          expect([at, now]).toEqual([at, Math.max(now ?? 0, rating)]);
        }
      }),
      RUNS,
    );
    expect(compared).toBeGreaterThan(20);
  });
});
