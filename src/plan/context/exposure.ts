import { calculatedRiskLevel, criticalLength, type ExposedSite } from '../../electrical/exposure.js';
import { flashDensityFromThunderDays, lineEvents, type LineInput } from '../../electrical/lightning.js';
import { statedAt, taken, workingOf } from '../../electrical/working.js';
import type { FeedingLine } from '../../model/reasons/calculation.js';
import type { RunLeg, Site, SiteEquipment } from '../../model/site.js';
import { subject, type Working } from '../../model/step.js';
import { riskDecides, serviceAsksForProtection } from '../../rules/supply-risk.js';
import { CONVERTERS } from '../../site/converters.js';
import { ultimateSources } from '../../site/inputs.js';

/** Flashes a year to one line that feeds the site, and near it. */
export interface LineStrikes {
  readonly line: FeedingLine;
  readonly to: Working;
  readonly near: Working;
}

/** What the job's facts say of its exposure to lightning. */
export interface Exposure {
  /** Flashes per km2 and year. */
  readonly flashDensity: Working | undefined;
  readonly riskLevel: Working | undefined;
  /** Flashes a year to and near each line whose length is stated; none where the flash density isn't known. */
  readonly lineStrikes: readonly LineStrikes[];
  /** km of overhead line that stand in for lines of which nobody states the length. */
  readonly kmAssumed: number;
  /** True where the calculated risk level decides a strength: `iec`, a dwelling with a service. */
  readonly riskDecides: boolean;
  /** True where place/service is required under `iec` at this site. */
  readonly serviceRequired: boolean;
  /** m; undefined: flash density unknown. */
  criticalLengthFor(equipment: SiteEquipment): Working | undefined;
  /** m; summed runs of all arrays upstream of a converter (or of the converter that an array feeds); undefined: not known. */
  arraysLength(equipment: SiteEquipment): number | undefined;
}

/** @param site the survey of one job */
export function exposureOf(site: Site): Exposure {
  const { facts } = site.list;
  const flashDensity = flashDensityOf(site);
  const lines = {
    lvOverhead: facts.lv_overhead_km?.value,
    lvUnderground: facts.lv_underground_km?.value,
    hvOverhead: facts.hv_overhead_km?.value,
    hvUnderground: facts.hv_underground_km?.value,
  };
  const risk = flashDensity
    ? calculatedRiskLevel({
        surroundings: facts.surroundings?.value ?? 'rural',
        flashDensity: flashDensity.value,
        lines,
      })
    : undefined;
  const riskLevel = risk?.ok ? risk.working : undefined;
  const hasService = site.equipments.some((e) => e.kind === 'service');
  const supply = {
    basis: site.basis.value,
    occupancy: site.occupancy.value,
    riskLevel: riskLevel?.value,
  };
  const lengths = new Map<SiteEquipment, number | undefined>();
  const critical = new Map<ExposedSite, Working | undefined>();
  return {
    flashDensity,
    riskLevel,
    lineStrikes: lineStrikesOf(site, flashDensity),
    kmAssumed: risk?.ok ? risk.lines.assumed : 0,
    riskDecides: hasService && riskDecides(supply),
    serviceRequired: hasService && serviceAsksForProtection(supply),
    criticalLengthFor(equipment) {
      if (!flashDensity) return undefined;
      const exposed = exposedSite(site, equipment);
      if (!critical.has(exposed)) {
        const found = criticalLength({ site: exposed, flashDensity: flashDensity.value });
        critical.set(exposed, found.ok ? found.working : undefined);
      }
      return critical.get(exposed);
    },
    arraysLength(equipment) {
      const converter = CONVERTERS.has(equipment.kind) ? equipment : converterFed(equipment);
      if (!converter) return undefined;
      if (!lengths.has(converter)) lengths.set(converter, sumOfArrayRuns(converter));
      return lengths.get(converter);
    },
  };
}

function flashDensityOf(site: Site): Working | undefined {
  const { flash_density: stated, thunderstorm_days: days } = site.list.facts;
  if (stated) {
    const density = subject('exposure/flash-density');
    return workingOf([], taken('Ng', density, stated.value, '1/(km² a)', 'stated', stated.origin));
  }
  if (!days) return undefined;
  return statedAt(flashDensityFromThunderDays({ days: days.value }).working, { Td: days.origin });
}

const LINES = [
  { field: 'lv_overhead_km', line: 'lv-overhead', laid: 'overhead', voltage: 'lv' },
  { field: 'lv_underground_km', line: 'lv-underground', laid: 'buried', voltage: 'lv' },
  { field: 'hv_overhead_km', line: 'hv-overhead', laid: 'overhead', voltage: 'hv' },
  { field: 'hv_underground_km', line: 'hv-underground', laid: 'buried', voltage: 'hv' },
] as const satisfies readonly ({ readonly field: string; readonly line: FeedingLine } & Pick<
  LineInput,
  'laid' | 'voltage'
>)[];

/** Only lines of a stated length: what is assumed of the others is for the calculated risk level alone. */
function lineStrikesOf(site: Site, flashDensity: Working | undefined): readonly LineStrikes[] {
  if (!flashDensity) return [];
  const { facts } = site.list;
  return LINES.flatMap(({ field, line, laid, voltage }) => {
    const km = facts[field];
    if (!km || km.value <= 0) return [];
    const events = lineEvents({
      length: km.value * 1000,
      flashDensity: flashDensity.value,
      laid,
      voltage,
      surroundings: facts.surroundings?.value ?? 'rural',
    });
    const places = { LL: km.origin };
    return [{ line, to: statedAt(events.workingTo, places), near: statedAt(events.workingNear, places) }];
  });
}

/** A ground-mounted array whose converter isn't in a building is a plant; else it is the job's occupancy. */
function exposedSite(site: Site, equipment: SiteEquipment): ExposedSite {
  const converter = CONVERTERS.has(equipment.kind) ? equipment : converterFed(equipment);
  const arrays = equipment.kind === 'array' ? [equipment] : converter ? arraysOf(converter) : [];
  const onGround = arrays.length > 0 && arrays.every((a) => a.facts.mounting?.value === 'ground');
  if (onGround && converter && converter.outdoors.value) return 'ground-mounted';
  return site.occupancy.value === 'dwelling' ? 'dwelling' : 'other';
}

function arraysOf(converter: SiteEquipment): readonly SiteEquipment[] {
  return converter.ports
    .flatMap((p) => (p.cls === 'dc-in' ? ultimateSources(p) : []))
    .filter((s) => s.kind === 'array');
}

/** The converter at the end of a source's runs, combiners passed through. */
export function converterFed(source: SiteEquipment): SiteEquipment | undefined {
  let at: SiteEquipment | undefined = source;
  for (let step = 0; at && step < 100; step += 1) {
    const current: SiteEquipment = at;
    const run = current.ports
      .flatMap((p) => p.runs)
      .find((r) => r.from.equipment === current && r.carries === 'dc' && r.to.cls !== 'dc-bus');
    at = run?.to.equipment;
    if (at && CONVERTERS.has(at.kind)) return at;
  }
  return undefined;
}

/** Each array run and combiner run on the way counts once; undefined where one isn't stated. */
function sumOfArrayRuns(converter: SiteEquipment): number | undefined {
  const legs = new Set<RunLeg>();
  const walk = (equipment: SiteEquipment): boolean => {
    let holdsArray = false;
    for (const port of equipment.ports) {
      for (const run of port.runs) {
        if (run.to.equipment !== equipment || run.carries !== 'dc') continue;
        const source = run.from.equipment;
        const counts = source.kind === 'array' || (source.kind === 'combiner' && walk(source));
        if (!counts) continue;
        holdsArray = true;
        for (const leg of run.legs) legs.add(leg);
      }
    }
    return holdsArray;
  };
  if (!walk(converter)) return undefined;
  let sum = 0;
  for (const { length } of legs) {
    if (length === undefined) return undefined;
    sum += length;
  }
  return sum;
}
