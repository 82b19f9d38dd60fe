import { reason, type Reason } from '../../model/reason.js';
import { leadFigures } from '../../electrical/leads.js';
import type { Catalogue, Part } from '../../model/catalogue.js';
import type { Settings } from '../../model/settings.js';
import type { OvercurrentPlace } from '../../rules/lead-duty.js';
import type { FitFacts } from '../../rules/fit-facts.js';
import { NEC_2023_TABLE_110_28_OUTDOORS, nemaTypes } from '../../rules/rate/enclosure.js';
import { FIT_RULES } from '../../rules/rulebook.js';
import { byNaturalOrder } from '../../model/natural-order.js';
import { memo, type Memo } from '../context/memo.js';
import { plannedLeads } from './planned-lead.js';
import { leadsByMetal, leadsToPlan, type MetalLeads } from '../../rules/smallest-lead.js';

/** What is asked of a part, without the part: everything that a fit rule may know. */
export type Specification = Omit<FitFacts, 'part' | 'leadVoltage' | 'thresholds'> & {
  /** m; as the list states it for this place; undefined: as the catalogue or the settings say. */
  readonly leadLength: number | undefined;
  /** A; In of the parts that go first here; undefined: none does for its In. */
  readonly strongFirst: number | undefined;
};

/** Why a part was left. */
export interface Rejection {
  readonly part: string;
  readonly rule: string;
  readonly because: Reason;
}

/** How one part stands against a specification. */
export interface Candidate {
  readonly part: Part;
  /** V; of its leads as planned. */
  readonly leadVoltage: number;
  /** Its smallest leads there, one a metal. */
  readonly leads: readonly MetalLeads[];
  readonly shortfalls: readonly { readonly rule: string; readonly says: Reason }[];
  readonly failures: readonly { readonly rule: string; readonly because: Reason; readonly gap: number }[];
}

/** The choice from a catalogue. */
export interface Choice {
  readonly best: Candidate | undefined;
  readonly rejected: readonly Rejection[];
  /** The part that misses least, where none fits; undefined where one does, and of an empty catalogue. */
  readonly nearest: Reason | undefined;
}

const OUTDOORS: ReadonlySet<string> = new Set(NEC_2023_TABLE_110_28_OUTDOORS);

/** Holds one part against a specification by every fit rule. */
export function assess(part: Part, specification: Specification, settings: Settings): Candidate {
  const { basis, classOneAsked, leadPlaces: places, leadLength } = specification;
  const leads = leadsByMetal({ basis, classOneAsked, places, part });
  const planned = plannedLeads(part, leadLength, basis, settings, leadsToPlan(leads));
  const { value: leadVoltage } = leadFigures({ ...planned, upBasis: part.upBasis });
  const facts: FitFacts = { ...specification, part, leadVoltage, thresholds: settings.thresholds };
  const shortfalls: { rule: string; says: Reason }[] = [];
  const failures: { rule: string; because: Reason; gap: number }[] = [];
  for (const rule of FIT_RULES) {
    if (rule.outside?.(facts) !== undefined) continue;
    const fit = rule.accepts(facts);
    if (!fit.fits) failures.push({ rule: rule.id, because: fit.because, gap: fit.gap });
    else if (fit.shortfall !== undefined) shortfalls.push({ rule: rule.id, says: fit.shortfall });
  }
  return { part, leadVoltage, leads, shortfalls, failures };
}

const chosen = new WeakMap<Settings, Memo<Choice>>();

function choices(settings: Settings): Memo<Choice> {
  let ofSettings = chosen.get(settings);
  if (!ofSettings) {
    ofSettings = memo<Choice>();
    chosen.set(settings, ofSettings);
  }
  return ofSettings;
}

function placesKey(places: readonly OvercurrentPlace[]): string {
  let key = '';
  for (const p of places) key += `/${p.circuit},${p.aheadOfDisconnect},${p.ownDevice},${p.arrayCurrent}`;
  return key;
}

/** What is yes or no of a specification, a bit each. */
function bitsOf(d: Specification): number {
  return (
    Number(d.atService) |
    (Number(d.withstandAssumed) << 1) |
    (Number(d.aheadOfDisconnect) << 2) |
    (Number(d.outdoors) << 3) |
    (Number(d.oneHousing) << 4) |
    (Number(d.classOneAsked) << 5)
  );
}

/** Every field of a specification, in one order: what two places ask alike is chosen once. */
function keyOf(d: Specification): string {
  return `${bitsOf(d)}|${d.basis}|${d.earthing}|${d.current}|${d.circuit}|${d.phases}|${d.mcov}|${d.nominalCurrent}|${d.sccr}|${d.withstand}|${d.listedFor}|${d.lightning}|${d.conductors}|${d.spareRoom}|${d.leadLength}|${d.strongFirst}|${placesKey(d.leadPlaces)}`;
}

/**
 * Chooses from the catalogue: of the parts that fail no rule, first those without a shortfall, then at an AC end of a run outdoors or
 * between buildings those of so much In, then lowest MCOV, outdoors 4X, lowest Up, highest In, fewest housings, lowest price, part number.
 * @param specification what the place asks
 * @returns the best candidate, and every other part with its reason
 */
export function choosePart(catalogue: Catalogue, specification: Specification, settings: Settings): Choice {
  return choices(settings)(catalogue, keyOf(specification), () =>
    chooseAnew(catalogue, specification, settings),
  );
}

function chooseAnew(catalogue: Catalogue, specification: Specification, settings: Settings): Choice {
  const candidates = catalogue.parts.map((part) => assess(part, specification, settings));
  const fitting = candidates.filter((c) => c.failures.length === 0).sort((a, b) => rank(a, b, specification));
  const best = fitting[0];
  const rejected: Rejection[] = [];
  for (const candidate of candidates) {
    if (candidate === best) continue;
    const part = candidate.part.part;
    for (const failure of candidate.failures) {
      rejected.push({ part, rule: failure.rule, because: failure.because });
    }
    if (candidate.failures.length === 0 && best) {
      rejected.push({
        part,
        rule: 'choice',
        because: reason('choice/other-first', {
          part: best.part.part,
          by: why(best, candidate, specification),
        }),
      });
    }
  }
  return { best, rejected, nearest: best ? undefined : nearestMiss(candidates) };
}

const mcovOf = (part: Part, specification: Specification): number =>
  (specification.current === 'ac' ? part.mcovAc : part.mcovDc) ?? 0;

/** The order of choice; each step with what it says where it decides. */
const STEPS: readonly {
  readonly says: Reason;
  readonly compare: (a: Candidate, b: Candidate, specification: Specification) => number;
}[] = [
  {
    says: reason('choice/no-shortfall'),
    compare: (a, b) => Number(a.shortfalls.length > 0) - Number(b.shortfalls.length > 0),
  },
  {
    says: reason('choice/strong-outdoors'),
    compare: (a, b, d) => Number(isWeak(a.part, d)) - Number(isWeak(b.part, d)),
  },
  {
    says: reason('choice/lower-mcov'),
    compare: (a, b, d) => mcovOf(a.part, d) - mcovOf(b.part, d),
  },
  {
    says: reason('choice/enclosure-4x'),
    compare: (a, b, d) => (d.outdoors ? Number(!is4x(a.part)) - Number(!is4x(b.part)) : 0),
  },
  { says: reason('choice/lower-level'), compare: (a, b) => (a.part.up ?? 0) - (b.part.up ?? 0) },
  {
    says: reason('choice/higher-discharge'),
    compare: (a, b) => (b.part.nominalCurrent ?? 0) - (a.part.nominalCurrent ?? 0),
  },
  { says: reason('choice/fewer-housings'), compare: (a, b, d) => housings(a.part, d) - housings(b.part, d) },
  { says: reason('choice/lower-price'), compare: (a, b) => price(a.part) - price(b.part) },
  { says: reason('choice/part-number'), compare: (a, b) => byNaturalOrder(a.part.part, b.part.part) },
];

function rank(a: Candidate, b: Candidate, specification: Specification): number {
  for (const step of STEPS) {
    const order = step.compare(a, b, specification);
    if (order !== 0) return order;
  }
  return 0;
}

const FIRST = reason('choice/first');

function why(best: Candidate, other: Candidate, specification: Specification): Reason {
  return STEPS.find((step) => step.compare(best, other, specification) !== 0)?.says ?? FIRST;
}

/** True where a part has less In than goes first at such a place. */
function isWeak({ nominalCurrent }: Part, { strongFirst }: Specification): boolean {
  return strongFirst !== undefined && (nominalCurrent ?? 0) < strongFirst;
}

function is4x(part: Part): boolean {
  return nemaTypes(part.enclosure).includes('4X');
}

/** Without a price last; the difference of two such is 0. */
function price(part: Part): number {
  return part.price ?? Number.MAX_VALUE;
}

/** How many housings of a part a specification takes. */
export function housings(part: Part, specification: Pick<Specification, 'conductors'>): number {
  return Math.ceil(specification.conductors / part.channels);
}

/** Fewest failures, then the smallest gap. */
function nearestMiss(candidates: readonly Candidate[]): Reason | undefined {
  const gap = (c: Candidate): number => c.failures.reduce((sum, f) => sum + f.gap, 0);
  const sorted = [...candidates].sort(
    (a, b) =>
      a.failures.length - b.failures.length || gap(a) - gap(b) || byNaturalOrder(a.part.part, b.part.part),
  );
  const first = sorted[0];
  return (
    first &&
    reason('choice/nearest', { part: first.part.part, failures: first.failures.map((f) => f.because) })
  );
}

/** Enclosures that may stand at a place, for the schedule; empty: indoors. */
export function enclosuresAsked(outdoors: boolean): readonly string[] {
  return outdoors ? [...OUTDOORS] : [];
}
