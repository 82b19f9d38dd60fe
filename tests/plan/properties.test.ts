import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan, PlannedProtector } from '../../src/model/plan.js';
import { conductorText } from '../../src/words/conductors.js';
import { say } from '../../src/words/reasons/say.js';
import { dataOfCsv } from './plan-of.js';
import { csvOfSite, rowOf, rowSeed, SITE_KINDS, sites, type MadeSite, type SiteRow } from './sites.js';

// What must hold for every site, over generated lists of every kind under every basis (seeded, so that a failure repeats).

const RUNS = { numRuns: 100, seed: 20_260_101 };
const plans = new Map<string, Plan>();
/** The plan of a site, as data, of which its sentences are made; most properties ask for the same sites, which are planned once. */
function plan(site: MadeSite): Plan {
  const csv = csvOfSite(site);
  const known = plans.get(csv) ?? dataOfCsv(csv, { unchecked: true });
  plans.set(csv, known);
  return known;
}
const withoutLines = (one: Plan): string =>
  JSON.stringify(one)
    .replace(/"line":\d+/g, '"line":0')
    .replace(/\bline \d+/g, 'line 0');
const keyOf = (p: PlannedProtector): string => p.ports.map((o) => `${o.equipment}:${o.port}`).join('+');
const guarded = (one: Plan): ReadonlySet<string> =>
  new Set(one.protectors.flatMap((p) => p.ports.map((o) => `${o.equipment}:${o.port}`)));
const rulesBehind = (one: Plan, port: string): readonly string[] =>
  one.protectors
    .filter((p) => p.ports.some((o) => `${o.equipment}:${o.port}` === port))
    .flatMap((p) => p.reasons.map((r) => r.rule));

describe('every plan', () => {
  it('is the same made twice, byte for byte, and has its own schema', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        expect(JSON.stringify(dataOfCsv(csvOfSite(site)))).toBe(JSON.stringify(plan(site)));
      }),
      RUNS,
    );
  });

  it('has every port in protectors or in notPlaced, never in both', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        const made = plan(site);
        const bare = new Set(made.notPlaced.map((n) => `${n.equipment}:${n.port}`));
        const placed = guarded(made);
        const ports = made.site.equipments.flatMap((e) => e.ports.map((p) => `${e.tag}:${p}`));
        for (const port of ports) expect([port, placed.has(port)]).not.toEqual([port, bare.has(port)]);
        for (const port of [...bare, ...placed]) expect(ports).toContain(port);
        expect(made.notPlaced.every((n) => say(n.because) !== '')).toBe(true);
      }),
      RUNS,
    );
  });

  it('is a draft exactly where something is missing or contradictory; protectors are numbered', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        const made = plan(site);
        expect(made.submittable).toBe(made.openItems.every((i) => i.severity === 'confirm'));
        expect(made.protectors.map((p) => p.tag)).toEqual(made.protectors.map((_, i) => `P-${i + 1}`));
        // A place without a part has an item that says why.
        if (made.protectors.some((p) => p.part === null)) expect(made.submittable).toBe(false);
      }),
      RUNS,
    );
  });

  it('chooses parts that meet every requirement printed', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        for (const p of plan(site).protectors) if (p.part !== null) expectMet(p, site.facts['basis'] ?? '');
      }),
      RUNS,
    );
  });

  it('gives every conductor that is asked for a channel, and leaves no channel unwired', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        const made = plan(site);
        for (const p of made.protectors) {
          const housings = made.protectors.filter(
            (o) => keyOf(o) === keyOf(p) && say(o.protects) === say(p.protects),
          );
          const wired = housings.flatMap((h) => h.channels.map((c) => conductorText(c.wire)));
          expect(new Set(wired).size).toBe(wired.length);
          const own = wired.filter((c) => !c.endsWith('(doubled)'));
          expect(own.length).toBeGreaterThanOrEqual(p.required.conductors);
          expect(p.channels.map((c) => c.channel)).toEqual(p.channels.map((_, i) => i + 1));
          if (p.partDetails) expect(p.channels).toHaveLength(p.partDetails.channels);
          if (p.required.current === 'dc') expect(wired.toSorted()).toEqual(['negative', 'positive']);
          for (const c of p.channels) expect(c.indicator.length).toBeGreaterThan(0);
        }
      }),
      RUNS,
    );
  });
});

describe('fault currents', () => {
  const byPorts = (made: Plan): ReadonlyMap<string, PlannedProtector> =>
    new Map(made.protectors.map((p) => [keyOf(p), p]));
  /** Every stated current of a site a given number of times as high. */
  const times = (site: MadeSite, factor: number): MadeSite => ({
    ...site,
    rows: site.rows.map((row) => {
      const { fault_current: stated = '' } = row;
      const [figure = '', unit = ''] = stated.split(' ');
      return figure === '' ? row : { ...row, fault_current: `${Number(figure) * factor} ${unit}` };
    }),
  });

  it('that are higher never lower what a part must bear', () => {
    fc.assert(
      fc.property(sites(), fc.constantFrom(1.5, 2, 10), (site, factor) => {
        const before = byPorts(plan(site));
        for (const [key, { required }] of byPorts(plan(times(site, factor)))) {
          const was = before.get(key)?.required;
          if (was) expect(required.sccr ?? 0).toBeGreaterThanOrEqual(was.sccr ?? 0);
          // What is known of a place doesn't hang on how high it is.
          if (was) expect(required.sccr === null).toBe(was.sccr === null);
        }
      }),
      RUNS,
    );
  });

  it('that one more row states never lower it either, but where that row says what is available there', () => {
    const gives: ReadonlySet<string> = new Set(['generator', 'inverter-charger', 'ac-battery']);
    fc.assert(
      fc.property(sites(), fc.nat(20), (site, at) => {
        const silent = site.rows.filter(
          (r) => gives.has(r['kind'] ?? '') && (r['fault_current'] ?? '') === '',
        );
        const one = silent[at % Math.max(1, silent.length)];
        if (!one) return;
        const rows = site.rows.map((r) => (r === one ? { ...r, fault_current: '3 kA' } : r));
        const before = byPorts(plan(site));
        for (const [key, { required }] of byPorts(plan({ ...site, rows }))) {
          const was = before.get(key)?.required.sccr ?? 0;
          expect(required.sccr ?? 0).toBeGreaterThanOrEqual(was);
        }
      }),
      RUNS,
    );
  });
});

/** Each requirement as the plan prints it, against the part as the plan prints it. */
function expectMet(p: PlannedProtector, basis: string): void {
  const { required, figures, partDetails } = p;
  if (!figures || !partDetails) throw new Error('a part without figures');
  expect(required.mcov).not.toBeNull();
  expect(figures.mcov ?? 0).toBeGreaterThanOrEqual(required.mcov ?? Infinity);
  expect(figures.in ?? 0).toBeGreaterThanOrEqual(required.in ?? Infinity);
  if (required.sccr !== null) expect(figures.sccr ?? 0).toBeGreaterThanOrEqual(required.sccr);
  if (required.types.length > 0) expect(required.types).toContain(partDetails.type);
  if (required.enclosures.length > 0) expect(required.enclosures).toContain(partDetails.enclosure);
  if (required.listedFor !== null) expect(p.part).toMatch(/FIRST/);
  if (!figures.withstandAssumed && figures.impulseWithstand !== null) {
    expect((figures.up ?? 0) + (figures.leadVoltage ?? 0)).toBeLessThanOrEqual(
      figures.impulseWithstand + 0.01,
    );
  }
  if (basis !== 'iec') expect(partDetails.listing).not.toBe('');
}

/** What each AC system holds beside itself, as rules.md section 0 lists it. */
const PARTS: Readonly<Record<string, readonly string[]>> = {
  '120/240': ['120', '240'],
  '120/208': ['120', '208'],
  '208Y/120': ['120', '208', '120/208'],
  '240/120 high-leg': ['120', '240', '120/240', '240 delta'],
  '480Y/277': ['277', '480', '480 delta'],
  '600Y/347': ['347'],
  '240 delta': ['240'],
  '480 delta': ['480'],
  '400Y/230': ['230'],
};
const STACKABLE: ReadonlySet<string> = new Set(['inverter-charger', 'ac-battery']);
type End = Plan['site']['runs'][number]['from'];

/** The runs of a plan at whose ends the list states systems of which one can’t be taken from the other, stated exceptions aside. */
function notHeld(made: Plan, rows: readonly SiteRow[]): readonly string[] {
  const rowOfTag = new Map(rows.map((r) => [r['tag'] ?? '', r]));
  const cell = ({ equipment, port }: End): string => {
    const row = rowOfTag.get(equipment);
    if (port === 'service' || port === 'feeder' || port === 'ac-in') return row?.['ac_in'] ?? '';
    return port === 'ac-in-2' ? (row?.['ac_in_2'] ?? '') : (row?.['ac_out'] ?? '');
  };
  const into = (to: End): Plan['site']['runs'] =>
    made.site.runs.filter((r) => r.to.equipment === to.equipment && r.to.port === to.port);
  const kind = (end: End): string => rowOfTag.get(end.equipment)?.['kind'] ?? '';
  const found: string[] = [];
  for (const { from, to } of made.site.runs) {
    // A panel that states none has that of the first above it that does, where one alone feeds it.
    let up = from;
    for (let above = into(up); cell(up) === '' && above.length === 1 && above[0]; above = into(up))
      up = above[0].from;
    const whole = cell(up);
    const part = cell(to);
    if (whole === '' || part === '' || whole === part || PARTS[whole]?.includes(part)) continue;
    const sources = into(to).filter((r) => STACKABLE.has(kind(r.from)));
    const isStacked = STACKABLE.has(kind(from)) && sources.length > 1;
    const isOne120 =
      whole === '120' && part === '120/240' && [...STACKABLE, 'generator'].includes(kind(from));
    if (!isStacked && !isOne120) found.push(`${from.equipment} > ${to.equipment}: ${whole} > ${part}`);
  }
  return found;
}

describe('a plan in which what is fed isn’t held by what feeds it', () => {
  it('is never complete, but for what is stacked and one 120 V source', () => {
    let refused = 0;
    let held = 0;
    fc.assert(
      fc.property(sites(), (site) => {
        const made = plan(site);
        const odd = notHeld(made, site.rows);
        if (odd.length > 0) {
          expect([odd, made.submittable]).toEqual([odd, false]);
          refused += 1;
        } else if (made.submittable) held += 1;
      }),
      RUNS,
    );
    // Both kinds are among the sites.
    expect(Math.min(refused, held)).toBeGreaterThan(5);
  });
});

/** What a disconnect may not change: where a protector stands and why, its part, its figures, its wires and its lights. */
function essenceOf(made: Plan): string {
  const protectors = made.protectors.map((p) => ({
    ports: p.ports,
    part: p.part,
    place: p.place,
    outdoors: p.outdoors,
    system: p.system,
    grounding: p.grounding,
    reasons: p.reasons.map((r) => [r.rule, r.strength]),
    required: p.required,
    figures: p.figures,
    channels: p.channels.map((c) => [c.wire, c.to, c.indicator.map((i) => [i.state, i.shows])]),
    isolation: p.wiring.isolation,
    measuring: p.wiring.measuring,
  }));
  const bare = new Set(made.notPlaced.map((n) => `${n.equipment}:${n.port}`));
  bare.delete('NEW:terminals');
  return JSON.stringify({ protectors, bare: [...bare] });
}

describe('an indoor disconnect that is no rapid-shutdown box', () => {
  it('taken out, its lengths added, changes no protector, figure or light', () => {
    let changed = 0;
    fc.assert(
      fc.property(sites(), fc.nat(), fc.nat(20), (site, which, metres) => {
        const joined = site.rows.flatMap((r, i) =>
          r['connects_to'] && PASSES.has(r['kind'] ?? '') ? [i] : [],
        );
        const at = joined[which % Math.max(1, joined.length)];
        const row = at === undefined ? undefined : site.rows[at];
        if (!row) return;
        const { connects_to: to = '', run_length: length = '' } = row;
        const target = site.rows.find((r) => r['tag'] === to.split('/')[0]);
        // Between a service and its first panel it asks which is the service equipment.
        if (row['kind'] === 'panel' && target?.['kind'] === 'service') return;
        changed += 1;
        const whole = length === '' ? '' : `${Number.parseFloat(length) + metres} m`;
        const plain = site.rows.map((r, i) => (i === at ? { ...r, run_length: whole } : r));
        const more: SiteRow = {
          tag: 'NEW',
          kind: 'disconnect',
          connects_to: to,
          run_length: length === '' ? '' : `${metres} m`,
          place: 'House / hall',
          outdoors: 'no',
        };
        const parted = [...site.rows.map((r, i) => (i === at ? { ...r, connects_to: 'NEW' } : r)), more];
        expect(essenceOf(plan({ ...site, rows: parted }))).toBe(essenceOf(plan({ ...site, rows: plain })));
      }),
      RUNS,
    );
    expect(changed).toBeGreaterThan(30);
  });
});

/** Kinds whose connection carries power: what carries none ends at a disconnect. */
const PASSES: ReadonlySet<string> = new Set(
  SITE_KINDS.filter((kind) => !['control-circuit', 'signal-line', 'other'].includes(kind)),
);

describe('the order of rows', () => {
  it('changes nothing in a plan but line numbers', () => {
    const turned = sites().chain((site) =>
      fc
        .shuffledSubarray([...site.rows], { minLength: site.rows.length, maxLength: site.rows.length })
        .map((rows) => ({ site, rows })),
    );
    fc.assert(
      fc.property(turned, ({ site, rows }) => {
        expect(withoutLines(plan({ ...site, rows }))).toBe(withoutLines(plan(site)));
      }),
      RUNS,
    );
  });
});

describe('a colder site', () => {
  it('never lowers a required MCOV, or turns it into an open item', () => {
    fc.assert(
      fc.property(sites(), fc.integer({ min: 1, max: 30 }), (site, colder) => {
        const warm = plan(site);
        const temperature = Number.parseFloat(site.facts['lowest_temp'] ?? '0') - colder;
        const cold = plan({ ...site, facts: { ...site.facts, lowest_temp: `${temperature} C` } });
        for (const p of warm.protectors) {
          const there = cold.protectors.find(
            (o) => keyOf(o) === keyOf(p) && say(o.protects) === say(p.protects),
          );
          if (!there || p.required.mcov === null) continue;
          const isLess = (there.required.mcov ?? Infinity) < p.required.mcov;
          expect(isLess && cold.submittable, `${keyOf(p)} at ${temperature} C`).toBe(false);
          if (there.required.mcov !== null)
            expect(there.required.mcov).toBeGreaterThanOrEqual(p.required.mcov);
        }
      }),
      RUNS,
    );
  });
});

describe('a longer run', () => {
  it('never removes a protector', () => {
    fc.assert(
      fc.property(sites(), fc.nat(), fc.integer({ min: 1, max: 80 }), (site, which, more) => {
        const withLength = site.rows.flatMap((r, i) => (r['run_length'] ? [i] : []));
        const at = withLength[which % Math.max(1, withLength.length)];
        if (at === undefined) return;
        const rows = site.rows.map((r, i) =>
          i === at ? { ...r, run_length: `${Number.parseFloat(r['run_length'] ?? '0') + more} m` } : r,
        );
        const after = guarded(plan({ ...site, rows }));
        for (const port of guarded(plan(site))) expect(after).toContain(port);
      }),
      RUNS,
    );
  });
});

describe('one more equipment', () => {
  it('never removes another one’s protector, but where place/grid-tie-ac, a newly named source or 694.7(D) says so', () => {
    fc.assert(
      fc.property(sites(), rowSeed, (site, seed) => {
        const before = plan(site);
        const added = rowOf(seed, 'NEW', site.rows, takenOf(site.rows), site.facts['basis'] === 'iec');
        const after = plan({ ...site, rows: [...site.rows, added] });
        const there = guarded(after);
        for (const port of guarded(before)) {
          if (there.has(port)) continue;
          const rules = rulesBehind(before, port);
          expect(mayGo(rules, port, added), `${port} (${rules.join()}) after ${JSON.stringify(added)}`).toBe(
            true,
          );
        }
      }),
      RUNS,
    );
  });
});

/** Where the rules themselves say that one more equipment takes a protector away. */
function mayGo(rules: readonly string[], port: string, added: SiteRow): boolean {
  const [equipment = '', name = ''] = port.split(':');
  const named = (added['connects_to'] ?? '').split('/')[0];
  // An input counts as fed, by an array, until a source names its converter.
  if (name.startsWith('dc-in') && named === equipment) return true;
  // One placement of the site carries 694.7(D): a service, or a panel that comes first, takes it over; and what it required
  // where nothing is worth protecting goes with it.
  if (rules.includes('place/wind-premises')) return true;
  return rules.every((rule) => rule === 'place/grid-tie-ac');
}

/** How many inputs of each converter the rows of a site have taken. */
function takenOf(rows: readonly SiteRow[]): Map<string, number> {
  const taken = new Map<string, number>();
  for (const { connects_to: to = '' } of rows) {
    const tag = to.split('/')[0] ?? '';
    taken.set(tag, (taken.get(tag) ?? 0) + 1);
  }
  return taken;
}

describe('a quantity of N', () => {
  it('is N rows tagged TAG-1 to TAG-N, but for line numbers', () => {
    fc.assert(
      fc.property(sites(10), fc.nat(), fc.integer({ min: 2, max: 4 }), (site, which, quantity) => {
        // Every row states a quantity, so that no default stands in; what connects to the group connects to its first.
        const rows: SiteRow[] = site.rows.map((r) => ({ ...r, quantity: '1' }));
        const typed = rows[which % rows.length];
        if (!typed || typed['kind'] === 'grid-tie-inverter') return;
        const strings = typed['strings_in_parallel'] ?? '1';
        const modules = String(Number(typed['modules_in_series'] ?? '1') * Number(strings));
        // How many modules each array has says that the quantity counts arrays.
        const group: SiteRow =
          typed['kind'] === 'array' ? { ...typed, strings_in_parallel: strings, modules } : typed;
        rows[which % rows.length] = group;
        const tag = group['tag'] ?? '';
        const first = rows.map((r) => {
          const to = r['connects_to'] ?? '';
          const isGroup = to === tag || to.startsWith(`${tag}/`);
          return isGroup ? { ...r, connects_to: `${tag}-1${to.slice(tag.length)}` } : r;
        });
        const one = first.flatMap((r) => (r['tag'] === tag ? [{ ...r, quantity: String(quantity) }] : [r]));
        const many = first.flatMap((r) =>
          r['tag'] === tag
            ? Array.from({ length: quantity }, (_, i) => ({ ...r, tag: `${tag}-${i + 1}` }))
            : [r],
        );
        const [counted, listed] = [one, many].map((of) => withoutLines(plan({ ...site, rows: of })));
        expect(counted).toBe(listed);
      }),
      RUNS,
    );
  });
});

/** Equipments that cables of power or control join to one, itself among them. */
function joinedTo(made: Plan, tag: string): ReadonlySet<string> {
  const found = new Set([tag]);
  for (let size = 0; size < found.size;) {
    size = found.size;
    for (const { from, to } of made.site.runs) {
      if (found.has(from.equipment)) found.add(to.equipment);
      else if (found.has(to.equipment)) found.add(from.equipment);
    }
  }
  return found;
}

type Part = Plan['isolation']['parts'][number];

/** The number of the first, or the last, step that does something to an equipment; undefined: none does. */
function stepOf(steps: Part['steps'], tag: string, which: 'first' | 'last', but = 8): number | undefined {
  const numbers = steps
    .filter(({ number, acts }) => number !== but && acts.some(({ tags }) => tags.includes(tag)))
    .map(({ number }) => number);
  return which === 'first' ? numbers[0] : numbers.at(-1);
}

const CHARGES: ReadonlySet<string> = new Set([
  'array',
  'wind-turbine',
  'hydro-turbine',
  'service',
  'generator',
  'inverter-charger',
  'grid-tie-inverter',
]);
const TURBINES: ReadonlySet<string> = new Set(['wind-turbine', 'hydro-turbine']);

describe('the isolation of a site', () => {
  it('opens no battery before what charges it, and takes no load off a turning turbine; nor does any box leave that out', () => {
    let batteries = 0;
    let turbines = 0;
    fc.assert(
      fc.property(sites(), (site) => {
        const made = plan(site);
        const kinds = new Map(made.site.equipments.map((e) => [e.tag, e.kind]));
        for (const p of made.protectors) {
          const [port] = p.ports;
          const { part: number, steps } = p.wiring.isolation;
          const part = made.isolation.parts.find((one) => one.number === number);
          expect(part, p.tag).toBeDefined();
          if (!part || !port) continue;
          const joined = joinedTo(made, port.equipment);
          for (const tag of joined) {
            const kind = kinds.get(tag) ?? '';
            const own = stepOf(part.steps, tag, 'last');
            if (kind === 'battery' && own !== undefined && steps.includes(own)) {
              batteries += 1;
              const charging = [...joined].filter((one) => CHARGES.has(kinds.get(one) ?? ''));
              for (const one of charging) {
                const off = stepOf(part.steps, one, 'last') ?? Infinity;
                expect([one, off < own, steps.includes(off)]).toEqual([one, true, true]);
              }
            }
            if (!TURBINES.has(kind)) continue;
            // Its own step comes before whatever makes anything else dead, and after it on the way back.
            const stop = stepOf(part.steps, tag, 'first') ?? Infinity;
            const release = stepOf(part.back, tag, 'last') ?? -Infinity;
            const others = steps.filter((one) => one >= 3 && one <= 7);
            if (others.length > 0) {
              turbines += 1;
              expect([tag, steps.includes(stop)]).toEqual([tag, true]);
            }
            for (const one of joined) {
              const isLoad = !TURBINES.has(kinds.get(one) ?? '') && kinds.get(one) !== 'diversion-load';
              const dead = part.steps.find(
                (s) => s.number > 1 && s.number !== 8 && s.acts.some(({ tags }) => tags.includes(one)),
              );
              const live = part.back.filter(
                (s) => s.number > 1 && s.acts.some(({ tags }) => tags.includes(one)),
              );
              if (isLoad && dead) expect([one, dead.number > stop]).toEqual([one, true]);
              // Numbers run down on the way back.
              if (isLoad) for (const s of live) expect([one, s.number > release]).toEqual([one, true]);
            }
          }
        }
      }),
      RUNS,
    );
    expect(Math.min(batteries, turbines)).toBeGreaterThan(20);
  });

  it('frees automatic starts last of all, after every turbine', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        for (const { steps, back } of plan(site).isolation.parts) {
          expect(steps.map((s) => s.number)).toEqual(steps.map((s) => s.number).toSorted((a, b) => a - b));
          expect(back.map((s) => s.number)).toEqual(back.map((s) => s.number).toSorted((a, b) => b - a));
          const starts = steps.find((s) => s.number === 1)?.acts.flatMap(({ tags }) => tags) ?? [];
          const freed = back.find((s) => s.number === 1)?.acts.flatMap(({ tags }) => tags) ?? [];
          expect(freed.toSorted()).toEqual(starts.toSorted());
        }
      }),
      RUNS,
    );
  });

  it('holds every source that can feed a box over any path', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        const made = plan(site);
        const kinds = new Map(made.site.equipments.map((e) => [e.tag, e.kind]));
        for (const p of made.protectors) {
          const part = made.isolation.parts.find((one) => one.number === p.wiring.isolation.part);
          const named = new Set(part?.steps.flatMap((s) => s.acts.flatMap(({ tags }) => tags)));
          for (const { equipment } of p.ports)
            for (const tag of joinedTo(made, equipment)) {
              const kind = kinds.get(tag) ?? '';
              if (CHARGES.has(kind) || kind === 'battery' || kind === 'ac-battery')
                expect(named).toContain(tag);
            }
        }
      }),
      RUNS,
    );
  });
});

describe('the readings of a box', () => {
  it('stop at no figure above what the plan expects at most, and have no low figure above the high one', () => {
    let bands = 0;
    fc.assert(
      fc.property(sites(), (site) => {
        for (const p of plan(site).protectors) {
          const most = p.required.mcov;
          for (const { between, low, high } of p.wiring.measuring.bands) {
            bands += 1;
            if (low !== null && high !== null) expect(low).toBeLessThanOrEqual(high);
            // Line to line a sound system stands above what one conductor has to ground: by 2 in split phase, by root 3 in a wye.
            const isToGround = between.every(({ to }) => to === null) || p.required.current === 'dc';
            if (high === null || most === null) continue;
            if (isToGround && high > 15) expect([p.tag, high <= most + 0.01]).toEqual([p.tag, true]);
            expect(high).toBeLessThanOrEqual(Math.max(15, 2 * most));
            expect(p.wiring.measuring.meter?.volts ?? Infinity).toBeGreaterThanOrEqual(high);
          }
        }
      }),
      RUNS,
    );
    expect(bands).toBeGreaterThan(500);
  });

  it('read every DC pair pole to pole, with its sign, and every conductor that has a channel to ground', () => {
    fc.assert(
      fc.property(sites(), (site) => {
        for (const p of plan(site).protectors) {
          const read = p.wiring.measuring.bands.flatMap((band) => band.between);
          for (const { wire, to } of p.channels) {
            const isRead = read.some(
              (r) => r.wire.name === wire.name && r.wire.port === wire.port && (r.to === null || to === 'N'),
            );
            expect([p.tag, wire.name, isRead]).toEqual([p.tag, wire.name, true]);
          }
          if (p.required.current !== 'dc') continue;
          expect(read[0]).toMatchObject({ wire: { name: 'positive' }, to: { name: 'negative' }, sign: '+' });
        }
      }),
      RUNS,
    );
  });
});
