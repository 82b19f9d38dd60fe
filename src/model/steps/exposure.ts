import type { Quantity } from '../quantity.js';
import type { None } from '../none.js';

/** One figure for each kind of line that feeds a site. */
interface ByLine {
  readonly lvOverhead: Quantity;
  readonly lvUnderground: Quantity;
  readonly hvOverhead: Quantity;
  readonly hvUnderground: Quantity;
}

/** Flashes to or near a line: width of the strip that collects them, and what they are multiplied with. */
interface LineFlashes {
  readonly strip: Quantity;
  readonly flashDensity: Quantity;
  readonly length: Quantity;
  readonly installation: Quantity;
  readonly environment: Quantity;
  readonly lineType: Quantity;
}

/** Steps about a site's exposure to lightning: code and values. */
export interface ExposureSteps {
  'exposure/flash-density': None;
  'exposure/thunderstorm-days': None;
  /** `power`: null: the days count as they are. */
  'exposure/flash-density-of-days': {
    readonly factor: Quantity;
    readonly power: Quantity | null;
    readonly days: Quantity;
  };
  /** `product`: critical length times flash density. */
  'exposure/critical-length': { readonly product: Quantity; readonly flashDensity: Quantity };
  'exposure/surroundings': { readonly surroundings: 'rural' | 'urban' };
  /** `assumed`: length of overhead line that stands in for what isn't stated; 0: none. */
  'exposure/weighted-length': {
    readonly weights: ByLine;
    readonly lengths: ByLine;
    readonly assumed: Quantity;
  };
  'exposure/risk-level': {
    readonly limit: Quantity;
    readonly environment: Quantity;
    readonly length: Quantity;
    readonly flashDensity: Quantity;
  };
  'lightning/structure-length': None;
  'lightning/structure-width': None;
  'lightning/structure-height': None;
  'lightning/structure-area': {
    readonly length: Quantity;
    readonly width: Quantity;
    readonly height: Quantity;
  };
  'lightning/collection-area': None;
  'lightning/location-factor': None;
  'lightning/structure-flashes': {
    readonly flashDensity: Quantity;
    readonly area: Quantity;
    readonly location: Quantity;
  };
  'lightning/line-length': None;
  'lightning/line-length-not-stated': None;
  'lightning/installation-factor': { readonly laid: 'overhead' | 'buried' };
  'lightning/environment-factor': { readonly surroundings: 'rural' | 'suburban' | 'urban' };
  'lightning/line-type-factor': { readonly voltage: 'lv' | 'hv' };
  'lightning/flashes-to-line': LineFlashes;
  'lightning/flashes-near-line': LineFlashes;
}
