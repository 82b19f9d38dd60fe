import type { Catalogue } from '../model/catalogue.js';
import type { OpenItem } from '../model/open-item.js';
import type { Settings } from '../model/settings.js';
import type { SystemGrounding } from '../model/words.js';
import { surveySite } from '../site/survey.js';
import { itemAt, note } from '../model/message.js';
import { PART_FITS_NOTHING } from '../model/messages/company-files.js';
import { reason, type Reason } from '../model/reason.js';
import { assess, choosePart, type Specification } from '../plan/choose/choose.js';
import { exposureOf } from '../plan/context/exposure.js';
import { singleRowJob } from '../plan/context/single-row-job.js';
import { placeOnSite } from '../plan/place/place.js';
import { rangeNeeds, type RangeNeed, type RangePlace } from './range-needs.js';
import { catalogueLacks, type PartsLacking } from './catalogue-lacks.js';
import { rateAndChoose } from '../plan/choose/share.js';
import { jobContext } from '../plan/context/job-context.js';

/** What the catalogue has for one place of a circuit. */
export interface RangeCover {
  readonly place: RangePlace;
  /** V; least MCOV asked of a channel. */
  readonly mcov: number;
  /** A; least nominal discharge current asked. */
  readonly nominalCurrent: number;
  /** The part that planning would choose where no fact of a site says otherwise; null: a gap. */
  readonly part: string | null;
  /** Where there is a gap: the part that misses least, and why; null for an empty catalogue, and where there is none. */
  readonly nearest: Reason | null;
}

/** One circuit of the range with what covers it. */
export interface RangeLine {
  readonly basis: RangeNeed['basis'];
  readonly earthing: RangeNeed['earthing'];
  readonly circuit: string;
  readonly grounding: SystemGrounding | null;
  readonly current: 'ac' | 'dc';
  readonly source: string;
  readonly covers: readonly RangeCover[];
}

/** Where one part fits. */
export interface PartUse {
  readonly part: string;
  readonly file: string;
  readonly line: number;
  /** V; conductor to ground; null: not for DC. */
  readonly dcUpTo: number | null;
  readonly fits: readonly (Pick<RangeLine, 'basis' | 'earthing' | 'circuit' | 'grounding' | 'current'> & {
    readonly places: readonly RangePlace[];
  })[];
  /** Where it fits nothing: what it fails at the circuit that it comes nearest to; else null. */
  readonly because: Reason | null;
}

/** A catalogue held against the circuits that a company meets. */
export interface Range {
  readonly lines: readonly RangeLine[];
  readonly parts: readonly PartUse[];
  /** Columns that decide overcurrent devices and leads, with the parts that state nothing there; only those that lack some. */
  readonly lacks: readonly PartsLacking[];
  /** Parts that fit nothing. */
  readonly items: readonly OpenItem[];
}

interface Asked {
  readonly need: RangeNeed;
  readonly place: RangePlace;
  readonly specification: Specification;
}

/**
 * Holds a catalogue against every AC system and grounding of the contract and the usual DC circuits: a job of one row is
 * surveyed, placed and rated for each as any job is, so that no rule stands here a second time. What only a site knows
 * (fault current, stated withstand, lightning protection, runs) is taken as not stated.
 * @param catalogue its parts: V, A
 * @param settings basis and thresholds
 */
export function rangeOf(catalogue: Catalogue, settings: Settings): Range {
  const needs = rangeNeeds(settings);
  const asked = needs.flatMap((need) =>
    need.places.flatMap((place): Asked[] => {
      const specification = specificationAt(need, place, settings);
      return specification ? [{ need, place, specification }] : [];
    }),
  );
  const parts = catalogue.parts.map((part) => partUse(part, asked, settings));
  return {
    lines: needs.map((need) => ({
      ...named(need),
      source: need.source,
      covers: asked.filter((h) => h.need === need).map((h) => cover(h, catalogue, settings)),
    })),
    parts,
    lacks: catalogueLacks(catalogue.parts),
    items: parts
      .filter((p) => p.fits.length === 0)
      .map(({ part, because, file, line }) =>
        itemAt(note(PART_FITS_NOTHING, { part, because }), { file, line, column: '' }),
      ),
  };
}

/** What planning asks of a part at such a place; undefined where it places nothing there. */
function specificationAt(need: RangeNeed, place: RangePlace, settings: Settings): Specification | undefined {
  const { basis, earthing } = need;
  const list = singleRowJob({ ...need.row(place), outdoors: place === 'outdoors' }, { basis, earthing });
  const site = surveySite(list, settings);
  const job = jobContext(site, settings, exposureOf(site));
  return rateAndChoose(job, undefined, placeOnSite(job).placements)[0]?.specification;
}

function named(need: RangeNeed): Omit<RangeLine, 'source' | 'covers'> {
  const { basis, earthing, circuit, grounding, current } = need;
  return { basis, earthing, circuit, grounding: grounding ?? null, current };
}

function cover({ place, specification }: Asked, catalogue: Catalogue, settings: Settings): RangeCover {
  const { best, nearest } = choosePart(catalogue, specification, settings);
  const { mcov, nominalCurrent } = specification;
  return { place, mcov, nominalCurrent, part: best?.part.part ?? null, nearest: nearest ?? null };
}

function partUse(part: Catalogue['parts'][number], asked: readonly Asked[], settings: Settings): PartUse {
  const fits = new Map<RangeNeed, RangePlace[]>();
  let least:
    { readonly failures: ReturnType<typeof assess>['failures']; readonly need: RangeNeed } | undefined;
  for (const { need, place, specification } of asked) {
    const { failures } = assess(part, specification, settings);
    if (failures.length === 0) fits.set(need, [...(fits.get(need) ?? []), place]);
    else if (!least || failures.length < least.failures.length) least = { failures, need };
  }
  const why = least
    ? reason('range/nearest', { circuit: least.need.circuit, failures: least.failures.map((f) => f.because) })
    : null;
  return {
    part: part.part,
    file: part.file,
    line: part.line,
    dcUpTo: part.mcovDc,
    fits: [...fits].map(([need, places]) => ({ ...named(need), places })),
    because: fits.size === 0 ? why : null,
  };
}
